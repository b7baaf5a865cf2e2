import { newestTicket } from "../calendar/happenings.ts";
import { dayOfRule, earliestEventFor } from "../calendar/rule-day.ts";
import { landWithoutConsent } from "../consent/land-consents.ts";
import type { ClockRule } from "../facts/clock-rule.ts";
import type { LineFile } from "../facts/line-file.ts";
import type { StatutoryPaper } from "../facts/statutory-paper.ts";
import type { Clock, Telling, Told } from "../findings/clock.ts";
import type { Report } from "../findings/report.ts";
import { sayParty } from "../party/say.ts";
import { permitStanding } from "../permit/say.ts";
import { permitStateOf } from "../permit/steps.ts";
import { sayList } from "../say/say-list.ts";
import { deedsOfWork } from "../split/work-deeds.ts";
import { papersOn } from "../statutory/papers.ts";
import { holdsAgainst } from "../stops/stopped-by.ts";
import type { Day } from "../time/day.ts";
import { addDays } from "../time/days.ts";
import { formatDay } from "../time/format-day.ts";
import { formatTime } from "../time/time-of-day.ts";
import { clocksOf } from "./clocks.ts";
import { isEnd, permitBars, ranOut } from "./permit-bars.ts";
import { tellingOfStart, untoldIn } from "./telling.ts";
import { whiteLineBar } from "./white-line.ts";

/** One thing that keeps the work from starting. */
interface StartBar {
  /** First day on which it no longer does; null: it waits for something without a day. */
  readonly until: Day | null;
  /** To complete "because": `the locate marks are not due before then`. */
  readonly because: string;
  /** The rule's own words on how it was counted; empty where nothing was. */
  readonly sentence: string;
  readonly citation: string;
}

export interface EarliestStart {
  /** The first day that all dated bars allow; null while something without a day is open. */
  readonly day: Day | null;
  /** The last day that a locate ticket or a permit allows; null where none says. */
  readonly latest: Day | null;
  readonly bars: readonly StartBar[];
  readonly sentence: string;
}

/**
 * The day before which digging cannot start, worked backwards from what must come first: the locate
 * window, notices that must lie so many days ahead, every permit that the work needs, consents to dig,
 * and the holds that stop what is done where it is done. Where nothing was called or sent yet, it counts as if that happened today. A closed
 * line has no start.
 */
export function earliestStart(
  file: LineFile,
  today: Day,
  facts: StartFacts = { holds: [], tieIns: [] },
): EarliestStart {
  if (file.line.closedOn !== null)
    return { day: null, latest: null, bars: [], sentence: "The file is closed." };
  const clocks = clocksOf(file, today);
  const permits = permitBars(file, today, facts.tieIns, clocks);
  if (permits.length > 0 && permits.every(({ isDone }) => isDone)) return doneStart(file);
  const bars = [
    ...locateBars(file, { clocks, today }),
    ...leadBars(file, today),
    ...paperBars(file, today),
    ...permits.map(({ need, because }) => ({ ...waits(because), citation: need.citation })),
    ...consentBars(file, facts),
    ...holdBars(file, facts),
  ];
  const dated = bars.flatMap((bar) => (bar.until === null ? [] : [bar.until])).toSorted();
  const first = dated.at(-1) ?? today;
  const isOpen = bars.some((bar) => bar.until === null);
  const latest = latestStart(file, { clocks, today });
  return {
    day: isOpen ? null : first,
    latest,
    bars,
    sentence: [startSentence(bars, first, today), endSentence({ first, latest, today })]
      .filter((part) => part !== "")
      .join(" "),
  };
}

type StartFacts = Pick<Report, "holds" | "tieIns">;

/** Every permit that the work took is final: nothing is left to start under them. */
function doneStart(file: LineFile): EarliestStart {
  const final = file.permits.filter((permit) => permitStateOf(file, permit) === "final");
  const sentence = `Nothing left to start: ${final.map((permit) => permitStanding(file, permit)).join(", ")}.`;
  return { day: null, latest: null, bars: [], sentence };
}

