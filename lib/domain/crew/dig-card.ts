import { newestTicket } from "../calendar/happenings.ts";
import { clocksOf } from "../clocks/clocks.ts";
import { earliestStart, NOT_CALLED } from "../clocks/earliest-start.ts";
import type { LineFile } from "../facts/line-file.ts";
import type { Inspection, LocateTicket, Permit } from "../facts/permit.ts";
import type { UtilityAnswer, UtilityResponse } from "../facts/utility-response.ts";
import type { Clock } from "../findings/clock.ts";
import type { Report } from "../findings/report.ts";
import { responsesInForce, whyUtilityOpen } from "../holds/utility-holds.ts";
import { permitStateOf } from "../permit/steps.ts";
import { endOfPause, openDoors, type RollCall, rollCallsOf } from "../rollcall/roll-call.ts";
import { rollCallLine } from "../rollcall/sentence.ts";
import { crewSafety, type SafetyPart } from "../safety/crew-safety.ts";
import { capital } from "../say/capital.ts";
import type { Day } from "../time/day.ts";
import { formatDay } from "../time/format-day.ts";
import { type CrewNeed, needsOnDay } from "./crew-needs.ts";
import { type GasCrossing, gasCrossing } from "./gas-crossing.ts";
import { type LiveBranch, liveBranches } from "./live-branches.ts";

/** What one utility said, and what is against digging on the day of the card. */
interface CardResponse {
  readonly response: UtilityResponse;
  /** Null: marked or cleared, and good on that day. */
  readonly open: string | null;
}

/** Everything that a crew has to know on the morning of one day of digging. */
export interface DigCard {
  readonly on: Day;
  /** Why nobody digs, each a sentence; empty: nothing on file is against it. */
  readonly stops: readonly string[];
  readonly ticket: LocateTicket | null;
  /** When the ticket's marks open and run out, by the authority's rules. */
  readonly ticketClocks: readonly Clock[];
  readonly responses: readonly CardResponse[];
  readonly permits: readonly { readonly permit: Permit; readonly expiresOn: Day | null }[];
  /** Of the pause of that day; null: none is entered. */
  readonly rollCall: RollCall | null;
  readonly gas: GasCrossing;
  /** The depth of the dig and what it asks for; null: nothing is dug. */
  readonly trench: SafetyPart | null;
  readonly branches: readonly LiveBranch[];
  readonly inspections: readonly {
    readonly inspection: Inspection;
    readonly cutOffs: readonly Clock[];
  }[];
  /** For the crew only. */
  readonly needs: readonly CrewNeed[];
}

/** The next day of work: as an event or the locate ticket has it; today where neither does. */
export function nextDigDay(file: Pick<LineFile, "events" | "locateTickets">, today: Day): Day {
  const begun = file.events.filter(
    ({ event }) => event === "work-begins" || event === "drains-paused",
  );
  const days = begun.flatMap((event) => (endOfPause(event) >= today ? [event.on] : []));
  const asked = newestTicket(file)?.workBeginsOn ?? null;
  const next = [...days, ...(asked !== null && asked >= today ? [asked] : [])].toSorted()[0];
  return next === undefined || next < today ? today : next;
}

/**
 * The card for one day: what is against digging first. What nobody entered counts as against it: no
 * ticket, no response of any utility, no pause of drains while something live drains to the work.
 */
export function digCard(file: LineFile, report: Report, on: Day): DigCard {
  const clocks = clocksOf(file, report.today);
  const ticket = newestTicket(file);
  const responses = responsesInForce(file).map((response) => ({
    response,
    open: whyUtilityOpen(response, on),
  }));
  const ticketClocks = clocks.filter(({ subjectId }) => subjectId === ticket?.id);
  const rollCall = callOn(file, report, on);
  const branches = liveBranches(file, report);
  return {
    on,
    stops: [
      ...(ticket === null ? [callFirst(file, report)] : []),
      ...startStops(file, report, on),
      ...ticketStops({ ticket, ticketClocks, responses }, on),
      ...pauseStops(rollCall, branches, report.today),
    ],
    ticket,
    ticketClocks,
    responses,
    permits: file.permits
      .filter((permit) => permitStateOf(file, permit) !== "superseded")
      .map((permit) => ({ permit, expiresOn: expiryOf(clocks, permit) })),
    rollCall,
    gas: gasCrossing(file, report),
    trench: crewSafety(file, report).find(({ key }) => key === "trench") ?? null,
    branches,
    inspections: file.inspections
      .filter(({ result, bookedFor }) => result === "booked" && bookedFor >= report.today)
      .map((inspection) => ({
        inspection,
        cutOffs: clocks.filter(
          ({ subjectId, meaning }) => subjectId === inspection.id && meaning === "due-by",
        ),
      })),
    needs: needsOnDay(file, on),
  };
}

