import { z } from "zod";
import type { FieldProblem } from "#app/action.ts";
import { numberOrNull, oneInOr, packed, text, texts, typedIn } from "#app/fields.ts";
import { TEST_RESULTS } from "#lib/domain/facts/test.ts";
import { DRAINS, FLOORS, type TestStop } from "#lib/domain/facts/test-day.ts";
import { parseTime } from "#lib/domain/time/time-of-day.ts";
import { err, ok, type Result } from "#lib/result.ts";

/** More stops than this are no day's work. */
const MOST_STOPS = 60;

/** `9:40 am` or `09:40` as it is kept; what is no time is left for the operation to refuse. */
export const time = text.transform((typed) => parseTime(typed) ?? typed);

const Place = z.tuple([z.string().nullable(), z.string().nullable(), z.string().nullable()]);

const number = text.transform(Number);
const drain = oneInOr(DRAINS, null);

const STOP = z.object({
  place: packed(Place),
  tieInIds: texts,
  fixture: text,
  colour: text,
  dose: text,
  flushGallons: numberOrNull,
  startsAt: time,
  waitMinutes: number,
  rinseMinutes: number,
  passed: oneInOr(TEST_RESULTS, null),
});

/** Numbers of the stops in the form that have an address. */
export function stopPlaces(form: FormData): number[] {
  const count = Math.min(Number(form.get("count")) || 0, MOST_STOPS);
  const places = Array.from({ length: count }, (_, at) => at);
  return places.filter((at) => (form.get(`stops.${at}.place`) ?? "") !== "");
}

/** One stop as typed, or what is wrong in it; its fields are named `stops.3.dose`. */
export function stopFrom(form: FormData, at: number): Result<TestStop, FieldProblem> {
  const before = `stops.${at}.`;
  const own = Object.fromEntries(
    Object.entries(typedIn(form))
      .filter(([name]) => name.startsWith(before))
      .map(([name, value]) => [name.slice(before.length), value]),
  );
  const read = STOP.safeParse(own);
  if (!read.success) {
    const [issue] = read.error.issues;
    return err({
      path: `${before}${String(issue?.path[0] ?? "place")}`,
      message: issue?.message ?? "",
    });
  }
  const { place, ...typed } = read.data;
  const [propertyId, unitId, pointId] = place;
  const drains = FLOORS.flatMap((floor) => {
    const used = drain.parse(own[`drain.${floor}`]);
    return used === null ? [] : [{ floor, drain: used }];
  });
  return ok({ propertyId, unitId, pointId, ...typed, drains });
}

/** The plan counts only stops with an address; the sentence stands beside the form's own field. */
export function pathOnForm(path: string, places: readonly number[]): string {
  const own = path.replace(
    /^stops\.(\d+)\./,
    (_, at: string) => `stops.${places[Number(at)] ?? at}.`,
  );
  return own.replace(/\.(propertyId|unitId|pointId)$/, ".place");
}
