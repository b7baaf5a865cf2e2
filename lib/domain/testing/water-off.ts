import type { LineFile } from "../facts/line-file.ts";
import type { TestDay, TestStop } from "../facts/test-day.ts";
import type { Report } from "../findings/report.ts";
import { servedBy } from "../line/served-by.ts";
import { laterBy } from "../time/time-of-day.ts";

/** From the first dosing to the end of the last watch, as `09:00` and `10:15`. */
export interface TimeSpan {
  readonly from: string;
  readonly to: string;
}

/** Who keeps water off, but for the dosing itself, and when. */
export interface WaterOff {
  readonly propertyId: string;
  readonly unitIds: readonly string[];
  /** Its flow passes a watched place; or it may, being a candidate. */
  readonly passes: "surely" | "perhaps";
  /** While the places are watched that its flow passes, one span for each. */
  readonly spans: readonly TimeSpan[];
}

type Places = Pick<LineFile, "properties" | "units">;
type Findings = Pick<Report, "tieIns">;
type Day = Pick<TestDay, "stops" | "controlPropertyId">;

/** Of stops in the order of their times; empty without a stop. */
export function spanOf(stops: readonly TestStop[]): TimeSpan {
  const ends = stops.map(({ startsAt, waitMinutes }) => laterBy(startsAt, waitMinutes));
  return { from: stops[0]?.startsAt ?? "", to: ends.toSorted().at(-1) ?? "" };
}

/** Stops that follow each other while the camera lies at one place. */
function placesOf(stops: readonly TestStop[]): (readonly TestStop[])[] {
  const places: TestStop[][] = [];
  for (const stop of stops) {
    const last = places.at(-1);
    const same = last?.[0]?.tieInIds.toSorted().join(" ") === stop.tieInIds.toSorted().join(" ");
    if (last && same) last.push(stop);
    else places.push([stop]);
  }
  return places;
}

/** Who keeps water off on a test day, and when. */
export function waterOffFor(file: Places, report: Findings, day: Day): WaterOff[] {
  const places = placesOf(day.stops).map((stops) => ({
    span: spanOf(stops),
    ...whosePasses(file, report, { ...day, stops }),
  }));
  return file.properties.flatMap(({ id }): WaterOff[] => {
    const own = places.filter(({ surely, perhaps }) => surely.has(id) || perhaps.has(id));
    if (own.length === 0) return [];
    return [
      {
        propertyId: id,
        unitIds: file.units.filter((unit) => unit.propertyId === id).map((unit) => unit.id),
        passes: own.some(({ surely }) => surely.has(id)) ? "surely" : "perhaps",
        spans: own.map(({ span }) => span),
      },
    ];
  });
}

/** Whose flow passes one watched place, and whose may. A place that is not measured is passed by all. */
function whosePasses(
  { properties }: Pick<LineFile, "properties">,
  { tieIns }: Findings,
  { stops, controlPropertyId }: Day,
): { surely: ReadonlySet<string>; perhaps: ReadonlySet<string> } {
  const watched = new Set(stops.flatMap(({ tieInIds }) => tieInIds));
  const stations = tieIns
    .filter(({ tieIn }) => watched.has(tieIn.id))
    .map(({ station }) => station ?? 0);
  const dosed = stops.flatMap(({ propertyId }) => propertyId ?? []);
  const unplaced = properties.filter(({ stake }) => stake === "candidate").map(({ id }) => id);
  return {
    surely: new Set(servedBy(tieIns, stations.length === 0 ? 0 : Math.min(...stations)).properties),
    perhaps: new Set([...dosed, ...unplaced].filter((id) => id !== controlPropertyId)),
  };
}

/** Every place that a test day goes into or keeps water off at. */
export function placesOfDay(file: Places, report: Findings, day: Day): string[] {
  const entered = [...day.stops.map(({ propertyId }) => propertyId), day.controlPropertyId];
  const off = waterOffFor(file, report, day).map(({ propertyId }) => propertyId);
  return [...new Set([...entered, ...off])].filter((id) => id !== null);
}
