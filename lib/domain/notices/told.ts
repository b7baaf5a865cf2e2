import type { LineFile } from "../facts/line-file.ts";
import {
  type DeliveryMethod,
  LETTER_KINDS,
  type LetterKind,
  type Notice,
  type Reply,
} from "../facts/notice.ts";
import { isOnlyCopied } from "../party/only-copied.ts";
import { waitingReplies } from "../party/reply.ts";
import type { Day } from "../time/day.ts";
import { type AnswerState, answerOf } from "./answered.ts";
import { type Arrival, arrivalOf, cameBack, type LetterStanding } from "./arrival.ts";

/** How one letter to one party stands. */
export interface ToldCell {
  readonly noticeId: string;
  readonly propertyId: string | null;
  readonly tieInId: string | null;
  readonly state: "draft" | LetterStanding;
  /** The attempt that tells most: the one that proves the arrival, else the last. */
  readonly method: DeliveryMethod | null;
  /** The day of the arrival, or of what became of the attempt. */
  readonly on: Day | null;
  /** What shows that it arrived; null while nothing does. */
  readonly provenBy: Arrival["by"];
  readonly attempts: number;
  readonly answer: AnswerState;
  readonly reply: Reply | null;
}

interface ToldRow {
  readonly partyId: string;
  /**
   * By kind, one for each thing that the letters are about (a property, a tie-in): its newest
   * notice. Missing where that letter was never written to this party.
   */
  readonly cells: Readonly<Partial<Record<LetterKind, readonly ToldCell[]>>>;
}

export interface Told {
  /** The kinds that somebody on this line was ever written. */
  readonly kinds: readonly LetterKind[];
  /** Every party, also those not written to. */
  readonly rows: readonly ToldRow[];
}

/** Every party against every letter that was written on this line, each by its newest notice. */
export function toldOn(file: LineFile): Told {
  const kinds = LETTER_KINDS.filter((kind) => file.notices.some((notice) => notice.kind === kind));
  const rows = file.parties.map((party) => ({
    partyId: party.id,
    cells: cellsOf(
      file,
      file.notices.filter((notice) => notice.partyId === party.id),
    ),
  }));
  return { kinds, rows };
}

function cellsOf(file: LineFile, notices: readonly Notice[]): ToldRow["cells"] {
  const newest = new Map<string, Notice>();
  for (const notice of [...notices].sort(byAge)) newest.set(aboutKey(notice), notice);
  const cells: Partial<Record<LetterKind, ToldCell[]>> = {};
  for (const notice of newest.values()) {
    const ofKind = cells[notice.kind] ?? [];
    ofKind.push(cellOf(file, notice));
    cells[notice.kind] = ofKind;
  }
  return cells;
}

function aboutKey({ kind, propertyId, tieInId, paperId }: Notice): string {
  return [kind, propertyId, tieInId, paperId].join(" ");
}

function byAge(one: Notice, other: Notice): number {
  if (one.createdOn === other.createdOn) return 0;
  return one.createdOn < other.createdOn ? -1 : 1;
}

/** How a letter stands: whether it arrived, by what, and what came back. */
export function cellOf(
  file: Pick<LineFile, "authority" | "deliveries" | "replies" | "consents">,
  notice: Notice,
): ToldCell {
  const { state, on, by, attempt } = arrivalOf(file, notice);
  const { state: answer, reply } = answerOf(file, notice);
  return {
    noticeId: notice.id,
    propertyId: notice.propertyId,
    tieInId: notice.tieInId,
    state: notice.state === "draft" ? "draft" : state,
    method: attempt?.method ?? null,
    on: on ?? attempt?.outcomeOn ?? attempt?.sentOn ?? null,
    provenBy: by,
    attempts: file.deliveries.filter(({ noticeId }) => noticeId === notice.id).length,
    answer,
    reply,
  };
}

/** Why a letter has to be gone after. */
export type ChaseReason =
  | "came-back"
  | "reply-late"
  | "not-settled"
  | "reply-awaited"
  | "delivery-unknown";

export interface Chase {
  readonly noticeId: string;
  readonly partyId: string;
  readonly kind: LetterKind;
  readonly reason: ChaseReason;
  readonly replyBy: Day | null;
  /** The day from which it waits: the reply-by day, or the day of the last attempt. */
  readonly since: Day;
}

