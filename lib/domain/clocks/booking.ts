import { dayOfRule } from "../calendar/rule-day.ts";
import type { InspectionKind } from "../facts/authority.ts";
import type { LineFile } from "../facts/line-file.ts";
import type { Permit } from "../facts/permit.ts";
import type { Clock } from "../findings/clock.ts";
import { heldInspections, kindsFor } from "../permit/inspections.ts";
import { permitName } from "../permit/say.ts";
import { isInForce, permitStateOf } from "../permit/steps.ts";
import type { Day } from "../time/day.ts";
import { formatFullDay } from "../time/format-day.ts";
import { formatTime } from "../time/time-of-day.ts";
import { enteredEnd } from "./work-end.ts";

/**
 * By when each inspection that holds the backfill or the final has to be booked, so that it can be on
 * the last day of work: counted back by the authority’s lead, with its cut-off. None while nobody said
 * when the work ends, or where the authority names no lead. Settled once one is booked or passed.
 */
export function bookingClocks(file: LineFile, today: Day): Clock[] {
  const end = enteredEnd(file);
  if (end === null) return [];
  return file.permits
    .filter((permit) => isInForce(permitStateOf(file, permit)))
    .flatMap((permit) =>
      kindsFor(file, permit)
        .filter(({ neededBefore, lead }) => neededBefore !== "no" && lead > 0)
        .map((kind) => bookingClock(file, permit, { kind, end, today })),
    );
}

function bookingClock(
  file: LineFile,
  permit: Permit,
  { kind, end, today }: { kind: InspectionKind; end: Day; today: Day },
): Clock {
  const counted = dayOfRule(ruleOf(kind), end, file.authority?.holidays ?? [], { mailed: false });
  const at = kind.leadUnit === "hours" ? counted.at : kind.cutOff;
  const cutOff =
    kind.cutOff === "" ? "" : ` Calls after ${formatTime(kind.cutOff)} count for the next day.`;
  const isBooked = heldInspections(file, permit).some(
    ({ kindId, result }) => kindId === kind.id && (result === "booked" || result === "passed"),
  );
  return {
    key: `booking:${permit.id}:${kind.id}`,
    title: `Book inspection: ${kind.title} (${permitName(permit)})`,
    meaning: "due-by",
    startedOn: today < counted.on ? today : counted.on,
    on: counted.on,
    at,
    sentence: `To be inspected on ${formatFullDay(end)}, the last day of work: ${counted.sentence}${cutOff}`,
    citation: kind.citation,
    asOf: kind.asOf,
    subjectId: permit.id,
    settled: isBooked || end < today || file.line.closedOn !== null,
    telling: null,
  };
}

function ruleOf({ lead, leadUnit }: InspectionKind) {
  return {
    count: lead,
    unit: leadUnit,
    way: "before",
    countsEventDay: false,
    fullDays: false,
    roll: "backwards",
    mailDays: 0,
    meaning: "due-by",
  } as const;
}
