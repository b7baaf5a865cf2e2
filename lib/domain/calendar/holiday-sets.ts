import DateHolidays from "date-holidays";
import type { Day } from "../time/day.ts";
import { addDays, nthOf, partsOf, weekday } from "../time/days.ts";
import { FEDERAL_SOURCE, federalHolidays, type NamedDay } from "../time/federal-holidays.ts";
import { IF_ADOPTED, IF_ADOPTED_NOTE } from "./in-doubt.ts";

/** A holiday that an authority may keep, to be looked at before it is brought in. */
export interface OfferedHoliday extends NamedDay {
  readonly source: string;
  /** Proposed: kept by nation or state. The others only some offices keep. */
  readonly usual: boolean;
  /** What to look at before it is taken; empty where there is nothing. */
  readonly note: string;
}

/** Edition of the list of states' holidays (date-holidays, ISC and CC BY 3.0). */
export const LIST_VERSION = "3.37.0";

/** Ends the source of a day from the list, which nobody compared with a statute. */
export const LIST_UNCHECKED = ": check with the authority";

/** States with a list, and the District of Columbia, by their names. */
export const HOLIDAY_STATES: readonly { readonly code: string; readonly name: string }[] =
  Object.entries(new DateHolidays().getStates("US", "en") ?? {})
    .map(([code, name]) => ({ code, name }))
    .toSorted((one, other) => one.name.localeCompare(other.name));

/**
 * States whose own statute was read, with the days that it has besides the federal ones. The list
 * has Washington's Friday after Thanksgiving for a mere observance; RCW 1.16.050(1) makes it a legal
 * holiday.
 */
const BY_STATUTE: Readonly<Record<string, (year: number) => OfferedHoliday[]>> = {
  WA: (year) => [
    {
      day: addDays(nthOf(year, 11, [4, "Thursday"]), 1),
      name: "Native American Heritage Day",
      source: "RCW 1.16.050(1)",
      usual: true,
      note: "",
    },
  ],
};

/**
 * California: Gov. Code 6700 leaves Dr. King's and Cesar Chavez's days to the city, county or district
 * that makes them its own, and does not have the Friday after Thanksgiving at all (read at
 * codes.findlaw.com/ca/government-code/gov-sect-6700 and law.justia.com/codes/california/2007/gov).
 */
const ONLY_IF_ADOPTED: Readonly<Record<string, (year: number) => ReadonlyMap<Day, string>>> = {
  CA: (year) =>
    new Map([
      [nthOf(year, 1, [3, "Monday"]), "Cal. Gov. Code 6700(a)(3)"],
      [`${year}-03-31`, "Cal. Gov. Code 6700(a)(7)"],
      [addDays(nthOf(year, 11, [4, "Thursday"]), 1), "not in Cal. Gov. Code 6700"],
    ]),
};

/** Observances on which offices are often shut. */
const OFTEN_KEPT = /thanksgiving|christmas eve|new year's eve|good friday|election day|lincoln/i;

/**
 * The holidays of a year to choose from for an authority in a state (`WA`; empty or unknown: the
 * federal ones alone), by day. Federal days by statute; the state's own from its statute where that
 * was read, else from the list, whose days have to be checked. Saturdays and Sundays are left out,
 * being no business days anyway. Days that the list only moved off a weekend, and observances that
 * some offices keep, are offered unticked.
 */
export function offeredHolidays(state: string, year: number): OfferedHoliday[] {
  const place = HOLIDAY_STATES.find(({ code }) => code === state);
  const beside = place === undefined ? "" : ` (imported with the ${place.name} list)`;
  const federal = federalHolidays(year).map((named) => ({
    ...named,
    source: `${FEDERAL_SOURCE}${beside}`,
    usual: true,
    note: "",
  }));
  const own = place === undefined ? [] : (BY_STATUTE[place.code]?.(year) ?? []);
  const listed = place === undefined ? [] : listedHolidays(place, year);
  const found = new Map<string, OfferedHoliday>();
  for (const each of [...federal, ...own, ...listed])
    if (!found.has(each.day)) found.set(each.day, each);
  const unsure = ONLY_IF_ADOPTED[place?.code ?? ""]?.(year);
  return [...found.values()]
    .map((each) => ifAdopted(each, unsure?.get(each.day)))
    .toSorted((one, other) => one.day.localeCompare(other.day));
}

/** Proposed as it was, since it counts the safe way until somebody says whether it is kept. */
function ifAdopted(offered: OfferedHoliday, by: string | undefined): OfferedHoliday {
  if (by === undefined) return offered;
  const from = offered.source.startsWith(FEDERAL_SOURCE) ? `${offered.source}; ` : "";
  return { ...offered, source: `${from}${by}: ${IF_ADOPTED}`, note: IF_ADOPTED_NOTE };
}

function noteOf({ isPublic, moved }: { isPublic: boolean; moved: boolean }): string {
  if (moved) return "The list has it moved here from a weekend; states differ in that.";
  return isPublic ? "" : "Not a public holiday on the list, but some offices are closed.";
}

function listedHolidays(
  { code, name }: { readonly code: string; readonly name: string },
  year: number,
): OfferedHoliday[] {
  const source = `${name} list, date-holidays ${LIST_VERSION}${LIST_UNCHECKED}`;
  return new DateHolidays("US", code).getHolidays(year, "en").flatMap((listed) => {
    const day = listed.date.slice(0, 10);
    if (["Saturday", "Sunday"].includes(weekday(day)) || partsOf(day).year !== year) return [];
    const isPublic = listed.type === "public";
    if (!isPublic && !OFTEN_KEPT.test(listed.name)) return [];
    const moved = listed.substitute === true;
    return [
      {
        day,
        name: listed.name.replace(/ \(substitute day\)$/, ""),
        source,
        usual: isPublic && !moved,
        note: noteOf({ isPublic, moved }),
      },
    ];
  });
}
