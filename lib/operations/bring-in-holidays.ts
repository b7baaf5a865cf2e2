import { getAuthority, putAuthority } from "#db/queries/authority.ts";
import {
  LIST_UNCHECKED,
  type OfferedHoliday,
  offeredHolidays,
} from "#lib/domain/calendar/holiday-sets.ts";
import { isInDoubt } from "#lib/domain/calendar/in-doubt.ts";
import type { Holiday } from "#lib/domain/facts/clock-rule.ts";
import type { Day } from "#lib/domain/time/day.ts";
import { FEDERAL_SOURCE } from "#lib/domain/time/federal-holidays.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { changeOffice, refuse } from "./change.ts";

export interface WantedHolidays {
  readonly authorityId: string;
  /** Two letters; empty: the federal days alone. */
  readonly state: string;
  readonly year: number;
  /** Those of the offered days that the authority keeps. */
  readonly days: readonly Day[];
}

/**
 * Brings the chosen ones of a year's offered holidays into an authority's table, each with where it
 * is from. A day that is there already stays as it is; only where it said no source, or the federal
 * statute alone, it says the offered one. Refuses days that are not offered, and no days at all.
 */
export function bringInHolidays(
  act: Act,
  { authorityId, state, year, days }: WantedHolidays,
): Result<{ added: number }, Refusal> {
  const deal = { deed: "run-the-office", action: "bring-in-holidays" } as const;
  return changeOffice(act, deal, (db) => {
    const before = getAuthority(db, authorityId);
    if (before === null) return refuse("not-found", "authorityId", "the authority");
    if (!Number.isInteger(year) || year < 2000 || year > 2100)
      return refuse("bad-value", "year", "Enter a year from 2000 to 2100");
    const offered = offeredHolidays(state, year);
    const strange = days.find((day) => !offered.some((each) => each.day === day));
    if (strange !== undefined)
      return refuse("bad-value", "days", "Look at the holidays again: one of them is not offered");
    const chosen = offered.filter(({ day }) => days.includes(day));
    if (chosen.length === 0) return refuse("bad-value", "days", "Choose at least one holiday");
    const known = new Set(before.holidays.map(({ day }) => day));
    const added = chosen.filter(({ day }) => !known.has(day));
    const holidays = [
      ...before.holidays.map((holiday) => withSource(holiday, chosen)),
      ...added.map(({ day, name, source }) => ({
        id: act.newId(),
        authorityId,
        day,
        name,
        source,
      })),
    ].toSorted((one, other) => one.day.localeCompare(other.day));
    const after = { ...before, holidays };
    const same = JSON.stringify(before) === JSON.stringify(after);
    return ok({
      value: { added: added.length },
      sentence: same ? null : `Imported the holidays of ${year} into ${before.name}.`,
      detail: { before, after },
      write: (one) => putAuthority(one, after),
    });
  });
}

/** An older import had days of the state’s list as plainly kept that this one says are in doubt. */
function withSource(holiday: Holiday, chosen: readonly OfferedHoliday[]): Holiday {
  const found = chosen.find(({ day }) => day === holiday.day);
  if (found === undefined) return holiday;
  const { source } = holiday;
  const unchecked = source.endsWith(LIST_UNCHECKED) || source.startsWith(FEDERAL_SOURCE);
  const isPlain = source === "" || source === FEDERAL_SOURCE;
  return isPlain || (unchecked && isInDoubt(found))
    ? { ...holiday, source: found.source }
    : holiday;
}
