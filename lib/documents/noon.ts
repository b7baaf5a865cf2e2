import type { Day } from "#lib/domain/time/day.ts";

/** Noon of a day in UTC: the date that a document carries, so that the same facts give the same bytes. */
export function noonOf(day: Day): Date {
  return new Date(`${day}T12:00:00.000Z`);
}
