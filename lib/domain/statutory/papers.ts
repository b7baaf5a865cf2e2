import { happeningsOf, sentDayOf } from "../calendar/happenings.ts";
import { dayOfRule } from "../calendar/rule-day.ts";
import type { LineFile } from "../facts/line-file.ts";
import type { DeliveryMethod, Notice } from "../facts/notice.ts";
import { OWNING_ROLES } from "../facts/party.ts";
import type { PaperWaiver, PaperWay, StatutoryPaper } from "../facts/statutory-paper.ts";
import { arrivalOf, attemptProof, cameBack } from "../notices/arrival.ts";
import { hasGone } from "../notices/way-rule.ts";
import { sayParty } from "../party/say.ts";
import type { Day } from "../time/day.ts";
import { formatFullDay } from "../time/format-day.ts";
import { type Order, ordersOf } from "./orders.ts";
import { BY_WORDS, EVENT_WORDS } from "./paper-words.ts";

/** How far one statutory paper has got with one person. */
type PaperState =
  /** Nothing was written. */
  | "open"
  | "draft"
  /** It went out, but what is on file does not count yet: another method, no proof, or it came back. */
  | "not-proven"
  | "given"
  /** A named person decided that it is not given. */
  | "given-up";

/** One statutory paper that somebody has to get. */
export interface PaperDue {
  readonly paper: StatutoryPaper;
  readonly partyId: string;
  readonly propertyId: string;
  /** The day of the fact that starts the count; null while it is not on file. */
  readonly from: Day | null;
  /** The last day for it; null while the fact that starts the count is not on file. */
  readonly by: Day | null;
  /** How that was counted; empty where nothing was. */
  readonly counted: string;
  /** What to enter so that it can be counted; empty: nothing is missing. */
  readonly enter: string;
  readonly state: PaperState;
  /** The day from which it counts as given. */
  readonly givenOn: Day | null;
  readonly late: boolean;
  /** It went by the post. */
  readonly mailed: boolean;
  /** Something shows that they have it. */
  readonly confirmedOn: Day | null;
  /** Why what went out does not count; empty where it does, or nothing went. */
  readonly wanting: string;
  readonly notice: Notice | null;
  readonly decision: PaperWaiver | null;
}

/**
 * Every statutory paper that the line's state asks for, person by person. What is not on file counts
 * as if the paper were asked for: an unknown state, place of signing, amount or number of units.
 */
export function papersOn(file: LineFile): PaperDue[] {
  const papers = file.authority?.statutoryPapers ?? [];
  if (papers.length === 0) return [];
  const orders = ordersOf(file);
  return papers.flatMap((paper) =>
    readersOf(file, paper, orders).map(({ order, partyId }) =>
      dueTo(file, paper, { order, partyId }),
    ),
  );
}

/** Still to be given: not given, and not given up. */
export function isOpenPaper({ state }: Pick<PaperDue, "state">): boolean {
  return state !== "given" && state !== "given-up";
}

interface Reader {
  readonly order: Order;
  readonly partyId: string;
}

function readersOf(file: LineFile, paper: StatutoryPaper, orders: readonly Order[]): Reader[] {
  const asked = orders.filter((order) => applies(file, paper, order));
  const readers = asked.flatMap((order): Reader[] => {
    if (paper.to === "customer")
      return paper.condition === "not-direct" && isOwner(file, order.partyId, order.propertyId)
        ? []
        : [{ order, partyId: order.partyId }];
    return ownersOf(file, order.propertyId)
      .filter(
        (partyId) =>
          paper.condition !== "not-direct" ||
          !orders.some((one) => one.partyId === partyId && one.propertyId === order.propertyId),
      )
      .map((partyId) => ({ order, partyId }));
  });
  // One paper to one person for one property; of several orders the one that is counted from first.
  const first = new Map<string, Reader>();
  for (const reader of readers) {
    const key = JSON.stringify([reader.partyId, reader.order.propertyId]);
    const other = first.get(key);
    if (other === undefined || (reader.order.on ?? "") < (other.order.on ?? ""))
      first.set(key, reader);
  }
  return [...first.values()];
}

function ownersOf({ roles }: LineFile, propertyId: string): string[] {
  const owners = roles.filter(
    (each) => each.propertyId === propertyId && OWNING_ROLES.includes(each.role),
  );
  return [...new Set(owners.map(({ partyId }) => partyId))];
}

function isOwner(file: LineFile, partyId: string, propertyId: string): boolean {
  return ownersOf(file, propertyId).includes(partyId);
}

function applies(file: LineFile, paper: StatutoryPaper, order: Order): boolean {
  const property = file.properties.find(({ id }) => id === order.propertyId);
  if (property === undefined || !isInState(property.address.state, paper.state)) return false;
  if (paper.least !== null && order.amount !== null && order.amount < paper.least) return false;
  if (paper.condition === "signed-away") return order.place !== "office";
  if (paper.condition === "four-units")
    return file.units.filter(({ propertyId }) => propertyId === property.id).length <= 4;
  return true;
}

/** A state that is not two letters on either side may be any. */
function isInState(ofProperty: string, ofPaper: string): boolean {
  const [place, asked] = [ofProperty, ofPaper].map((state) => state.trim().toUpperCase());
  const isKnown = (state: string | undefined) => /^[A-Z]{2}$/.test(state ?? "");
  return !isKnown(place) || !isKnown(asked) || place === asked;
}

