import type { LineFile } from "../facts/line-file.ts";
import type { Report } from "../findings/report.ts";
import { placesOfDay } from "../testing/water-off.ts";
import type { CallAsked } from "./letter-plan.ts";

/** A household with a need is called before it is told of a visit, about each day that has a stop there. */
export function callsBeforeVisit(
  file: LineFile,
  report: Report,
  propertyId: string | null,
): CallAsked[] {
  if (propertyId === null) return [];
  const planned = file.testDays
    .filter((day) => day.on >= report.today && placesOfDay(file, report, day).includes(propertyId))
    .map(({ on }) => on);
  const entry = file.events.findLast(({ event }) => event === "tenant-entry")?.on ?? null;
  const days = planned.length > 0 ? planned : [entry];
  return days.map((day) => ({ purpose: "test-visit", day, places: [propertyId] }));
}
