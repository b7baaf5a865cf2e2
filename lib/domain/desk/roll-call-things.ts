import type { LineFile } from "../facts/line-file.ts";
import type { Report } from "../findings/report.ts";
import { openDoors, type RollCall, rollCallsOf } from "../rollcall/roll-call.ts";
import { rollCallLine } from "../rollcall/sentence.ts";
import { daysBetween } from "../time/days.ts";
import type { DueThing } from "./answer.ts";

/** Where doors are ticked off. */
export const ROLL_CALL_PAGE = "schedule/roll-call";

/** So many days ahead of a pause its roll-call presses. */
const HORIZON = 14;

/** The roll-calls that are open and near, or running already. */
export function openRollCalls(file: LineFile, report: Report): RollCall[] {
  return rollCallsOf(file, report).filter(
    (call) =>
      call.pressing &&
      openDoors(call).length > 0 &&
      daysBetween(report.today, call.pause.on) <= HORIZON,
  );
}

/**
 * Doors that nobody reached before drains are paused, or told that they are on again: due until each
 * is reached or waived by name; late from the day of the pause on.
 */
export function rollCallThings(file: LineFile, report: Report): Omit<DueThing, "lineId">[] {
  return openRollCalls(file, report).map((call) => ({
    sentence: rollCallLine(call, report.today),
    on: call.pause.on,
    kind: call.pause.on <= report.today ? "late" : "due",
    waitsOn: "office",
    question: "schedule",
    where: ROLL_CALL_PAGE,
  }));
}