/**
 * Statutory papers that have to be given before the work, or after which so many days have to pass:
 * each that is not given yet, and the day from which the last one lets the work begin.
 */
function paperBars(file: LineFile, today: Day): StartBar[] {
  const asked = papersOn(file).filter(
    ({ paper, state }) => state !== "given-up" && (leadsToWork(paper) || paper.workWaits > 0),
  );
  return [...new Map(asked.map(({ paper }) => [paper.id, paper])).values()].flatMap((paper) => {
    const own = asked.filter((due) => due.paper.id === paper.id);
    const missing = own.filter(({ givenOn }) => givenOn === null);
    if (missing.length > 0) {
      const names = sayList([...new Set(missing.map(({ partyId }) => sayParty(file, partyId)))], 4);
      return [{ ...waits(`“${paper.title}” is not given to ${names}`), citation: paper.citation }];
    }
    // A paper that was handed over before the contract was signed waits from the contract.
    const last = own
      .flatMap(({ givenOn, from }) => [
        givenOn ?? "",
        paper.event === "contract" ? (from ?? "") : "",
      ])
      .toSorted()
      .at(-1);
    if (last === undefined || paper.workWaits === 0) return [];
    const { on, sentence } = dayOfRule(waitOf(paper), last, file.authority?.holidays ?? [], {
      mailed: false,
    });
    const because = `so many days pass after “${paper.title}” was given`;
    return on > today ? [{ until: on, because, sentence, citation: paper.citation }] : [];
  });
}

function leadsToWork({ event, way }: StatutoryPaper): boolean {
  return event === "work-begins" && way === "before";
}

/** Full days after the paper was given, the day after the last of them the first for work. */
function waitOf({ workWaits, waitUnit }: StatutoryPaper) {
  return {
    ...{ count: workWaits, unit: waitUnit, way: "after" as const, meaning: "not-before" as const },
    ...{ countsEventDay: false, fullDays: true, roll: "none" as const, mailDays: 0 },
  };
}

interface Around {
  readonly clocks: readonly Clock[];
  readonly today: Day;
}

function rulesOf(file: LineFile, wanted: Partial<ClockRule>): readonly ClockRule[] {
  return (file.authority?.clockRules ?? []).filter(
    (rule) =>
      (wanted.event === undefined || rule.event === wanted.event) &&
      (wanted.meaning === undefined || rule.meaning === wanted.meaning) &&
      (wanted.way === undefined || rule.way === wanted.way),
  );
}

/** How the bar begins that waits for a locate nobody called in. */
export const NOT_CALLED = "the locate is not called in yet";

function locateBars(file: LineFile, { clocks, today }: Around): StartBar[] {
  const ticket = newestTicket(file);
  if (ticket === null) return callBars(file, today, `${NOT_CALLED}; if called in`);
  if (ranOut(clocks, ticket.id, today) !== null)
    return callBars(file, today, "the locate ticket expired; if called in again");
  const unlined = whiteLineBar(file);
  const windows = clocks
    .filter((clock) => clock.subjectId === ticket.id && clock.meaning === "not-before")
    .filter(({ on, at }) => on > today || (on === today && at !== ""))
    .map((clock) => ({
      until: clock.on,
      because: `the locate window opens then${clock.at === "" ? "" : ` at ${formatTime(clock.at)}`}`,
      sentence: clock.sentence,
      citation: clock.citation,
    }));
  return unlined === null
    ? windows
    : [{ ...waits(unlined.because), citation: unlined.citation }, ...windows];
}

function callBars(file: LineFile, today: Day, called: string): StartBar[] {
  return rulesOf(file, { event: "locate-called", meaning: "not-before" }).map((rule) => {
    const { on, sentence } = dayOfRule(rule, today, file.authority?.holidays ?? [], {
      mailed: false,
    });
    const because = `${called} today, the window opens then`;
    return { until: on, because, sentence, citation: rule.citation };
  });
}

