import "server-only";
import { db } from "#app/db.ts";
import type { Day } from "#lib/domain/time/day.ts";
import { officeDay } from "#lib/operations/office-day.ts";

/** The day it is at the office. */
export function today(): Day {
  return officeDay(db(), new Date().toISOString());
}
