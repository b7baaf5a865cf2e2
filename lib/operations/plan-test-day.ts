import { insertRow, removeRow, updateRow } from "#db/queries/row.ts";
import { entryRefused } from "#lib/domain/consent/entry-refused.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { nameRow } from "#lib/domain/facts/references.ts";
import type { TestDay, TestStop } from "#lib/domain/facts/test-day.ts";
import type { Report } from "#lib/domain/findings/report.ts";
import { formatFeet } from "#lib/domain/length/station.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { VIEW } from "#lib/domain/testing/plan-test-day.ts";
import { recordedStops, stopKey } from "#lib/domain/testing/test-day-results.ts";
import { placesOfDay } from "#lib/domain/testing/water-off.ts";
import type { Day } from "#lib/domain/time/day.ts";
import { formatDate } from "#lib/domain/time/format-day.ts";
import { laterBy, minutesOf } from "#lib/domain/time/time-of-day.ts";
import { isDay } from "#lib/exchange/field.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { callFirstWords } from "./call-first.ts";
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
  readonly plantToldOn: Day | null;
  readonly plantTold: string;
  readonly note: string;
}

/** Longer than this nobody watches: 4 hours. */
const MOST_WAIT = 240;

/**
 * Plans a day of dye tests, or changes the plan. The stops are put in the order of their times.
 * Refuses a second dosing while the one before is watched or rinsed, tie-ins that one camera can't
 * watch from one place, a control above what is watched, an address that refused entry, an address,
 * access or tie-in that is not in the file, a change to a stop whose result is recorded, a plan that
 * somebody else changed since, and a day to come that a household with a need did not agree to.
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
    const wrong = wrongDay(file, reportOn(file, act.today), { plan, old, stops });
    if (wrong !== null) return wrong;
    const day: TestDay = {
      id: old?.id ?? act.newId(),
      on: plan.on,
      controlPropertyId: plan.controlPropertyId,
      stops,
      plantToldOn: plan.plantToldOn,
      plantTold: plan.plantTold.trim(),
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

/** Households with a need that the day goes into, or keeps water off at, agreed to it beforehand. */
function callBefore(file: LineFile, report: Report, day: Planned) {
  if (day.on < report.today) return null;
  const places = placesOfDay(file, report, day);
  const words = callFirstWords(file, { purpose: "test-visit", day: day.on }, places);
  return words === null ? null : refuse("held", "on", words);
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
      sentence: `Deleted the plan of the test day on ${formatDate(day.value.on)}.`,
      detail: { before: day.value },
      write: (db) => void removeRow(db, "testDays", { lineId, id: dayId }),
    });
  });
}

type Planned = Omit<DayPlan, "lineId">;

function wrongDay(
  file: LineFile,
  report: Report,
  day: {
    readonly plan: Planned;
    readonly old: TestDay | null;
    readonly stops: readonly TestStop[];
  },
) {
  const { plan, old, stops } = day;
  const recorded = old === null ? [] : recordedStops(file, old);
  const kept = new Set(recorded.map(stopKey));
  return (
    wrongPlan(file, plan) ??
    wrongStops(file, plan.stops) ??
    wrongView(report, plan.stops) ??
    wrongControl(report, plan, kept) ??
    wrongEntry(file, plan.stops, kept) ??
    wrongRecorded(recorded, old, { on: plan.on, stops }) ??
    callBefore(file, report, plan)
  );
}

function wrongPlan(file: LineFile, { on, controlPropertyId, stops, plantToldOn }: Planned) {
  if (!isDay(on)) return refuse("bad-value", "on", "Enter a date as 11/25/2026");
  if (plantToldOn !== null && !isDay(plantToldOn))
    return refuse("bad-value", "plantToldOn", "Enter a date as 11/25/2026");
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
  if (stop.propertyId !== null && !file.properties.some(({ id }) => id === stop.propertyId))
    return refuse("not-found", path("propertyId"), "an address of the plan");
  if (stop.pointId !== null && !file.points.some(({ id }) => id === stop.pointId))
    return refuse("not-found", path("pointId"), "the access that is dosed");
  if ((stop.propertyId === null) === (stop.pointId === null))
    return refuse(
      "missing-value",
      path("propertyId"),
      `Choose an address or an access of the pipe at stop ${at + 1}, not both`,
    );
  const unit = file.units.find(({ id }) => id === stop.unitId);
  if (stop.unitId !== null && unit?.propertyId !== stop.propertyId)
    return refuse("not-found", path("unitId"), "the unit at this address");
  if (stop.tieInIds.length === 0)
    return refuse("missing-value", path("tieInIds"), `Choose what is watched at stop ${at + 1}`);
  if (stop.tieInIds.some((each) => !file.tieIns.some(({ id }) => id === each)))
    return refuse("not-found", path("tieInIds"), "a tie-in of the plan");
  return wrongTimes(stop, path);
}