/**
 * Notices that must lie ahead of the start: counted from today while somebody is not told, else from
 * the letter that went last.
 */
function leadBars(file: LineFile, today: Day): StartBar[] {
  const telling = tellingOfStart(file);
  const untold = untoldIn(telling);
  const isTold = telling.known && untold.length === 0;
  const holidays = file.authority?.holidays ?? [];
  return rulesOf(file, { event: "work-begins", way: "before", meaning: "due-by" }).flatMap(
    (rule) => {
      const from = isTold ? lastTold(telling, rule) : today;
      const until = earliestEventFor(rule, from, holidays);
      if (until === null || until <= today) return [];
      const { sentence } = dayOfRule(rule, until, holidays, { mailed: false });
      const because = isTold
        ? `“${rule.title}” can be met only from then on, counted from the last letter sent`
        : `“${rule.title}” can be met only from then on, counted from today${untoldWords(file, untold)}`;
      return [{ until, because, sentence, citation: rule.citation }];
    },
  );
}

/** The day that counts for whoever was told last; what went by the post has its days for mail. */
function lastTold({ recipients }: Telling, { mailDays }: ClockRule): Day {
  const days = recipients.map(({ on, mailed }) => addDays(on ?? "", mailed ? mailDays : 0));
  return days.toSorted().at(-1) ?? "";
}

function untoldWords(file: LineFile, untold: readonly Told[]): string {
  const names = [...new Set(untold.map(({ partyId }) => sayParty(file, partyId)))];
  return names.length === 0 ? "" : ` (not notified yet: ${sayList(names)})`;
}

function consentBars(file: LineFile, facts: StartFacts): StartBar[] {
  return landWithoutConsent(file, facts).map(waits);
}

/** So many holds are named in one sentence; of more the rest are counted. */
const MOST_NAMED = 12;

/** Holds that stop what the work does, where it does it. */
function holdBars(file: LineFile, { holds, tieIns }: StartFacts): StartBar[] {
  const open = holdsAgainst(holds, deedsOfWork(file, tieIns));
  if (open.length === 0) return [];
  const names = open.map((hold) => hold.subjectLabel);
  const labels = names.length > MOST_NAMED ? sayList(names, MOST_NAMED) : names.join(", ");
  return [
    waits(
      `${open.length === 1 ? "a hold blocks" : `${open.length} holds block`} the work: ${labels}`,
    ),
  ];
}

function waits(because: string): StartBar {
  return { until: null, because, sentence: "", citation: "" };
}

/** The earliest of the days by which a ticket or a permit in force must have been used. */
function latestStart(file: LineFile, { clocks, today }: Around): Day | null {
  const ticket = newestTicket(file);
  const ends = clocks.filter((clock) => {
    const { settled, subjectId, on } = clock;
    const isOurs = subjectId === ticket?.id || file.permits.some(({ id }) => id === subjectId);
    return isEnd(clock) && isOurs && !settled && on >= today;
  });
  return ends.map((clock) => clock.on).toSorted()[0] ?? null;
}

function startSentence(bars: readonly StartBar[], first: Day, today: Day): string {
  const waiting = bars.filter((bar) => bar.until === null).map((bar) => bar.because);
  const last = bars.find((bar) => bar.until === first);
  const before =
    last === undefined ? "" : `before ${formatDay(first, today)}, because ${last.because}`;
  if (waiting.length > 0) {
    const even = before === "" ? "" : ` Even then, not ${before}.`;
    return `Cannot start yet, because ${waiting.join("; ")}.${even}`;
  }
  if (before !== "") return `Cannot start ${before}.`;
  return "Nothing entered here prevents starting today.";
}

function endSentence(days: { first: Day; latest: Day | null; today: Day }): string {
  const { first, latest, today } = days;
  if (latest === null) return "";
  const words = formatDay(latest, today);
  if (latest < first) return `The locate or permit expires ${words}, before that: renew in time.`;
  return `The start must be by ${words}.`;
}