const URGENCY: Record<ChaseReason, number> = {
  "came-back": 0,
  "reply-late": 1,
  "not-settled": 1,
  "delivery-unknown": 2,
  "reply-awaited": 3,
};

/**
 * The letters that somebody has to go after, the most pressing first: those that came back, those
 * whose answer is overdue or left open what the letter asks, those of whose arrival nothing is
 * known, those whose reply is still awaited. What was replied and waits on the office is no chase:
 * it is dealt with (`waitingReplies`). A letter for which a newer one stands is let be; so is the
 * arrival of a letter to somebody whom a later one reached.
 */
export function chaseList(file: LineFile, today: Day): Chase[] {
  return file.notices
    .filter((notice) => notice.state === "sent" && !isReplaced(file, notice))
    .map((notice) => chaseOf(file, notice, today))
    .filter((chase): chase is Chase => chase !== null)
    .sort(
      (one, other) =>
        URGENCY[one.reason] - URGENCY[other.reason] || one.since.localeCompare(other.since),
    );
}

/** A later letter of the same kind went to the same party about the same property and tie-in. */
export function isReplaced({ notices }: Pick<LineFile, "notices">, notice: Notice): boolean {
  const at = notices.findIndex(({ id }) => id === notice.id);
  return notices.some(
    (other, later) =>
      other.state === "sent" &&
      other.partyId === notice.partyId &&
      aboutKey(other) === aboutKey(notice) &&
      (byAge(other, notice) > 0 || (byAge(other, notice) === 0 && later > at)),
  );
}

/** Whether any letter is proven to have reached somebody; with a day, from that day on. */
export function isReached(file: LineFile, partyId: string, since: Day = ""): boolean {
  return file.notices.some((notice) => {
    if (notice.partyId !== partyId || notice.state !== "sent") return false;
    const { on } = arrivalOf(file, notice);
    return on !== null && on >= since;
  });
}

function chaseOf(file: LineFile, notice: Notice, today: Day): Chase | null {
  const cell = cellOf(file, notice);
  const reason = reasonOf(file, notice, { cell, today });
  if (reason === null) return null;
  const asked = reason.startsWith("reply") || reason === "not-settled";
  const since = asked ? notice.replyBy : cell.on;
  return {
    noticeId: notice.id,
    partyId: notice.partyId,
    kind: notice.kind,
    reason,
    replyBy: notice.replyBy,
    since: since ?? notice.createdOn,
  };
}

function reasonOf(
  file: LineFile,
  { partyId, propertyId, replyBy }: Notice,
  { cell, today }: { readonly cell: ToldCell; readonly today: Day },
): ChaseReason | null {
  const { state, answer, attempts } = cell;
  if (answer === "waits" || answer === "in") return null;
  if (cameBack(state)) return "came-back";
  if (isOnlyCopied(file, { partyId, propertyId })) return null;
  if (replyBy !== null && replyBy < today)
    return answer === "open-again" ? "not-settled" : "reply-late";
  const sent = attempts === 0 ? "" : (cell.on ?? "");
  if (state !== "arrived" && state !== "counts" && !isReached(file, partyId, sent))
    return "delivery-unknown";
  return replyBy === null ? null : "reply-awaited";
}

/** Why there is nobody to go after, as the file has it. */
export function noChaseWords(file: LineFile): string {
  const sent = file.notices.filter(({ state }) => state === "sent");
  const waiting = waitingReplies(file).length;
  if (sent.length === 0) return "Nothing to follow up: no letters sent yet.";
  const replies = waiting === 0 ? "" : ` Replies that came in are listed above.`;
  const shown = sent.every((notice) => arrivalOf(file, notice).on !== null);
  const counts = sent.some((notice) => arrivalOf(file, notice).state === "counts");
  const asked = sent.some(({ replyBy }) => replyBy !== null);
  const arrived = shown
    ? `all letters were delivered${counts ? ", or count as delivered with this authority" : ""}`
    : "everyone who was sent a letter is reached";
  return `Nothing to follow up: ${arrived}${asked ? " and no replies are due" : ""}.${replies}`;
}
