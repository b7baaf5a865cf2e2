import { earliestStart } from "../clocks/earliest-start.ts";
import { enteredEnd } from "../clocks/work-end.ts";
import type { ClockEvent } from "../facts/clock-rule.ts";
import { areaLacks } from "../facts/dig-area.ts";
import type { DeliveryMethod, LetterKind } from "../facts/notice.ts";
import { formatCents } from "../money/format-cents.ts";
import { permitStateOf } from "../permit/steps.ts";
import { mayBeDemanded } from "../tiein/may-be-demanded.ts";
import { formatDate } from "../time/format-day.ts";
import { billOf, changeTold } from "./body-bill.ts";
import { digAreasOf, insuranceFor } from "./body-consent.ts";
import { demanded } from "./body-money.ts";
import { visitDaysOf } from "./body-visit.ts";
import { isAuthority, spillSteps, workStanding } from "./body-work.ts";
import { workBegins } from "./common.ts";
import { type LetterFacts, type LetterInput, letterFacts } from "./facts.ts";
import { eventOf, hoursWords } from "./hours.ts";
import { nextMeeting } from "./next-meeting.ts";

/** Letters about a day that is set, and what of it they can't do without. */
const EVENT_OF: Partial<
  Record<LetterKind, { kind: ClockEvent; what: string; words: string; place: boolean }>
> = {
  "landlord-entry": {
    ...{ kind: "tenant-entry", what: "The entry", words: "entry into a home", place: false },
  },
  "street-parking": {
    ...{ kind: "street-closed", what: "The closing", words: "street parking closed", place: true },
  },
};

type Check = (facts: LetterFacts) => string | null;

/** A finding informs: a day to answer by is the office's choice there. */
const TO_ANSWER: readonly LetterKind[] = [
  "tie-in-inquiry",
  "proposed-split",
  "entry-consent",
  "joint-agreement",
  "share-demand",
];

/** Carried by the post. */
const POSTED: readonly DeliveryMethod[] = ["first-class", "certified"];

const CHECKS: readonly Check[] = [
  hasReplyBy,
  hasVisitDay,
  hasPauseHours,
  hasWorkDay,
  mayBegin,
  hasDigArea,
  isInsured,
  hasSpill,
  hasPayTerms,
  isClosed,
  isBuilt,
  isSettled,
  hasShare,
  isOpen,
  isFresh,
  isDemandable,
  hasTieIn,
  hasDrainsBack,
  hasDayAndPlace,
  hasMeeting,
  hasChangeOrder,
  hasBill,
];

/**
 * What a letter still lacks before it should go out, each in a sentence that says what to enter. A
 * street address is asked for where the post carries it.
 * The letter composes all the same, with “not yet set” in its place.
 */
export function letterGaps(
  input: LetterInput,
  { method = "first-class" }: { readonly method?: DeliveryMethod } = {},
): string[] {
  const facts = letterFacts(input);
  const checks = POSTED.includes(method) ? [...CHECKS, hasAddress] : CHECKS;
  return checks.flatMap((check) => {
    const gap = check(facts);
    return gap === null ? [] : [gap];
  });
}

function hasReplyBy({ notice }: LetterFacts): string | null {
  const asks = TO_ANSWER.includes(notice.kind) && notice.replyBy === null;
  return asks ? "No reply-by date is set." : null;
}

function hasAddress({ party, property }: LetterFacts): string | null {
  const address = party.mailing ?? property?.address;
  if (address && address.street !== "" && address.zip !== "") return null;
  return `The address of ${party.name} has no street or no ZIP code.`;
}

function hasVisitDay(facts: LetterFacts): string | null {
  const { notice, place } = facts;
  if (notice.kind !== "test-visit" || visitDaysOf(facts).length > 0) return null;
  const entry = eventOf(facts, "tenant-entry");
  if (facts.file.testDays.length === 0 && entry !== null)
    return hoursWords(entry, facts.words) === ""
      ? "The hours of the visit are not set: enter when it begins and ends with the event, or plan a test day."
      : null;
  return `No test day to come has a stop at ${place} or asks it to keep water off: plan the day first.`;
}

function hasPauseHours(facts: LetterFacts): string | null {
  if (facts.notice.kind !== "drain-pause") return null;
  const event = eventOf(facts, "drains-paused");
  if (event === null)
    return "The day of the shutdown is not set: enter the event “drain shutdown” under Dates.";
  return hoursWords(event, facts.words) === ""
    ? "The hours of the pause are not set: enter when it begins and ends with the event."
    : null;
}

