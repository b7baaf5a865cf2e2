import type { LineFile } from "../facts/line-file.ts";
import type { TestDay, TestStop } from "../facts/test-day.ts";
import type { Report } from "../findings/report.ts";
import type { Day } from "../time/day.ts";
import { laterBy } from "../time/time-of-day.ts";
import { testDayPeople } from "./test-day-people.ts";
import { stopsInForce } from "./test-day-results.ts";
import type { TimeSpan } from "./water-off.ts";

/** What one test day means for one address. */
export interface VisitDay {
  readonly on: Day;
  /** When the crew is in the building, a slot for each dosing there. */
  readonly slots: readonly (TimeSpan & { readonly stop: TestStop })[];
  /** The address is dosed only to compare with the others: where its drains go is known. */
  readonly isControl: boolean;
  /** When no water may be used there. */
  readonly waterOff: readonly TimeSpan[];
}

interface Address {
  readonly propertyId: string;
  /** The only unit that the reader has to do with; null: all of the property. */
  readonly unitId: string | null;
}

/**
 * The test days still to come that have to do with an address: those with a dosing there, and those
 * on which its water disturbs the watch. A dosing at a place that refused entry since is none.
 */
export function visitDays(file: LineFile, report: Report, address: Address): VisitDay[] {
  return file.testDays
    .filter(({ on }) => on >= report.today)
    .toSorted((one, other) => one.on.localeCompare(other.on))
    .map((day) => ({
      on: day.on,
      isControl: day.controlPropertyId === address.propertyId,
      slots: slotsAt(file, day, address),
      waterOff:
        testDayPeople(file, report, day).waterOff.find(
          ({ propertyId }) => propertyId === address.propertyId,
        )?.spans ?? [],
    }))
    .filter(({ slots, waterOff }) => slots.length > 0 || waterOff.length > 0);
}

function slotsAt(file: LineFile, day: TestDay, { propertyId, unitId }: Address) {
  return stopsInForce(file, day)
    .filter((stop) => stop.propertyId === propertyId)
    .filter((stop) => unitId === null || stop.unitId === null || stop.unitId === unitId)
    .map((stop) => ({
      stop,
      from: stop.startsAt,
      to: laterBy(stop.startsAt, stop.waitMinutes + stop.rinseMinutes),
    }));
}
