import "server-only";
import { db } from "#app/_db.ts";
import { getOffice } from "#db/queries/office.ts";
import type { Day } from "#lib/domain/calendar/day.ts";
import { readEnv } from "#lib/env.ts";

/** The day it is in the office's zone; `WYEBOOK_TODAY` wins. */
export function today(): Day {
  return readEnv().today ?? dayIn(getOffice(db())?.zone ?? "America/Los_Angeles", new Date());
}

/** The calendar day of an instant in a zone. */
export function dayIn(zone: string, at: Date): Day {
  const parts = new Intl.DateTimeFormat("en-US", {
    timeZone: zone,
    year: "numeric",
    month: "2-digit",
    day: "2-digit",
  }).formatToParts(at);
  const part = (type: string) => parts.find((one) => one.type === type)?.value ?? "";
  return `${part("year")}-${part("month")}-${part("day")}`;
}