function hasWorkDay(facts: LetterFacts): string | null {
  if (facts.notice.kind !== "work-start") return null;
  if (workBegins(facts) === null)
    return "The first day of work is not set: enter it with the locate ticket, or as an event.";
  if (enteredEnd(facts.file) === null)
    return "How long the work takes is not set: enter the event “work begins” with its last day and hours.";
  return hoursWords(eventOf(facts, "work-begins"), facts.words) === ""
    ? "The hours of work are not set: enter when it begins and ends with the event."
    : null;
}

/** Nobody is told of a start that the permits, the locate or a consent does not allow. */
function mayBegin(facts: LetterFacts): string | null {
  const { file, report, notice } = facts;
  const begins = workBegins(facts);
  if (notice.kind !== "work-start" || begins === null) return null;
  const { bars, day, latest, sentence } = earliestStart(file, report.today, report);
  if (bars.length === 0 && day === null) return sentence;
  const late =
    latest !== null && begins > latest ? [`The start must be by ${formatDate(latest)}.`] : [];
  const against = bars.flatMap(({ until, because }) => {
    if (until === null) return [`: ${because}.`];
    return until > begins ? [`, but not before ${formatDate(until)}, because ${because}.`] : [];
  });
  const gaps = against.map((why) => `Work cannot begin on ${formatDate(begins)}${why}`);
  return gaps.length + late.length === 0 ? null : [...gaps, ...late].join(" ");
}

function isInsured(facts: LetterFacts): string | null {
  if (facts.notice.kind !== "entry-consent") return null;
  const paper = insuranceFor(facts);
  const fine = paper.state === "in-force" || paper.state === "end-of-work-unknown";
  return fine ? null : paper.sentence;
}

function hasDigArea(facts: LetterFacts): string | null {
  if (facts.notice.kind !== "entry-consent") return null;
  const areas = digAreasOf(facts);
  if (areas.length === 0)
    return `The area to enter or dig at ${facts.place} is not entered: where, how large, which days, who puts the surface back.`;
  const lacks = [...new Set(areas.flatMap(areaLacks))];
  return lacks.length === 0
    ? null
    : `Of the area at ${facts.place} is not entered: ${lacks.join(", ")}.`;
}

function hasSpill(facts: LetterFacts): string | null {
  if (facts.notice.kind !== "spill") return null;
  const steps = spillSteps(facts);
  const known = steps.find(({ kind }) => kind === "known");
  if (known === undefined || known.place === "")
    return "When and where the spill was first noticed is not entered.";
  if (!isAuthority(facts)) return null;
  const lacks = [
    ...(known.at === "" ? ["the hour at which it was noticed"] : []),
    ...(known.gallons === null ? ["the estimated volume"] : []),
    ...(known.reached === "" ? ["what it reached"] : []),
    ...(steps.some(({ kind }) => kind === "flow-stopped") ? [] : ["whether the flow was stopped"]),
  ];
  return lacks.length === 0 ? null : `For the report, ${lacks.join(", ")} is not entered.`;
}

function hasPayTerms({ notice, office }: LetterFacts): string | null {
  if (
    notice.kind === "proposed-split" &&
    (office.payDays === null || office.depositPercent === null)
  )
    return "How and when a share is paid is not entered: add days to pay and deposit under Office.";
  if (notice.kind === "share-demand" && (office.payee === "" || office.payMethods.length === 0))
    return "Payee and payment methods are not entered: add them under Office.";
  return null;
}

function isClosed(facts: LetterFacts): string | null {
  if (facts.notice.kind !== "close-out" || workStanding(facts) === "final") return null;
  const open = facts.file.permits.filter((permit) => permitStateOf(facts.file, permit) !== "final");
  if (open.length === 0) return "No permit is final: nothing on file shows that the work is done.";
  const names = open.map(({ number }) => (number === "" ? "without a number" : number));
  return `Permit ${names.join(", ")} is not final.`;
}

function isBuilt(facts: LetterFacts): string | null {
  if (facts.notice.kind !== "close-out" || facts.file.built.length > 0) return null;
  return "What was built is not on file: record it with the permit first.";
}

