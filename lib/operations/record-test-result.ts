import type { Db } from "#db/open.ts";
import { countSave } from "#db/queries/revision.ts";
import { insertRow, updateRow } from "#db/queries/row.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import {
  type ControlResult,
  TEST_RESULTS,
  type TestResult,
  type TieInTest,
} from "#lib/domain/facts/test.ts";
import type { TestDay, TestStop } from "#lib/domain/facts/test-day.ts";
import { formatFeet } from "#lib/domain/length/station.ts";
import { streetOf } from "#lib/domain/party/stakeholders.ts";
import {
  CONTROL_OF,
  refusedStops,
  resultOf,
  stopKey,
  testIdOf,
  testsOfDay,
} from "#lib/domain/testing/test-day-results.ts";
import { isControlRun } from "#lib/domain/tiein/control-run.ts";
import { dosedWords, drainWords } from "#lib/domain/tiein/stop-words.ts";
import { laterBy, minutesOf } from "#lib/domain/time/time-of-day.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { changeLine, find, refuse } from "./change.ts";
import { pastDay } from "./past-day.ts";
import { changedOnLine } from "./seen.ts";

interface ResultWord {
  readonly lineId: string;
  readonly dayId: string;
  /** Which stop: see stopKey(). */
  readonly stop: string;
  readonly tieInId: string;
  readonly result: TestResult;
  /** When it was dosed, `09:42`; empty: as planned. */
  readonly startedAt: string;
  /** Until it was seen; or how long was watched in vain. Null: not noted, or the planned wait. */
  readonly minutes: number | null;
  readonly quantity: string;
  readonly dosedBy: string;
  readonly watchedBy: string;
  readonly filmed: string;
  readonly otherWaterBarred: boolean;
  readonly note: string;
  /** `seenOf(resultSeen(…))` as the form was filled in; not given: whatever is recorded now. */
  readonly seen?: string | undefined;
}

/** What was recorded at a stop when its form was filled in; its controls are other stops' results. */
export function resultSeen(test: TieInTest | null, { passed }: TestStop) {
  if (test === null) return { passed, test };
  const { controlPropertyId: _whose, controlResult: _control, ...said } = test;
  return { passed, test: said };
}

/**
 * Records what was seen at one stop of a test day, as an ordinary test of the tie-in. The same stop
 * pressed again corrects its test and makes no second one. A dosing at the control address sets the
 * control of the day's other tests there, before and after. A dosing of the pipe itself is no test of
 * anybody's: the plan keeps whether the dye passed the camera. Refuses a day that has not come, and an
 * address that refused entry.
 */
export function recordTestResult(
  act: Act,
  { lineId, seen, ...word }: ResultWord,
): Result<{ testId: string | null }, Refusal> {
  const deal = { lineId, deed: "record-the-field", action: "record-test-result" } as const;
  return changeLine<{ testId: string | null }>(act, deal, (file) => {
    const day = find(file.testDays, word.dayId, { path: "dayId", what: "the test day" });
    if (!day.ok) return day;
    const stop = day.value.stops.find((each) => stopKey(each) === word.stop);
    if (!stop) return refuse("not-found", "stop", "this stop of the plan");
    if (!stop.tieInIds.includes(word.tieInId))
      return refuse("not-found", "tieInId", "the tie-in watched at this stop");
    const old = resultOf(file, day.value, { stop, tieInId: word.tieInId });
    const changed = changedOnLine(file, seen, {
      now: resultSeen(old, stop),
      about: [old?.id ?? word.dayId],
    });
    const wrong = changed ?? pastDay(act, { day: day.value.on, path: "" }) ?? wrongWord(word);
    if (wrong !== null) return wrong;
    if (stop.propertyId === null)
      return recordPassing(file, day.value, { stop, result: word.result });
    if (refusedStops(file, day.value).some((each) => each.stop === stop))
      return refuse(
        "not-in-this-state",
        "",
        "Entry was refused here: record first that they let you in",
      );
    const test = testFrom(file, { day: day.value, stop, word });
    const others = otherTests(file, day.value, test);
    return ok({
      value: { testId: test.id },
      sentence: sentenceFor(file, test, old),
      detail: { before: old, after: test },
      write: (db) => {
        put(db, lineId, test);
        for (const each of others) put(db, lineId, each);
        countSave(db, { lineId, table: "tests", by: act.actor.name, at: act.now });
      },
    });
  });
}

