import { agreementProgress } from "../agreement/agreement-progress.ts";
import type { LineFile } from "../facts/line-file.ts";
import type { LetterKind } from "../facts/notice.ts";
import type { Report } from "../findings/report.ts";
import { overdueAccounts } from "../ledger/sentence.ts";
import { nextMeeting } from "../paper/next-meeting.ts";
import { type Recipient, recipientsOf } from "../paper/recipients.ts";
import { permitStateOf } from "../permit/steps.ts";
import { sayCount } from "../say/count.ts";
import { latestSplit } from "../split/latest-split.ts";
import type { Day } from "../time/day.ts";
import { formatDay } from "../time/format-day.ts";
import { isStale } from "./cost-answer.ts";

/** A kind of letter that the file calls for now. */
export interface LetterDue {
  readonly kind: LetterKind;
  /** What on file calls for it. */
  readonly because: string;
  /** Those whom it is due to and who have none yet, not even a draft. */
  readonly recipients: readonly Recipient[];
}

/** What calls for a kind of letter, and from when on a letter counts for that; null: nothing does. */
type Cause = (file: LineFile, report: Report) => { because: string; since?: Day } | null;

const CAUSES: readonly (readonly [LetterKind, Cause])[] = [
  ["spill", spilled],
  ["drain-pause", (file, report) => ahead(file, report, "drains-paused", "Drains are shut down")],
  ["drains-back", drainsBack],
  ["work-start", workAhead],
  ["street-parking", (file, report) => ahead(file, report, "street-closed", "Parking is closed")],
  ["meeting", meetingAhead],
  ["authority-response", authorityAsked],
  ["test-visit", testDayAhead],
  ["finding", cameraSaw],
  ["tie-in-inquiry", ownerUnknown],
  ["proposed-split", splitChosen],
  ["entry-consent", areaEntered],
  ["joint-agreement", agreementDrafted],
  ["change-order", changeProposed],
  ["share-demand", moneyPastDue],
  ["close-out", permitFinal],
];

/**
 * The letters that the file calls for now and that some of their recipients have not, the most
 * pressing first: what endangers people or has a day, then the order of the job. Nothing on a closed
 * file.
 */
export function lettersDue(file: LineFile, report: Report): LetterDue[] {
  if (file.line.closedOn !== null) return [];
  return CAUSES.flatMap(([kind, causeOf]) => {
    const cause = causeOf(file, report);
    if (cause === null) return [];
    const { because, since = "" } = cause;
    const recipients = recipientsOf(file, report, kind).filter(
      (recipient) => !hasLetter(file, { kind, recipient, since }),
    );
    return recipients.length === 0 ? [] : [{ kind, because, recipients }];
  });
}

/** Whether there is one of this kind, sent or drafted since a day; an amount wants its own version. */
function hasLetter(
  file: LineFile,
  { kind, recipient, since }: { kind: LetterKind; recipient: Recipient; since: Day },
): boolean {
  return file.notices.some(
    (notice) =>
      notice.kind === kind &&
      notice.partyId === recipient.partyId &&
      notice.propertyId === recipient.propertyId &&
      notice.tieInId === recipient.tieInId &&
      (kind !== "proposed-split" || notice.splitId === recipient.splitId) &&
      notice.createdOn >= since,
  );
}

function spilled({ spillSteps }: LineFile, { today }: Report) {
  const known = spillSteps.findLast(({ kind }) => kind === "known");
  return known === undefined
    ? null
    : { because: `A spill is on file, ${formatDay(known.on, today)}`, since: known.on };
}

/** A day that was set for something that people have to be told of before it comes. */
function ahead(
  file: LineFile,
  { today }: Report,
  event: "drains-paused" | "work-begins" | "street-closed",
  words: string,
) {
  const days = file.events.filter((each) => each.event === event).map(({ on }) => on);
  const next = days.findLast((on) => on >= today);
  if (next === undefined) return null;
  const before = days.filter((on) => on < today).toSorted();
  return { because: `${words} ${formatDay(next, today)}`, since: before.at(-1) ?? "" };
}

