import { type EarliestStart, earliestStart } from "../clocks/earliest-start.ts";
import type { LineFile } from "../facts/line-file.ts";
import type { Clock } from "../findings/clock.ts";
import type { Report } from "../findings/report.ts";
import { isInForce, permitStateOf } from "../permit/steps.ts";
import { rollCallLine } from "../rollcall/sentence.ts";
import { capital } from "../say/capital.ts";
import { sayCount, sayParts } from "../say/count.ts";
import { scopeInForce } from "../sharing/scope-in-force.ts";
import type { Day } from "../time/day.ts";
import { daysBetween } from "../time/days.ts";
import { clockWords, runningClocks } from "./clock-words.ts";
import { type Opening, PRESSING, type Reply, replyWith } from "./reply.ts";
import { openRollCalls, ROLL_CALL_PAGE } from "./roll-call-things.ts";

/** So many days ahead a clock presses. */
const SOON = 7;
const MOST = 2;

const CLOSE_OUT: Opening = {
  closes: "Write the closeout letters and close the file",
  where: "schedule#close",
  pressing: PRESSING.someTime,
};

/** `Reply-by in 3 days; locate window opens Thursday`. */
export function scheduleAnswer(file: LineFile, report: Report): Reply {
  if (file.line.closedOn !== null) return replyWith("The file is closed", []);
  const groups = runningClocks(file, report.clocks);
  const told = groups.slice(0, MOST).map((group) => clockWords(file, group, report.today));
  const more = groups.length - told.length;
  const sentence =
    told.length === 0
      ? "No deadlines running"
      : sayParts([...told, more === 0 ? "" : `${more} more deadline${more === 1 ? "" : "s"}`]);
  return replyWith(sentence, openings(file, report));
}

function openings(file: LineFile, report: Report): Opening[] {
  const open = [
    ...rollCallOpenings(file, report),
    ...runningClocks(file, report.clocks).flatMap(({ clock }) => clockOpening(clock, report.today)),
  ];
  const states = file.permits.map((permit) => permitStateOf(file, permit));
  if (states.includes("final")) return [...open, CLOSE_OUT];
  const isUnderWay = states.some((state) => isInForce(state) && state !== "issued");
  if (scopeInForce(file).length === 0 || isUnderWay) return open;
  const start = earliestStart(file, report.today, report);
  return [...open, { ...startOpening(start), where: "schedule#start" }];
}

/** What stands before a start: one thing by name, several by their number. */
function startOpening({ bars, sentence }: EarliestStart): Opening {
  const closes =
    bars.length > 1
      ? `${capital(sayCount(bars.length, "thing"))} must come before the work can start`
      : sentence.replace(/\.$/, "");
  return { closes, pressing: PRESSING.someTime };
}

/** Doors that are not reached press as a deadline does; from the day of the pause on they are late. */
function rollCallOpenings(file: LineFile, report: Report): Opening[] {
  return openRollCalls(file, report).map((call) => {
    const ahead = daysBetween(report.today, call.pause.on);
    return {
      closes: rollCallLine(call, report.today),
      where: ROLL_CALL_PAGE,
      pressing: ahead <= 0 ? PRESSING.late : PRESSING.soon,
    };
  });
}

function clockOpening(clock: Clock, today: Day): Opening[] {
  if (clock.meaning === "not-before") return [];
  const ahead = daysBetween(today, clock.on);
  if (ahead < 0) return [{ closes: `Overdue: ${clock.title}`, pressing: PRESSING.late }];
  if (ahead > SOON) return [];
  return [{ closes: `Due first: ${clock.title}`, pressing: PRESSING.soon - ahead }];
}