/** Whether dye that went into the pipe itself passed the camera: kept with the plan. */
function recordPassing(
  file: LineFile,
  day: TestDay,
  { stop, result }: { readonly stop: TestStop; readonly result: TestResult },
) {
  const after: TestDay = {
    ...day,
    stops: day.stops.map((each) => (each === stop ? { ...each, passed: result } : each)),
  };
  const point = file.points.find(({ id }) => id === stop.pointId);
  const at = point ? `the ${point.kind} at ${formatFeet(point.station)}` : "an access of the pipe";
  const words = `Dye from ${at} ${PASSING_WORDS[result]}.`;
  const corrected = stop.passed === null ? words : `Corrected: ${words}`;
  return ok({
    value: { testId: null },
    sentence: stop.passed === result ? null : corrected,
    detail: { before: stop.passed, after: result },
    write: (db: Db) => void updateRow(db, "testDays", { lineId: file.line.id, row: after }),
  });
}

const PASSING_WORDS: Record<TestResult, string> = {
  positive: "was seen to pass the camera",
  "not-seen": "was not seen to pass the camera",
  inconclusive: "could not be told at the camera",
};

function wrongWord({ result, startedAt, minutes }: Omit<ResultWord, "lineId">) {
  if (!TEST_RESULTS.includes(result)) return refuse("bad-value", "result", "Select what was seen");
  if (startedAt !== "" && minutesOf(startedAt) === null)
    return refuse("bad-value", "startedAt", "Enter a time as 9:40 AM");
  if (minutes !== null && (!Number.isInteger(minutes) || minutes < 0 || minutes > 1_440))
    return refuse("bad-value", "minutes", "Enter whole minutes");
  return null;
}

interface Recorded {
  readonly day: TestDay;
  readonly stop: TestStop;
  readonly word: Omit<ResultWord, "lineId">;
}

function testFrom(file: LineFile, { day, stop, word }: Recorded): TieInTest {
  const startedAt = word.startedAt === "" ? stop.startsAt : word.startedAt;
  const seen = word.result === "positive";
  const isControl = stop.propertyId === day.controlPropertyId;
  return {
    id: testIdOf(day, stop, word.tieInId),
    tieInId: word.tieInId,
    propertyId: stop.propertyId,
    unitId: stop.unitId,
    kind: "dye",
    performedOn: day.on,
    fixture: drainWords(stop),
    colour: stop.colour,
    quantity: word.quantity.trim() === "" ? dosedWords(stop) : word.quantity.trim(),
    startedAt,
    firstSeenAt: seen && word.minutes !== null ? laterBy(startedAt, word.minutes) : "",
    seenAt: null,
    waitMinutes: seen ? stop.waitMinutes : (word.minutes ?? stop.waitMinutes),
    filmed: word.filmed.trim(),
    dosedBy: word.dosedBy.trim(),
    watchedBy: word.watchedBy.trim(),
    otherWaterBarred: word.otherWaterBarred,
    controlPropertyId: day.controlPropertyId,
    controlResult: isControl ? "not-run" : controlSoFar(file, day, word.tieInId),
    result: word.result,
    note: word.note.trim(),
  };
}

function controlSoFar(file: LineFile, day: TestDay, tieInId: string): ControlResult {
  const control = testsOfDay(file, day).find(
    (each) => each.tieInId === tieInId && isControlRun(each),
  );
  return control ? CONTROL_OF[control.result] : "not-run";
}

/** The day's tests on the tie-in that a dosing at the control address says something of. */
function otherTests(file: LineFile, day: TestDay, test: TieInTest): TieInTest[] {
  if (!isControlRun(test)) return [];
  const controlResult = CONTROL_OF[test.result];
  return testsOfDay(file, day)
    .filter((each) => each.tieInId === test.tieInId && !isControlRun(each))
    .filter((each) => each.controlResult !== controlResult)
    .map((each) => ({ ...each, controlPropertyId: test.propertyId, controlResult }));
}

function put(db: Db, lineId: string, test: TieInTest): void {
  if (!updateRow(db, "tests", { lineId, row: test })) insertRow(db, "tests", { lineId, row: test });
}

const RESULT_WORDS: Record<TestResult, string> = {
  positive: "was seen",
  "not-seen": "was not seen",
  inconclusive: "could not be told",
};

/** Null where the very same was recorded already. */
function sentenceFor(file: LineFile, test: TieInTest, old: TieInTest | null): string | null {
  if (JSON.stringify(old) === JSON.stringify(test)) return null;
  const label = file.tieIns.find(({ id }) => id === test.tieInId)?.label ?? "a tie-in";
  const property = file.properties.find(({ id }) => id === test.propertyId);
  const at = property ? streetOf(property.address) : "an address";
  const dye = test.colour === "" ? "Dye" : `${test.colour} dye`;
  const words = `${dye} from ${at} ${RESULT_WORDS[test.result]} at ${label}.`;
  return old === null ? words.charAt(0).toUpperCase() + words.slice(1) : `Corrected: ${words}`;
}
