import type { Day } from "./day.ts";
import { addDays, dayOf, nthOf, WEEKDAYS, weekday } from "./days.ts";

/** The statute behind the federal holidays, as it stands beside each. */
export const FEDERAL_SOURCE = "5 U.S.C. 6103";

export interface NamedDay {
  readonly day: Day;
  readonly name: string;
}

interface FederalHoliday {
  readonly name: string;
  /** The first year that this computes it for. */
  readonly since: number;
  readonly dayIn: (year: number) => Day;
}

/** Before 1986 some of the days stood elsewhere in the calendar; no file of ours needs them. */
const FIRST_YEAR = 1986;

/** 5 U.S.C. 6103(a), in its order. */
const FEDERAL_HOLIDAYS: readonly FederalHoliday[] = [
  holiday("New Year’s Day", (year) => dayOf(year, 1, 1)),
  holiday("Birthday of Martin Luther King, Jr.", (year) => nthOf(year, 1, [3, "Monday"])),
  holiday("Washington’s Birthday", (year) => nthOf(year, 2, [3, "Monday"])),
  holiday("Memorial Day", (year) => lastMondayOfMay(year)),
  // Public Law 117-17 of June 17, 2021.
  holiday("Juneteenth National Independence Day", (year) => dayOf(year, 6, 19), 2021),
  holiday("Independence Day", (year) => dayOf(year, 7, 4)),
  holiday("Labor Day", (year) => nthOf(year, 9, [1, "Monday"])),
  holiday("Columbus Day", (year) => nthOf(year, 10, [2, "Monday"])),
  holiday("Veterans Day", (year) => dayOf(year, 11, 11)),
  holiday("Thanksgiving Day", (year) => nthOf(year, 11, [4, "Thursday"])),
  holiday("Christmas Day", (year) => dayOf(year, 12, 25)),
];

/**
 * The federal legal holidays that are kept in a calendar year, on the days on which they are kept.
 *
 * 5 U.S.C. 6103(a); one that falls on a Saturday is kept on the Friday before (6103(b), for a week
 * of Monday to Friday), one on a Sunday on the Monday after (Executive Order 11582). So the New
 * Year's Day of 2028, a Saturday, is kept on December 31 of 2027 and stands in that year's list.
 * A start for an authority's own table, which outranks it: states and cities keep other days too.
 * Refuses years before 1986.
 */
export function federalHolidays(year: number): NamedDay[] {
  if (!Number.isInteger(year) || year < FIRST_YEAR)
    throw new RangeError(
      `Cannot list federal holidays: year must be >= ${FIRST_YEAR}, got ${year}`,
    );
  return [year, year + 1]
    .flatMap((each) =>
      FEDERAL_HOLIDAYS.filter(({ since }) => each >= since).map((of) => kept(of, each)),
    )
    .filter(({ day }) => day.startsWith(`${year}-`));
}

function kept({ name, dayIn }: FederalHoliday, year: number): NamedDay {
  const day = dayIn(year);
  if (weekday(day) === "Saturday") return { day: addDays(day, -1), name: `${name} (observed)` };
  if (weekday(day) === "Sunday") return { day: addDays(day, 1), name: `${name} (observed)` };
  return { day, name };
}

function holiday(name: string, dayIn: (year: number) => Day, since = FIRST_YEAR): FederalHoliday {
  return { name, dayIn, since };
}

function lastMondayOfMay(year: number): Day {
  const last = dayOf(year, 5, 31);
  return addDays(last, -WEEKDAYS.indexOf(weekday(last)));
}