function isSettled(facts: LetterFacts): string | null {
  if (facts.notice.kind !== "close-out" || facts.share === null) return null;
  const open = demanded(facts);
  return open > 0 ? `Of the share of ${facts.place}, ${formatCents(open)} is still due.` : null;
}

function hasShare({ notice, split, share, place }: LetterFacts): string | null {
  if (notice.kind !== "proposed-split" && notice.kind !== "share-demand") return null;
  if (split === null) return "No split has been chosen yet.";
  return share === null ? `The split has no share for ${place}.` : null;
}

function isOpen(facts: LetterFacts): string | null {
  const { notice, share, place } = facts;
  if (notice.kind !== "share-demand" || share === null || demanded(facts) > 0) return null;
  return `${place} has no balance due.`;
}

function isFresh({ notice, split, outcome }: LetterFacts): string | null {
  if (notice.kind !== "proposed-split" || split === null || outcome !== null) return null;
  return "The split is out of date: facts have changed since it was chosen. Update the split first.";
}

function isDemandable({ notice, own, report, place }: LetterFacts): string | null {
  if (notice.kind !== "share-demand") return null;
  return own.some((finding) => mayBeDemanded(finding, report))
    ? null
    : `Nothing on file shows well enough that ${place} is on the line; a payment demand needs level 5 evidence or the owner’s written acceptance.`;
}

function hasTieIn({ notice, asked }: LetterFacts): string | null {
  return notice.kind === "tie-in-inquiry" && asked === null
    ? "The letter does not say which tie-in it asks about."
    : null;
}

/** Nobody is told that drains may be used before somebody has said so, with day and hour. */
function hasDrainsBack(facts: LetterFacts): string | null {
  if (facts.notice.kind !== "drains-back") return null;
  const back = eventOf(facts, "drains-back");
  if (back === null || back.at === "")
    return "When the drains may be used again is not entered: enter the event “drains are back on” with its time.";
  const pause = eventOf(facts, "drains-paused");
  const before = pause !== null && `${back.on} ${back.at}` < `${pause.on} ${pause.at}`;
  if (before) return "The drains were shut down again after that: enter when they are back on.";
  return back.on > facts.report.today ? "The drains are not back on yet." : null;
}

function hasDayAndPlace(facts: LetterFacts): string | null {
  const event = EVENT_OF[facts.notice.kind];
  if (event === undefined) return null;
  const entered = eventOf(facts, event.kind);
  if (entered === null)
    return `${event.what} has no day: enter the event “${event.words}” under Schedule.`;
  const lacks = [
    ...(hoursWords(entered, facts.words) === "" ? ["its hours"] : []),
    ...(event.place && entered.reference === "" ? ["its place, under “Number or place”"] : []),
  ];
  if (lacks.length > 0) return `Of the event “${event.words}” is not entered: ${lacks.join(", ")}.`;
  return (entered.lastOn ?? entered.on) < facts.report.today
    ? `The event “${event.words}” is past: enter the new day.`
    : null;
}

function hasMeeting(facts: LetterFacts): string | null {
  if (facts.notice.kind !== "meeting") return null;
  const set = nextMeeting(facts.file.meetings, facts.report.today);
  if (set === null) return "No meeting is planned: enter its day under Meetings.";
  const lacks = [
    ...(hoursWords(set, facts.words) === "" ? ["its hours"] : []),
    ...(set.place === "" ? ["its place"] : []),
  ];
  if (lacks.length > 0)
    return `The meeting lacks ${lacks.join(" and ")}: enter that under Meetings.`;
  return set.on < facts.report.today ? "The meeting is past: enter the new day." : null;
}

function hasChangeOrder(facts: LetterFacts): string | null {
  if (facts.notice.kind !== "change-order") return null;
  const told = changeTold(facts);
  if (told === null) return "No change order is on file.";
  if (told.order.reason === "") return "The change order says no reason: enter it under Cost.";
  return told.share === null
    ? `What the change order does to the share of ${facts.place} can’t be worked out: choose a split first.`
    : null;
}

function hasBill(facts: LetterFacts): string | null {
  const { notice, office, place } = facts;
  if (notice.kind !== "invoice-cover") return null;
  if (billOf(facts) === null) return `${place} has no invoice with a balance due.`;
  return office.payee === "" || office.payMethods.length === 0
    ? "Payee and payment methods are not entered: add them under Office."
    : null;
}
