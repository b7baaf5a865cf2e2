import type { Db } from "#db/open.ts";
import { getOffice } from "#db/queries/office.ts";
import type { Day, Instant } from "#lib/domain/time/day.ts";
import { dayAt } from "#lib/domain/time/days.ts";
import { readEnv } from "#lib/env.ts";

/** The office's zone; before it is set up, that of the machine it will run on. */
export function officeZone(db: Db): string {
  return getOffice(db)?.zone ?? Intl.DateTimeFormat().resolvedOptions().timeZone;
}

/** The day it is at the office, for pages, operations and the worker alike; `WYEBOOK_TODAY` wins. */
export function officeDay(db: Db, now: Instant): Day {
  return readEnv().today ?? dayAt(now, officeZone(db));
}
