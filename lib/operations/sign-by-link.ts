import { createHash } from "node:crypto";
import { listVisits } from "#db/queries/link.ts";
import { getOffice } from "#db/queries/office.ts";
import { insertOutgoing } from "#db/queries/outgoing.ts";
import { getPartyName } from "#db/queries/party.ts";
import { insertRow } from "#db/queries/row.ts";
import {
  SCREEN_KINDS,
  type ScreenKind,
  signingName,
  signStop,
} from "#lib/domain/consent/signable.ts";
import { LINK_WORDS } from "#lib/domain/consent/words.ts";
import type { LineFile, Office } from "#lib/domain/facts/line-file.ts";
import type { Notice } from "#lib/domain/facts/notice.ts";
import type { Signature, SignatureView } from "#lib/domain/facts/signature.ts";
import type { Upload } from "#lib/domain/facts/upload.ts";
import { formatCents } from "#lib/domain/money/format-cents.ts";
import { frozenLetter } from "#lib/domain/paper/frozen-letter.ts";
import type { Letter } from "#lib/domain/paper/letter.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { ok, type Result } from "#lib/result.ts";
import { isStoredWhole, storeFile } from "#lib/storage/store.ts";
import type { Language } from "../domain/say/language.ts";
import type { Act, Refusal } from "./act.ts";
import { changeLine } from "./change.ts";
import {
  actOfLink,
  findOpenLink,
  isStillOpen,
  type LinkDoor,
  noteVisit,
  stopped,
} from "./link-door.ts";
import { copyOutgoing } from "./signature-copy.ts";
import { type Signed, signaturesOf } from "./signature-rows.ts";

/** A drawn name is a small picture; anything larger is no signature. */
const DRAWING_LIMIT = 500_000;
const MOST_VIEWS = 200;
/** More people than are one party anywhere. */
const MOST_NAMES = 10;

interface Signing {
  readonly secret: string;
  /** The consents whose sentence of intent was ticked. */
  readonly kinds: readonly ScreenKind[];
  /** The split version that the page showed; null where it asked for no money. */
  readonly splitId: string | null;
  /** The name exactly as typed; one of each, where several people are one party. */
  readonly signedNames: readonly string[];
  /** As what somebody signs for a trust, firm or estate, where the file does not say. */
  readonly capacity: string;
  /** A drawn signature as PNG; null where the name was only typed. */
  readonly drawing: Uint8Array | null;
  /** The consent to sign on screen was ticked. */
  readonly records: boolean;
  /** In which language the page was read. */
  readonly language: Language;
}

/**
 * Signs what a letter asks for, on screen (15 U.S.C. 7001, UETA 7 to 9 and 12). Refuses without ticked intent, without the consent to electronic records, without a typed
 * name, before the letter's PDF was opened, on an amount that no longer holds, and for an agreement
 * that needs a notary. A name that is not the party's is signed and held: it counts once a person of
 * the office has looked at it (decide-signed-name.ts). Keeps one signature a consent, chained to the one before it on the line, and
 * sends the signer a copy where there is an address.
 */
export async function signByLink(
  door: LinkDoor,
  signing: Signing,
): Promise<Result<{ signatureIds: string[]; copied: boolean; held: boolean }, Refusal>> {
  const found = findOpenLink(door, signing.secret, "doing");
  if (!found.ok) return found;
  const link = found.value;
  const unfinished = unfinishedPart(signing);
  if (unfinished !== null) return unfinished;
  const act = actOfLink(door, link, getPartyName(door.db, link));
  const drawing = await drawingOf(act, signing.drawing);
  if (!drawing.ok) return drawing;
  const deal = { lineId: link.lineId, deed: "answer-own-letter", action: "sign-by-link" } as const;
  return changeLine(act, { ...deal, evenClosed: true }, (file, db) => {
    if (!isStillOpen(db, link, door.now)) return stopped("gone");
    const office = getOffice(db);
    const notice = file.notices.find(({ id }) => id === link.noticeId);
    if (notice === undefined || office === null) return stopped("gone");
    const wrong = wrongSigning(act, file, { notice, signing });
    if (wrong !== null) return wrong;
    const views = listVisits(db, link.id).map(({ at, what }) => ({ at, what }));
    if (!views.some(({ what }) => what === "opened-letter")) return stopped("letter-not-opened");
    const paper = paperOf(act, file, notice);
    if (!paper.ok) return paper;
    const sent = { file, office, notice, ...paper.value };
    const copy = copyOutgoing(act, { ...sent, language: signing.language });
    const signed = signaturesOf(act, {
      ...{ ...sent, signing, link, sha256 },
      drawingId: drawing.value?.id ?? null,
      views: seenBefore(views, door.now, signing.language),
      copyMessageId: copy?.messageId ?? "",
      address: door.address,
      agent: door.agent,
    });
    return ok({
      value: {
        signatureIds: signed.map(({ signature }) => signature.id),
        copied: copy !== null,
        held: isHeld(signed),
      },
      sentence: sentenceOf(file, office, { signed, held: isHeld(signed) }),
      detail: signed.map(({ consent, signature }) => ({
        after: consent,
        signature: shortOf(signature),
      })),
      write: (one) => {
        const { lineId } = link;
        if (drawing.value !== null) insertRow(one, "uploads", { lineId, row: drawing.value });
        for (const { consent, signature } of signed) {
          insertRow(one, "consents", { lineId, row: consent });
          insertRow(one, "signatures", { lineId, row: signature });
        }
        if (copy !== null) insertOutgoing(one, copy.withCertificates(signed));
        noteVisit(door, one, link, "signed");
      },
    });
  });
}