function meetingAhead({ meetings }: LineFile, { today }: Report) {
  const next = nextMeeting(meetings, today);
  if (next === null || next.on < today) return null;
  const before = meetings.map(({ on }) => on).filter((on) => on < today);
  return {
    because: `A meeting is set for ${formatDay(next.on, today)}`,
    since: before.toSorted().at(-1) ?? "",
  };
}

/** A pause is over: those who were told of it wait for word. */
function drainsBack({ events }: LineFile, { today }: Report) {
  const back = events.findLast(({ event }) => event === "drains-back");
  const pause = events.findLast(({ event }) => event === "drains-paused");
  if (back === undefined || back.on > today || (pause !== undefined && back.on < pause.on))
    return null;
  return { because: `Drains are back on since ${formatDay(back.on, today)}`, since: back.on };
}

function changeProposed({ changeOrders }: LineFile) {
  const open = changeOrders.findLast(({ state }) => state === "proposed");
  return open === undefined
    ? null
    : { because: `Change order ${open.number} is proposed`, since: open.orderedOn };
}

function workAhead(file: LineFile, report: Report) {
  const event = ahead(file, report, "work-begins", "Work begins");
  if (event !== null) return event;
  const day = file.locateTickets.findLast(
    ({ workBeginsOn }) => workBeginsOn !== null,
  )?.workBeginsOn;
  return day && day >= report.today
    ? { because: `Work begins ${formatDay(day, report.today)}` }
    : null;
}

const ASKS = ["returned-incomplete", "corrections", "denied"] as const;

function authorityAsked(file: LineFile, { today }: Report) {
  const asking = file.permits.find((permit) =>
    ASKS.some((state) => state === permitStateOf(file, permit)),
  );
  if (asking !== undefined) {
    const step = file.permitSteps.findLast(({ permitId }) => permitId === asking.id);
    return { because: "The authority sent the permit back", since: step?.on ?? "" };
  }
  const order = file.events.findLast(({ event }) => event === "authority-order");
  return order === undefined
    ? null
    : { because: `The authority gave an order ${formatDay(order.on, today)}`, since: order.on };
}

function testDayAhead({ testDays }: LineFile, { today }: Report) {
  const next = testDays.map(({ on }) => on).find((on) => on >= today);
  return next === undefined ? null : { because: `A test day is set for ${formatDay(next, today)}` };
}

function cameraSaw({ runs, observations }: LineFile) {
  return runs.length === 0 || observations.length === 0
    ? null
    : { because: "The camera run is on file, and every owner is to know what it saw" };
}

function ownerUnknown({ observations }: LineFile, { tieIns }: Report) {
  const open = tieIns.filter(
    ({ standing, propertyId }) => standing === "undocumented" && propertyId === null,
  );
  if (observations.length === 0 || open.length === 0) return null;
  return { because: `${sayCount(open.length, "tie-in")} with an unknown owner` };
}

function splitChosen(file: LineFile, report: Report) {
  const version = latestSplit(file);
  if (version === null || isStale(report, version)) return null;
  return { because: `Version ${version.number} of the split is chosen` };
}

function areaEntered({ digAreas }: LineFile) {
  return digAreas.length === 0 ? null : { because: "Lots are to be entered or dug" };
}

function agreementDrafted(file: LineFile) {
  const ready = file.agreements.some((agreement) =>
    ["reviewed", "being-signed"].includes(agreementProgress(file, agreement).state),
  );
  return ready ? { because: "The maintenance agreement is ready to sign" } : null;
}

function moneyPastDue(file: LineFile, { today }: Report) {
  const late = overdueAccounts(file, today);
  return late.length === 0 ? null : { because: `${sayCount(late.length, "account")} past due` };
}

function permitFinal(file: LineFile) {
  const isFinal = file.permits.some((permit) => permitStateOf(file, permit) === "final");
  return isFinal ? { because: "The permit is final" } : null;
}