function dueTo(file: LineFile, paper: StatutoryPaper, { order, partyId }: Reader): PaperDue {
  const { propertyId } = order;
  const from = startOf(file, paper, order);
  const counted = from === null ? null : lastDay(file, paper, from);
  const letters = file.notices.filter(
    (notice) =>
      notice.paperId === paper.id &&
      notice.partyId === partyId &&
      (notice.propertyId === propertyId || notice.propertyId === null),
  );
  const sent = letters.filter(({ state }) => state === "sent");
  const gifts = sent.flatMap((notice) => giftsOf(file, paper, notice));
  const [gift = null] = gifts.toSorted((one, other) => one.on.localeCompare(other.on));
  const decision =
    file.paperWaivers.findLast(
      (each) =>
        each.paperId === paper.id && each.partyId === partyId && each.propertyId === propertyId,
    ) ?? null;
  const draft = letters.findLast(({ state }) => state === "draft") ?? null;
  const last = sent.at(-1) ?? null;
  const on = counted?.on ?? null;
  return {
    paper,
    partyId,
    propertyId,
    from,
    by: on,
    counted: counted?.sentence ?? "",
    enter: from === null ? whatToEnter(file, paper, order) : "",
    state: stateOf({ gift, decision, draft, last }),
    givenOn: gift?.on ?? null,
    late: gift !== null && on !== null && gift.on > on,
    mailed: gift?.mailed ?? false,
    confirmedOn: sent.flatMap((notice) => arrivalOf(file, notice).on ?? []).toSorted()[0] ?? null,
    wanting: gift === null && last !== null ? wantingOf(file, paper, last) : "",
    notice: gift === null ? (draft ?? last) : gift.notice,
    decision,
  };
}

function stateOf({
  gift,
  decision,
  draft,
  last,
}: {
  readonly gift: Gift | null;
  readonly decision: PaperWaiver | null;
  readonly draft: Notice | null;
  readonly last: Notice | null;
}): PaperState {
  if (gift !== null) return "given";
  if (decision?.givenUp) return "given-up";
  if (draft !== null) return "draft";
  return last === null ? "open" : "not-proven";
}

/** The day of the fact from which a paper is counted; null while it is not on file. */
function startOf(file: LineFile, { event }: StatutoryPaper, order: Order): Day | null {
  if (event === "contract") return order.on;
  const happened = happeningsOf(file).filter((each) => each.event === event);
  const days = happened.map(({ on }) => on).toSorted();
  // Work that was put off begins on the newest day; it ended on the last.
  return days.at(-1) ?? null;
}

function whatToEnter(file: LineFile, { event }: StatutoryPaper, { partyId }: Order): string {
  if (event === "contract") return `Enter the day on which ${sayParty(file, partyId)} signed.`;
  const what = event === "work-begins" ? "the day on which work begins" : "the last day of work";
  return `Enter ${what}, under “What happens next?”.`;
}

function lastDay(file: LineFile, { count, unit, way }: StatutoryPaper, from: Day) {
  const holidays = file.authority?.holidays ?? [];
  const rule = {
    ...{ count, unit, way, countsEventDay: false, fullDays: false, mailDays: 0 },
    // A last day that falls on a weekend stays there, or comes sooner: never later than was meant.
    roll: "none" as const,
    meaning: "due-by" as const,
  };
  return dayOfRule(rule, from, holidays, { mailed: false });
}

/** An attempt by which the paper counts as given. */
interface Gift {
  readonly on: Day;
  readonly mailed: boolean;
  readonly notice: Notice;
}

const WAYS: Readonly<Record<PaperWay, readonly DeliveryMethod[] | null>> = {
  any: null,
  "in-person": ["by-hand"],
  certified: ["certified"],
  "in-person-or-certified": ["by-hand", "certified"],
  "in-person-or-mail": ["by-hand", "certified", "first-class"],
};

const POST: readonly DeliveryMethod[] = ["first-class", "certified"];

function isAllowed({ by }: StatutoryPaper, method: DeliveryMethod): boolean {
  return WAYS[by]?.includes(method) ?? true;
}

function giftsOf(file: LineFile, paper: StatutoryPaper, notice: Notice): Gift[] {
  return file.deliveries
    .filter(({ noticeId, method }) => noticeId === notice.id && isAllowed(paper, method))
    .flatMap((attempt) => {
      const mailed = POST.includes(attempt.method);
      if (paper.given === "sent")
        return hasGone(attempt) ? [{ on: attempt.sentOn, mailed, notice }] : [];
      const proof = attemptProof(file, notice, attempt);
      return proof === null ? [] : [{ on: proof.on, mailed, notice }];
    });
}

function wantingOf(file: LineFile, paper: StatutoryPaper, notice: Notice): string {
  const went = file.deliveries.filter(({ noticeId }) => noticeId === notice.id);
  if (went.length === 0) return "no delivery is recorded";
  if (cameBack(arrivalOf(file, notice).state)) return "it came back";
  if (!went.some(({ method }) => isAllowed(paper, method)))
    return `it has to be delivered ${paper.by === "certified" ? "by certified mail" : BY_WORDS[paper.by]}`;
  return `sent ${formatFullDay(sentDayOf(file, notice) ?? notice.createdOn)}; nothing shows yet that it was delivered`;
}

/** Why somebody gets a paper and from when it counts: `3 calendar days after the contract is signed`. */
export function whenWords({ count, unit, way, event }: StatutoryPaper): string {
  if (count === 0)
    return way === "before" ? `before ${EVENT_WORDS[event]}` : `when ${EVENT_WORDS[event]}`;
  const [one, many] = UNIT_WORDS[unit];
  return `${count} ${count === 1 ? one : many} ${way} ${EVENT_WORDS[event]}`;
}

const UNIT_WORDS: Readonly<Record<StatutoryPaper["unit"], readonly [string, string]>> = {
  "calendar-days": ["calendar day", "calendar days"],
  "business-days": ["business day", "business days"],
  months: ["month", "months"],
};