function sha256(text: string): string {
  return createHash("sha256").update(text).digest("hex");
}

function unfinishedPart({ kinds, records, signedNames }: Signing) {
  if (kinds.length === 0) return stopped("no-intent");
  if (kinds.some((kind) => !SCREEN_KINDS.includes(kind))) return stopped("nothing-to-sign");
  if (!records) return stopped("no-records");
  if (signedNames.length === 0 || signedNames.length > MOST_NAMES) return stopped("no-name");
  return signedNames.every(isName) ? null : stopped("no-name");
}

function isName(name: string): boolean {
  return /\p{L}/u.test(name) && !/\p{Cc}/u.test(name) && name.length <= 200;
}

function wrongSigning(
  act: Act,
  file: LineFile,
  { notice, signing }: { notice: Notice; signing: Signing },
) {
  const report = reportOn(file, act.today);
  for (const kind of signing.kinds) {
    const stop = signStop({ file, report }, notice, kind);
    if (stop !== null) return stopped(stop);
    if (kind === "pay" && signing.splitId !== notice.splitId) return stopped("superseded");
    const missing = signingName(file, notice, kind)?.capacityMissing ?? false;
    if (missing && signing.capacity.trim() === "") return stopped("no-capacity");
  }
  return null;
}

/** The letter's own PDF, if its bytes are there and still those of their hash. */
function documentOf({ dataFolder }: Act, file: LineFile, notice: Notice): Upload | null {
  const upload = file.uploads.find(({ id }) => id === notice.uploadId);
  return upload !== undefined && isStoredWhole(dataFolder, upload.sha256) ? upload : null;
}

/** What is signed: the letter as it was sent and its PDF. */
function paperOf(
  act: Act,
  file: LineFile,
  notice: Notice,
): Result<{ letter: Letter; document: Upload }, Refusal> {
  const document = documentOf(act, file, notice);
  if (document === null) return stopped("letter-not-ready");
  const letter = frozenLetter(notice.frozen ?? "");
  return letter === null ? stopped("letter-unreadable") : ok({ letter, document });
}

function seenBefore(views: readonly SignatureView[], now: string, language: Language) {
  const { ticks } = LINK_WORDS[language];
  return [
    ...views.slice(-MOST_VIEWS),
    { at: now, what: ticks.records },
    { at: now, what: ticks.intent },
  ];
}

async function drawingOf(
  act: Act,
  drawing: Uint8Array | null,
): Promise<Result<Upload | null, Refusal>> {
  if (drawing === null) return ok(null);
  const stored = await storeFile(act.dataFolder, once(drawing), {
    declared: drawing.byteLength,
    limit: DRAWING_LIMIT,
  });
  if (!stored.ok || stored.value.type !== "image/png") return stopped("bad-drawing");
  return ok({
    id: act.newId(),
    name: "Drawn signature.png",
    ...stored.value,
    addedBy: act.actor.name,
    addedAt: act.now,
    note: "Drawn while signing on screen",
  });
}

async function* once(bytes: Uint8Array): AsyncGenerator<Uint8Array> {
  yield bytes;
}

function isHeld(signed: readonly Signed[]): boolean {
  return signed.some(({ consent }) => consent.state === "name-held");
}

function sentenceOf(
  file: LineFile,
  office: Office,
  { signed, held }: { signed: readonly Signed[]; held: boolean },
): string {
  const kinds = signed.map(({ consent: { kind, amount } }) =>
    amount === null ? kind : `${kind} ${formatCents(amount)}`,
  );
  const [first] = signed;
  const name = file.parties.find(({ id }) => id === first?.consent.partyId)?.name ?? office.name;
  const typed = first?.signature.signedName ?? "";
  const consents = `consent to ${kinds.join(" and to ")}`;
  return held
    ? `Signed on screen for ${name} as “${typed}”, which is not the name on file: ${consents}. It counts once someone in the office has checked the name.`
    : `${name} signed on screen, as ${typed}: ${consents}.`;
}

function shortOf({ id, hash, documentHash }: Signature) {
  return { id, hash, documentHash };
}
