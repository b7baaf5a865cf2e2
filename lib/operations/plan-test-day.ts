import { insertRow, removeRow, updateRow } from "#db/queries/row.ts";
import type { Day } from "#lib/domain/calendar/day.ts";
import { formatDate } from "#lib/domain/calendar/format-day.ts";
import { laterBy, minutesOf } from "#lib/domain/calendar/time-of-day.ts";
import type { LineFile } from "#lib/domain/file/line-file.ts";
import type { TestDay, TestStop } from "#lib/domain/tiein/test-day.ts";
import { recordedStops, stopKey } from "#lib/domain/tiein/test-day-results.ts";
import { isDay } from "#lib/exchange/field.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { changeLine, find, refuse } from "./change.ts";

interface DayPlan {
  readonly lineId: string;
  /** Null: a new day. */
  readonly dayId: string | null;
  /** The plan as the person saw it, as JSON; null where that does not matter. */
  readonly seen: string | null;
  readonly on: Day;
  readonly controlPropertyId: string | null;
  readonly stops: readonly TestStop[];
  readonly note: string;
}

/** Longer than this nobody watches: 4 hours. */
const MOST_WAIT = 240;

/**
 * Plans a day of dye tests, or changes the plan. The stops are put in the order of their times.
 * Refuses a second dosing while the wait of the one before runs, an address or tie-in that is not in
 * the file, a change to a stop whose result is recorded, and a plan that somebody else changed since.
 */
export function planTestDay(
  act: Act,
  { lineId, ...plan }: DayPlan,
): Result<{ dayId: string }, Refusal> {
  const deal = { lineId, deed: "record-the-field", action: "plan-test-day" } as const;
  return changeLine(act, deal, (file) => {
    const old = file.testDays.find(({ id }) => id === plan.dayId) ?? null;
    if (plan.dayId !== null && old === null) return refuse("not-found", "dayId", "the test day");
    if (old !== null && plan.seen !== null && plan.seen !== JSON.stringify(old))
      return refuse("changed-meanwhile", "", old.plannedBy);
    const stops = plan.stops.toSorted((one, other) => one.startsAt.localeCompare(other.startsAt));
    const wrong =
      wrongPlan(file, plan) ??
      wrongStops(file, plan.stops) ??
      wrongRecorded(file, old, { on: plan.on, stops });
    if (wrong !== null) return wrong;
    const day: TestDay = {
      id: old?.id ?? act.newId(),
      on: plan.on,
      controlPropertyId: plan.controlPropertyId,
      stops,
      note: plan.note.trim(),
      plannedBy: act.actor.name,
      plannedOn: act.today,
    };
    const count = stops.length === 1 ? "1 stop" : `${stops.length} stops`;
    return ok({
      value: { dayId: day.id },
      sentence: `${old === null ? "Planned" : "Changed the plan of"} a test day on ${formatDate(day.on)} with ${count}.`,
      detail: { before: old, after: day },
      write: (db) => {
        if (!updateRow(db, "testDays", { lineId, row: day }))
          insertRow(db, "testDays", { lineId, row: day });
      },
    });
  });
}

/** Drops the plan of a test day. Refuses once a result is recorded on it. */
export function dropTestDay(
  act: Act,
  { lineId, dayId }: { lineId: string; dayId: string },
): Result<null, Refusal> {
  const deal = { lineId, deed: "record-the-field", action: "drop-test-day" } as const;
  return changeLine(act, deal, (file) => {
    const day = find(file.testDays, dayId, { path: "dayId", what: "the test day" });
    if (!day.ok) return day;
    if (recordedStops(file, day.value).length > 0)
      return refuse("in-use", "", "Results are recorded on this day");
    return ok({
      value: null,
      sentence: `Dropped the plan of the test day on ${formatDate(day.value.on)}.`,
      detail: { before: day.value },
      write: (db) => void removeRow(db, "testDays", { lineId, id: dayId }),
    });
  });
}

function wrongPlan(file: LineFile, { on, controlPropertyId, stops }: Omit<DayPlan, "lineId">) {
  if (!isDay(on)) return refuse("bad-value", "on", "Write a day as 2026-11-25");
  if (controlPropertyId !== null && !file.properties.some(({ id }) => id === controlPropertyId))
    return refuse("not-found", "controlPropertyId", "the control address");
  if (stops.length === 0) return refuse("missing-value", "stops", "Plan at least one stop");
  return null;
}

/** Paths name a stop by its place in the plan as it was given. */
function wrongStops(file: LineFile, stops: readonly TestStop[]) {
  for (const [at, stop] of stops.entries()) {
    const wrong = wrongStop(file, stop, at);
    if (wrong !== null) return wrong;
  }
  const inTurn = [...stops.entries()].toSorted(([, one], [, other]) =>
    one.startsAt.localeCompare(other.startsAt),
  );
  for (const [turn, [at, stop]] of inTurn.entries()) {
    const wrong = tooSoon(inTurn[turn - 1]?.[1], stop, at);
    if (wrong !== null) return wrong;
  }
  return null;
}

function wrongStop(file: LineFile, stop: TestStop, at: number) {
  const path = (field: string) => `stops.${at}.${field}`;
  if (!file.properties.some(({ id }) => id === stop.propertyId))
    return refuse("not-found", path("propertyId"), "an address of the plan");
  const unit = file.units.find(({ id }) => id === stop.unitId);
  if (stop.unitId !== null && unit?.propertyId !== stop.propertyId)
    return refuse("not-found", path("unitId"), "the unit at this address");
  if (stop.tieInIds.length === 0)
    return refuse("missing-value", path("tieInIds"), `Choose what is watched at stop ${at + 1}`);
  if (stop.tieInIds.some((each) => !file.tieIns.some(({ id }) => id === each)))
    return refuse("not-found", path("tieInIds"), "a tie-in of the plan");
  if (minutesOf(stop.startsAt) === null)
    return refuse("bad-value", path("startsAt"), "Write a time as 09:40");
  const { waitMinutes } = stop;
  if (!Number.isInteger(waitMinutes) || waitMinutes < 1 || waitMinutes > MOST_WAIT)
    return refuse("bad-value", path("waitMinutes"), `Write whole minutes, 1 to ${MOST_WAIT}`);
  return null;
}

/** One dosing at a time, or nobody knows whose dye it is. */
function tooSoon(before: TestStop | undefined, stop: TestStop, at: number) {
  if (before === undefined) return null;
  const free = (minutesOf(before.startsAt) ?? 0) + before.waitMinutes;
  if ((minutesOf(stop.startsAt) ?? 0) >= free) return null;
  const over = laterBy(before.startsAt, before.waitMinutes);
  return refuse(
    "bad-value",
    `stops.${at}.startsAt`,
    `One dosing at a time: the one at ${before.startsAt} is watched until ${over}`,
  );
}

function wrongRecorded(
  file: LineFile,
  old: TestDay | null,
  { on, stops }: { on: Day; stops: readonly TestStop[] },
) {
  if (old === null) return null;
  const recorded = recordedStops(file, old);
  if (recorded.length === 0) return null;
  if (on !== old.on) return refuse("frozen", "on", "a result is recorded on this day");
  const kept = new Map(stops.map((stop) => [stopKey(stop), stop]));
  const lost = recorded.find((stop) =>
    stop.tieInIds.some((id) => !kept.get(stopKey(stop))?.tieInIds.includes(id)),
  );
  return lost
    ? refuse("frozen", "stops", `the result of the stop at ${lost.startsAt} is recorded`)
    : null;
}
