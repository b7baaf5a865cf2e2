import type { Holidays } from "../time/business-days.ts";

/** Ends the source of a day that a city, county or district keeps only where it made it its own. */
export const IF_ADOPTED = "kept only if adopted";

/** What to look at before such a day is taken, and how it counts until then. */
export const IF_ADOPTED_NOTE =
  "A city, county, or district keeps it only by its own act. Until you replace the source with that act, deadlines count it as a business day and waiting times as a holiday.";

/** The days of which nobody said yet that this authority keeps them: told by their source alone. */
export function daysInDoubt(holidays: Holidays): Holidays {
  return holidays.filter(isInDoubt);
}

export function isInDoubt({ source }: Pick<Holidays[number], "source">): boolean {
  return source?.includes(IF_ADOPTED) ?? false;
}
