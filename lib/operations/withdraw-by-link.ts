import { getPartyName } from "#db/queries/party.ts";
import { insertRow } from "#db/queries/row.ts";
import { type Binding, bindingOf } from "#lib/domain/consent/binding.ts";
import { BY_PRIVATE_LINK, type PrivateLink } from "#lib/domain/consent/private-link.ts";
import { openRelease } from "#lib/domain/consent/release.ts";
import { consentsBy } from "#lib/domain/consent/signable.ts";
import type { Consent } from "#lib/domain/facts/consent.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { Notice, Reply } from "#lib/domain/facts/notice.ts";
import { nameRow } from "#lib/domain/facts/references.ts";
import { NOT_DEALT_WITH } from "#lib/domain/party/reply.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { type Change, changeLine } from "./change.ts";
import {
  actOfLink,
  findOpenLink,
  isStillOpen,
  type LinkDoor,
  noteVisit,
  stopped,
} from "./link-door.ts";

const MOST_WORDS = 5_000;

interface Withdrawal {
  readonly secret: string;
  readonly consentId: string;
  /** Why; wanted once a promise to pay binds. */
  readonly words: string;
}

/** What came of it: taken back, or asked of the office because it binds already. */
interface Withdrawn {
  readonly taken: "back" | "as-a-request";
}

/**
 * Takes back, by the same party's private link, a consent that was signed on screen. What was signed
 * stays readable; the newest word is that it was withdrawn. A promise to pay that binds (binding.ts)
 * does not end so: with a reason it becomes a request to be let go, which a person of the office
 * answers like any other reply.
 */
export function withdrawByLink(
  door: LinkDoor,
  { secret, consentId, words }: Withdrawal,
): Result<Withdrawn, Refusal> {
  const found = findOpenLink(door, secret, "doing");
  if (!found.ok) return found;
  const link = found.value;
  const act = actOfLink(door, link, getPartyName(door.db, link));
  const deal = {
    lineId: link.lineId,
    deed: "answer-own-letter",
    action: "withdraw-by-link",
    evenClosed: true,
  } as const;
  return changeLine(act, deal, (file, db) => {
    if (!isStillOpen(db, link, door.now)) return stopped("gone");
    const notice = file.notices.find(({ id }) => id === link.noticeId);
    const signed = notice && signedHere(file, { link, notice, consentId });
    if (!notice || signed === undefined) return stopped("nothing-to-withdraw");
    const asked = { door, act, file, link, notice, signed };
    const binding = bindingOf(file, signed, reportOn(file, act.today));
    return binding === null ? takenBack(asked) : requested(asked, { binding, words });
  });
}

interface Asked {
  readonly door: LinkDoor;
  readonly act: Act;
  readonly file: LineFile;
  readonly link: PrivateLink;
  readonly notice: Notice;
  readonly signed: Consent;
}

/** The signed word that the link's own party can take back: their newest of its kind holds, or waits. */
function signedHere(
  file: LineFile,
  { link, notice, consentId }: { link: PrivateLink; notice: Notice; consentId: string },
): Consent | undefined {
  const word = file.consents.find(({ id }) => id === consentId);
  const isSigned = file.signatures.some((each) => each.consentId === consentId);
  if (!word || !isSigned) return;
  if (word.partyId !== link.partyId || word.propertyId !== notice.propertyId) return;
  const latest = consentsBy(file, notice, word.kind)
    .toSorted((one, other) => one.stateOn.localeCompare(other.stateOn))
    .at(-1);
  return latest?.state === "given" || latest?.state === "name-held" ? word : undefined;
}

function takenBack({ door, act, file, link, signed }: Asked): Result<Change<Withdrawn>, Refusal> {
  const { lineId } = link;
  const withdrawn: Consent = {
    ...signed,
    id: act.newId(),
    state: "withdrawn",
    stateOn: act.today,
    uploadId: null,
    note: "Withdrawn by private link",
  };
  return ok({
    value: { taken: "back" },
    sentence: `Consent to ${signed.kind}, ${nameRow(file, "parties", signed.partyId)} for ${nameRow(file, "properties", signed.propertyId)}: withdrawn by private link.`,
    detail: { before: signed, after: withdrawn },
    write: (one) => {
      insertRow(one, "consents", { lineId, row: withdrawn });
      noteVisit(door, one, link, "withdrew");
    },
  });
}

function requested(
  { door, act, file, link, notice, signed }: Asked,
  { binding, words }: { binding: Binding; words: string },
): Result<Change<Withdrawn>, Refusal> {
  if (openRelease(file, notice) !== null) return stopped("release-asked");
  if (words.trim() === "") return stopped("no-release-words");
  if (words.length > MOST_WORDS) return stopped("too-long");
  const reply: Reply = {
    id: act.newId(),
    noticeId: notice.id,
    entryId: null,
    kind: "asks-release",
    receivedOn: act.today,
    takenBy: BY_PRIVATE_LINK,
    words: words.trim(),
    suitsOn: null,
    uploadId: null,
    ...NOT_DEALT_WITH,
  };
  const { lineId } = link;
  return ok({
    value: { taken: "as-a-request" },
    sentence: `${nameRow(file, "parties", signed.partyId)} asks by private link to be let go from the consent to pay for ${nameRow(file, "properties", signed.propertyId)}, binding since ${binding.since}: ${reply.words}`,
    detail: { after: reply, consent: signed, binding },
    write: (one) => {
      insertRow(one, "replies", { lineId, row: reply });
      noteVisit(door, one, link, "answered");
    },
  });
}
