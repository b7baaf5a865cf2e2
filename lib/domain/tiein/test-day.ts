import type { Day } from "../calendar/day.ts";

/** The plan of one day of dye tests: one address after another, one colour at a time. */
export interface TestDay {
  readonly id: string;
  readonly on: Day;
  /** An address whose tie-in is known: dye from there shows that the watcher would see it. */
  readonly controlPropertyId: string | null;
  readonly stops: readonly TestStop[];
  readonly note: string;
  readonly plannedBy: string;
  readonly plannedOn: Day;
}

/** One dosing at one address. */
export interface TestStop {
  readonly propertyId: string;
  readonly unitId: string | null;
  /** The tie-ins that are watched. */
  readonly tieInIds: readonly string[];
  readonly fixture: string;
  readonly colour: string;
  /** Local clock time, `09:40`. */
  readonly startsAt: string;
  readonly waitMinutes: number;
}