/** What keeps the work from beginning on that day: locate window, notices, permits, consents, holds. */
function startStops(file: LineFile, report: Report, on: Day): string[] {
  const { bars, latest, sentence } = earliestStart(file, report.today, report);
  if (file.line.closedOn !== null) return [sentence];
  // That nobody called is said with the ticket, with what to do.
  const against = bars.filter(
    ({ until, because }) => (until === null || until > on) && !because.startsWith(NOT_CALLED),
  );
  return [
    ...against.map(
      ({ until, because }) =>
        `${capital(because)}${until === null ? "" : ` (${formatDay(until, report.today)})`}.`,
    ),
    ...(latest !== null && latest < on
      ? [`The locate or a permit expires ${formatDay(latest, report.today)}, before this day.`]
      : []),
  ];
}

/** Nobody called the one-call center; from when it lets dig, where a rule tells. */
function callFirst(file: LineFile, report: Report): string {
  const bar = earliestStart(file, report.today, report).bars.find(({ because }) =>
    because.startsWith(NOT_CALLED),
  );
  const opens =
    bar === undefined || bar.until === null
      ? ""
      : ` If called in today, its window opens ${formatDay(bar.until, report.today)}.`;
  return `No locate ticket is on file: call 811 first.${opens}`;
}

const HAS_ANSWERED: ReadonlySet<UtilityAnswer> = new Set(["marked", "marked-in-part", "clear"]);

/** How long a utility's marks hold, in a cell; `isRuled` where the card tells when the rule ends them. */
export function marksGoodUntil(
  { answer, goodUntil }: Pick<UtilityResponse, "answer" | "goodUntil">,
  { isRuled, today }: { readonly isRuled: boolean; readonly today: Day },
): string {
  if (!HAS_ANSWERED.has(answer)) return "no marks yet";
  if (goodUntil !== null) return formatDay(goodUntil, today);
  return isRuled ? "by the rule above" : "not known";
}

function ticketStops(
  { ticket, ticketClocks, responses }: Pick<DigCard, "ticket" | "ticketClocks" | "responses">,
  on: Day,
): string[] {
  if (ticket === null) return [];
  if (responses.length === 0)
    return [
      "No utility’s response to the locate ticket is on file: check each one before digging.",
    ];
  const ends = ticketClocks.filter(({ meaning }) => meaning === "expires");
  const ended = ends.some((clock) => clock.on < on);
  // How long marks are good is said by the utility or by a rule; where neither does, nobody knows.
  const endless = responses.filter(
    ({ response, open }) =>
      open === null &&
      response.answer === "marked" &&
      response.goodUntil === null &&
      ends.length === 0,
  );
  return [
    ...responses.flatMap(({ response, open }) =>
      open === null ? [] : [`${response.utility || "A utility"} ${open}.`],
    ),
    ...endless.map(
      ({ response }) =>
        `${response.utility || "A utility"} marked, but until when its marks are good is not on file.`,
    ),
    ...(ended
      ? ["The marks of the locate ticket have expired by this day: call it in again."]
      : []),
  ];
}

function pauseStops(
  rollCall: RollCall | null,
  branches: readonly LiveBranch[],
  today: Day,
): string[] {
  if (rollCall !== null)
    return openDoors(rollCall).length === 0 ? [] : [`${rollCallLine(rollCall, today)}.`];
  return branches.length === 0
    ? []
    : ["No drain shutdown is entered for this day, and active branches drain to the work."];
}

function callOn(file: LineFile, report: Report, on: Day): RollCall | null {
  return (
    rollCallsOf(file, report).find(
      ({ matter, pause }) => matter === "drains-off" && pause.on <= on && on <= endOfPause(pause),
    ) ?? null
  );
}

function expiryOf(clocks: readonly Clock[], permit: Permit): Day | null {
  return (
    clocks
      .filter(({ subjectId, meaning }) => subjectId === permit.id && meaning === "expires")
      .map((clock) => clock.on)
      .toSorted()[0] ?? permit.expiresOn
  );
}
