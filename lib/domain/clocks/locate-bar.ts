import { newestTicket } from "../calendar/happenings.ts";
import type { LineFile } from "../facts/line-file.ts";
import type { Permit, PermitState } from "../facts/permit.ts";
import type { Report } from "../findings/report.ts";
import { stepsOf } from "../permit/steps.ts";
import { deedsOfWork } from "../split/work-deeds.ts";
import type { Day } from "../time/day.ts";
import { formatDate, formatDay } from "../time/format-day.ts";
import { formatTime } from "../time/time-of-day.ts";
import { clocksOf } from "./clocks.ts";
import { ranOut } from "./permit-bars.ts";

/**
 * Why the locate lets nobody begin to dig by this step; null: nothing of it is against it. Where the work
 * in force digs or bursts, a ticket has to be called by that day, its window has to be open and its marks
 * may not have expired. Emergency work waits for no window, but for the call.
 */
export function locateBar(
  file: LineFile,
  { tieIns }: Pick<Report, "tieIns">,
  { permit, state, on }: { readonly permit: Permit; readonly state: PermitState; readonly on: Day },
): string | null {
  if (!begins(file, permit, state) || !digs(file, tieIns)) return null;
  const locateTickets = file.locateTickets.filter(({ calledOn }) => calledOn <= on);
  const ticket = newestTicket({ ...file, locateTickets });
  if (ticket === null) return UNCALLED;
  if (state === "emergency") return null;
  const named = ticket.number === "" ? "The locate ticket" : `Locate ticket ${ticket.number}`;
  const clocks = clocksOf({ ...file, locateTickets }, on);
  const ended = ranOut(clocks, ticket.id, on);
  if (ended !== null)
    return `${named} expired on ${formatDay(ended, on)}: call 811 again before anyone digs`;
  const opens = clocks
    .filter(({ subjectId, meaning }) => subjectId === ticket.id && meaning === "not-before")
    .toSorted((one, other) => one.on.localeCompare(other.on))
    .at(-1);
  if (opens === undefined || opens.on <= on) return null;
  const hour = opens.at === "" ? "" : ` at ${formatTime(opens.at)}`;
  return `${named} was called in on ${formatDate(ticket.calledOn)}, and its window opens ${formatDay(opens.on, on)}${hour}: no one digs before`;
}

const UNCALLED =
  "The work digs, and no locate ticket was called in by that day: call 811 and enter the ticket first";

/** The work begins by it, also where the step that says so is left out. */
function begins(file: LineFile, permit: Permit, state: PermitState): boolean {
  if (state === "working" || state === "emergency") return true;
  const begun = stepsOf(file, permit).some((step) => BEGUN.includes(step.state));
  return state === "inspection-requested" && !begun;
}

const BEGUN: readonly PermitState[] = ["working", "emergency", "inspection-requested"];

function digs(file: LineFile, tieIns: Report["tieIns"]): boolean {
  return deedsOfWork(file, tieIns).some(({ stop }) => stop === "digging" || stop === "bursting");
}
