import { type EntryRefusal, entryRefused } from "../consent/entry-refused.ts";
import type { LineFile } from "../facts/line-file.ts";
import type { ControlResult, TestResult, TieInTest } from "../facts/test.ts";
import type { TestDay, TestStop } from "../facts/test-day.ts";
import { keyOf } from "../say/key.ts";

/** What tells a stop from the others of its day, whatever their order. */
export function stopKey({ startsAt, propertyId, unitId, pointId, colour }: TestStop): string {
  return [startsAt, propertyId ?? pointId ?? "", unitId ?? "", colour].join("|");
}

/**
 * Id of the test that a result of a stop makes: the same stop makes the same test, by which it is found
 * again. Of the day's id and what tells the stop it keeps short keys: an id stands in addresses and in
 * the line file, with 64 letters and digits at most.
 */
export function testIdOf(day: Pick<TestDay, "id">, stop: TestStop, tieInId: string): string {
  return `${testsBegin(day)}${keyOf([stopKey(stop), tieInId].join("|"))}`;
}

/** How the ids of a day's tests begin. */
function testsBegin({ id }: Pick<TestDay, "id">): string {
  return `test-${keyOf(id)}-`;
}

/** The id, as it is made now, of a test whose id was once the plain words: `day|09:00|p12||green|t2`. */
export function testIdFrom(plain: string): string {
  const [dayId = "", ...rest] = plain.split("|");
  return `${testsBegin({ id: dayId })}${keyOf(rest.join("|"))}`;
}

/** The test that was recorded for a stop and a tie-in; null while there is none. */
export function resultOf(
  { tests }: Pick<LineFile, "tests">,
  day: Pick<TestDay, "id">,
  { stop, tieInId }: { stop: TestStop; tieInId: string },
): TieInTest | null {
  const id = testIdOf(day, stop, tieInId);
  return tests.find((test) => test.id === id) ?? null;
}

/** Stops for which a result was recorded: they stay as they are. */
export function recordedStops(file: Pick<LineFile, "tests">, day: TestDay): TestStop[] {
  return day.stops.filter((stop) => isRecorded(file, day, stop));
}

function isRecorded(file: Pick<LineFile, "tests">, day: TestDay, stop: TestStop): boolean {
  return (
    stop.passed !== null ||
    stop.tieInIds.some((tieInId) => resultOf(file, day, { stop, tieInId }) !== null)
  );
}

type PlanFile = Parameters<typeof entryRefused>[0] & Pick<LineFile, "tests">;

/** A stop that nobody goes to, since somebody there said no after it was planned. */
export interface RefusedStop {
  readonly stop: TestStop;
  readonly refusal: EntryRefusal;
}

/** The stops that were planned at places that refused entry since; what was tested stays tested. */
export function refusedStops(file: PlanFile, day: TestDay): RefusedStop[] {
  return day.stops.flatMap((stop) => {
    const { propertyId, unitId } = stop;
    if (propertyId === null || isRecorded(file, day, stop)) return [];
    const refusal = entryRefused(file, { propertyId, unitId });
    return refusal === null ? [] : [{ stop, refusal }];
  });
}

/** The stops that are gone to. */
export function stopsInForce(file: PlanFile, day: TestDay): TestStop[] {
  const refused = new Set(refusedStops(file, day).map(({ stop }) => stop));
  return day.stops.filter((stop) => !refused.has(stop));
}

/** A test day that is planned still wants results at stops that are gone to. */
export function resultsWanted(file: PlanFile & Pick<LineFile, "testDays">): boolean {
  return file.testDays.some((day) =>
    stopsInForce(file, day).some((stop) => !isRecorded(file, day, stop)),
  );
}

/** Every test of the day on a tie-in, the control's own dosing among them. */
export function testsOfDay(
  { tests }: Pick<LineFile, "tests">,
  day: Pick<TestDay, "id">,
): TieInTest[] {
  return tests.filter(({ id }) => id.startsWith(testsBegin(day)));
}

/** Dye from the control address seen here too spoils the day's tests; not seen is what is wanted. */
export const CONTROL_OF: Record<TestResult, ControlResult> = {
  positive: "positive",
  "not-seen": "negative",
  inconclusive: "not-run",
};
