import { isDay } from "#lib/exchange/field.ts";
import type { Act } from "./act.ts";
import { refuse } from "./change.ts";

/** Refuses a day that does not exist or has not come yet; null where the day will do. */
export function pastDay(act: Act, { day, path }: { day: string; path: string }) {
  if (!isDay(day)) return refuse("bad-value", path, "Enter a date as 11/25/2026");
  if (day > act.today) return refuse("bad-value", path, "This date is in the future");
  return null;
}