function wrongTimes(stop: TestStop, path: (field: string) => string) {
  if (minutesOf(stop.startsAt) === null)
    return refuse("bad-value", path("startsAt"), "Enter a time as 9:40 AM");
  const { waitMinutes, rinseMinutes, flushGallons } = stop;
  if (!Number.isInteger(waitMinutes) || waitMinutes < 1 || waitMinutes > MOST_WAIT)
    return refuse("bad-value", path("waitMinutes"), `Enter whole minutes, 1 to ${MOST_WAIT}`);
  if (!Number.isInteger(rinseMinutes) || rinseMinutes < 0 || rinseMinutes > MOST_WAIT)
    return refuse("bad-value", path("rinseMinutes"), `Enter whole minutes, 0 to ${MOST_WAIT}`);
  if (flushGallons !== null && (!Number.isInteger(flushGallons) || flushGallons < 0))
    return refuse("bad-value", path("flushGallons"), "Enter whole gallons, or leave it blank");
  return null;
}

/** One dosing at a time, or nobody knows whose dye it is. */
function tooSoon(before: TestStop | undefined, stop: TestStop, at: number) {
  if (before === undefined) return null;
  const { startsAt, waitMinutes, rinseMinutes } = before;
  const free = (minutesOf(startsAt) ?? 0) + waitMinutes + rinseMinutes;
  if ((minutesOf(stop.startsAt) ?? 0) >= free) return null;
  const over = laterBy(startsAt, waitMinutes);
  const rinsed = rinseMinutes === 0 ? "" : ` and rinsed until ${laterBy(over, rinseMinutes)}`;
  return refuse(
    "bad-value",
    `stops.${at}.startsAt`,
    `One dosing at a time: the one at ${startsAt} is watched until ${over}${rinsed}`,
  );
}

/** One camera watches one place: all that is watched at a stop has to be in view together. */
function wrongView({ tieIns }: Report, stops: readonly TestStop[]) {
  for (const [at, { tieInIds }] of stops.entries()) {
    const watched = tieIns
      .filter(({ tieIn }) => tieInIds.includes(tieIn.id))
      .flatMap(({ tieIn, station }) => (station === null ? [] : [{ label: tieIn.label, station }]))
      .toSorted((one, other) => one.station - other.station);
    const [first, last] = [watched[0], watched.at(-1)];
    if (first === undefined || last === undefined || last.station - first.station <= VIEW) continue;
    return refuse(
      "bad-value",
      `stops.${at}.tieInIds`,
      `One camera watches one place at a time: ${first.label} and ${last.label} are ${formatFeet(last.station - first.station)} apart. Watch them at stops of their own`,
    );
  }
  return null;
}

/** Dye of a control above would color the pipe before it gets to the camera. */
function wrongControl(
  { tieIns }: Report,
  { controlPropertyId, stops }: Planned,
  kept: ReadonlySet<string>,
) {
  const own = tieIns.filter(({ propertyId, live }) => live && propertyId === controlPropertyId);
  const highest = Math.max(...own.flatMap(({ station }) => station ?? []));
  if (controlPropertyId === null || !Number.isFinite(highest)) return null;
  const dosings = stops.filter(
    (stop) => stop.propertyId === controlPropertyId && !kept.has(stopKey(stop)),
  );
  for (const { tieInIds } of dosings) {
    const below = tieIns.find(
      ({ tieIn, station }) => tieInIds.includes(tieIn.id) && station !== null && station <= highest,
    );
    if (below !== undefined)
      return refuse(
        "bad-value",
        "controlPropertyId",
        `The control joins at ${formatFeet(highest)}, above ${below.tieIn.label}: its dye would color the pipe before the camera. Choose an address below, or dose the pipe itself from above first`,
      );
  }
  return null;
}

/** Nobody goes where somebody said no; what was tested before that stays. */
function wrongEntry(file: LineFile, stops: readonly TestStop[], kept: ReadonlySet<string>) {
  for (const [at, stop] of stops.entries()) {
    const { propertyId, unitId } = stop;
    if (propertyId === null || kept.has(stopKey(stop))) continue;
    const refusal = entryRefused(file, { propertyId, unitId });
    if (refusal === null) continue;
    const name = nameRow(file, "properties", propertyId).replace(/^property /, "");
    return refuse(
      "bad-value",
      `stops.${at}.propertyId`,
      `${name} refused entry on ${formatDate(refusal.on)}: take this stop out, or record that they let you in now`,
    );
  }
  return null;
}

function wrongRecorded(
  recorded: readonly TestStop[],
  old: TestDay | null,
  { on, stops }: { on: Day; stops: readonly TestStop[] },
) {
  if (old === null || recorded.length === 0) return null;
  if (on !== old.on) return refuse("frozen", "on", "a result is recorded on this day");
  const kept = new Map(stops.map((stop) => [stopKey(stop), stop]));
  const lost = recorded.find((stop) => {
    const now = kept.get(stopKey(stop));
    return now?.passed !== stop.passed || stop.tieInIds.some((id) => !now?.tieInIds.includes(id));
  });
  return lost
    ? refuse("frozen", "stops", `the result of the stop at ${lost.startsAt} is recorded`)
    : null;
}
