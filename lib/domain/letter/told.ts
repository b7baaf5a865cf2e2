import type { Day } from "../calendar/day.ts";
import type { LineFile } from "../file/line-file.ts";
import {
  type Delivery,
  type DeliveryMethod,
  type DeliveryOutcome,
  LETTER_KINDS,
  type LetterKind,
  type Notice,
  type Reply,
} from "./notice.ts";

/** How one letter to one party stands. */
export interface ToldCell {
  readonly noticeId: string;
  readonly propertyId: string | null;
  readonly tieInId: string | null;
  readonly state: "draft" | "sent" | DeliveryOutcome;
  /** The attempt that tells most: a delivered one, else the last. */
  readonly method: DeliveryMethod | null;
  readonly on: Day | null;
  readonly attempts: number;
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

function aboutKey({ kind, propertyId, tieInId }: Notice): string {
  return [kind, propertyId, tieInId].join(" ");
}

function byAge(one: Notice, other: Notice): number {
  if (one.createdOn === other.createdOn) return 0;
  return one.createdOn < other.createdOn ? -1 : 1;
}

/** How a notice stands: by the attempt that reached its party, else by the last one. */
export function cellOf(file: LineFile, notice: Notice): ToldCell {
  const attempts = file.deliveries.filter((delivery) => delivery.noticeId === notice.id);
  const telling = tellingAttempt(attempts);
  return {
    noticeId: notice.id,
    propertyId: notice.propertyId,
    tieInId: notice.tieInId,
    state: notice.state === "draft" ? "draft" : (telling?.outcome ?? "sent"),
    method: telling?.method ?? null,
    on: telling?.outcomeOn ?? telling?.sentOn ?? null,
    attempts: attempts.length,
    reply: file.replies.filter((reply) => reply.noticeId === notice.id).at(-1) ?? null,
  };
}

function tellingAttempt(attempts: readonly Delivery[]): Delivery | null {
  return attempts.find((attempt) => attempt.outcome === "delivered") ?? attempts.at(-1) ?? null;
}

/** Why a letter has to be gone after. */
export type ChaseReason = "came-back" | "reply-late" | "reply-awaited" | "delivery-unknown";

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
  "delivery-unknown": 2,
  "reply-awaited": 3,
};

/**
 * The letters that somebody has to go after, the most pressing first: those that came back, those
 * whose reply is overdue, those of whose arrival nothing is known, those whose reply is still awaited.
 * A letter that was answered is done, however it came.
 */
export function chaseList(file: LineFile, today: Day): Chase[] {
  return file.notices
    .filter((notice) => notice.state === "sent")
    .map((notice) => chaseOf(file, notice, today))
    .filter((chase): chase is Chase => chase !== null)
    .sort(
      (one, other) =>
        URGENCY[one.reason] - URGENCY[other.reason] || one.since.localeCompare(other.since),
    );
}

function chaseOf(file: LineFile, notice: Notice, today: Day): Chase | null {
  const cell = cellOf(file, notice);
  if (cell.reply !== null) return null;
  const reason = reasonOf(cell, notice.replyBy, today);
  if (reason === null) return null;
  const since = reason.startsWith("reply") ? notice.replyBy : cell.on;
  return {
    noticeId: notice.id,
    partyId: notice.partyId,
    kind: notice.kind,
    reason,
    replyBy: notice.replyBy,
    since: since ?? notice.createdOn,
  };
}

function reasonOf(cell: ToldCell, replyBy: Day | null, today: Day): ChaseReason | null {
  if (cameBack(cell.state)) return "came-back";
  if (replyBy !== null && replyBy < today) return "reply-late";
  if (cell.state === "on-its-way" || cell.state === "sent") return "delivery-unknown";
  return replyBy === null ? null : "reply-awaited";
}

function cameBack(state: ToldCell["state"]): boolean {
  return state === "returned" || state === "unclaimed" || state === "failed";
}
