import { insertRow, updateRow } from "#db/queries/row.ts";
import {
  CONSENT_KINDS,
  type Consent,
  type ConsentKind,
  RECORDED_STATES,
  type RecordedState,
} from "#lib/domain/facts/consent.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { CONSENT_STATE_WORDS, CONSENT_WORDS } from "#lib/domain/facts/notice-words.ts";
import { nameRow } from "#lib/domain/facts/references.ts";
import type { Cents } from "#lib/domain/money/cents.ts";
import { formatCents } from "#lib/domain/money/format-cents.ts";
import type { Day } from "#lib/domain/time/day.ts";
import { formatDate } from "#lib/domain/time/format-day.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { changeLine, refuse } from "./change.ts";
import { pastDay } from "./past-day.ts";

interface ConsentWord {
  readonly lineId: string;
  readonly kind: ConsentKind;
  readonly partyId: string;
  readonly propertyId: string;
  readonly state: RecordedState;
  readonly stateOn: Day;
  /** For `pay`: the split version that was put to the person. */
  readonly splitId: string | null;
  readonly amount: Cents | null;
  readonly recordingNumber: string;
  readonly uploadId: string | null;
  readonly note: string;
}

/**
 * Takes down a person's word on one kind of consent. Consent to pay is tied to a split version and to
 * its amount for that property. Every word stays; only the very same one, taken down again, is
 * corrected (its paper added, say).
 */
export function recordConsent(
  act: Act,
  { lineId, ...word }: ConsentWord,
): Result<{ consentId: string }, Refusal> {
  const deal = { lineId, deed: "work-the-file", action: "record-consent" } as const;
  return changeLine(act, deal, (file) => {
    const wrong = wrongParts(file, word) ?? wrongWord(act, word) ?? wrongAmount(file, word);
    if (wrong !== null) return wrong;
    const { kind, partyId, propertyId } = word;
    const old = sameWord(file, word);
    const consent: Consent = {
      ...word,
      id: old?.id ?? act.newId(),
      uploadId: word.uploadId ?? old?.uploadId ?? null,
      amount: word.amount ?? old?.amount ?? null,
      recordingNumber: word.recordingNumber || (old?.recordingNumber ?? ""),
      restsOnId: old?.restsOnId ?? null,
      enteredBy: old?.enteredBy ?? act.actor.name,
    };
    const amount = word.amount === null ? "" : ` of ${formatCents(word.amount)}`;
    return ok({
      value: { consentId: consent.id },
      sentence: `Consent: ${CONSENT_WORDS[kind]}${amount}, ${nameRow(file, "parties", partyId)} for ${nameRow(file, "properties", propertyId)}: ${CONSENT_STATE_WORDS[word.state]} on ${formatDate(word.stateOn)}.`,
      detail: { before: old ?? null, after: consent },
      write: (db) => {
        if (!updateRow(db, "consents", { lineId, row: consent }))
          insertRow(db, "consents", { lineId, row: consent });
      },
    });
  });
}

type Word = Omit<ConsentWord, "lineId">;

/**
 * The word that this one corrects. One that was signed on screen is corrected by nobody: its signature
 * says what it was. Nor does another paper take the place of the first: it is a word of its own.
 */
function sameWord(file: LineFile, word: Word): Consent | undefined {
  const fields = ["kind", "partyId", "propertyId", "splitId", "state", "stateOn"] as const;
  const signed = new Set(file.signatures.map(({ consentId }) => consentId));
  return file.consents.findLast(
    (each) =>
      !signed.has(each.id) &&
      fields.every((field) => each[field] === word[field]) &&
      isSameOrNew(each.uploadId, word.uploadId) &&
      isSameOrNew(each.amount, word.amount) &&
      isSameOrNew(each.recordingNumber, word.recordingNumber),
  );
}

/** Nothing was there yet, nothing is said now, or it is the same. */
function isSameOrNew<T>(before: T | null, after: T | null): boolean {
  return isEmpty(before) || isEmpty(after) || before === after;
}

function isEmpty(value: unknown): boolean {
  return value === null || value === "";
}

function wrongParts(file: LineFile, { partyId, propertyId, splitId, uploadId }: Word) {
  if (!file.parties.some(({ id }) => id === partyId))
    return refuse("not-found", "partyId", "the party");
  if (!file.properties.some(({ id }) => id === propertyId))
    return refuse("not-found", "propertyId", "the property");
  if (splitId !== null && !file.splits.some(({ id }) => id === splitId))
    return refuse("not-found", "splitId", "the split");
  if (uploadId !== null && !file.uploads.some(({ id }) => id === uploadId))
    return refuse("not-found", "uploadId", "the signed paper");
  return null;
}

function wrongWord(act: Act, { kind, state, stateOn, recordingNumber }: Word) {
  if (!CONSENT_KINDS.includes(kind)) return refuse("bad-value", "kind", "Choose a kind of consent");
  if (!RECORDED_STATES.includes(state))
    return refuse("bad-value", "state", "Choose what they answered");
  if (kind === "agreement-recorded" && state === "given" && recordingNumber.trim() === "")
    return refuse("missing-value", "recordingNumber", "Enter the recording number");
  return pastDay(act, { day: stateOn, path: "stateOn" });
}

/** An amount is signed as it stands in the version that was put to the person, or not at all. */
function wrongAmount(file: LineFile, { kind, state, propertyId, splitId, amount }: Word) {
  if (kind !== "pay" || (state !== "given" && amount === null)) return null;
  const split = file.splits.find(({ id }) => id === splitId);
  if (!split)
    return refuse("missing-value", "splitId", "Say which version of the split was put to them");
  const share = split.shares.find((each) => each.propertyId === propertyId)?.amount ?? null;
  if (amount === share) return null;
  const words =
    share === null
      ? `Version ${split.number} asks nothing of this property`
      : `Version ${split.number} asks ${formatCents(share)} of this property`;
  return refuse("bad-value", "amount", words);
}
