import { Temporal } from "temporal-polyfill";
import type { Language } from "../say/language.ts";
import type { Day, Instant } from "./day.ts";
import { letterDay, letterTime } from "./letter-day.ts";

/** The calendar day of a moment in a zone. */
export function dayOf(at: Instant, zone: string): Day {
  return Temporal.Instant.from(at).toZonedDateTimeISO(zone).toPlainDate().toString();
}

/** The hour of the day, 0 to 23, on a zone's clock. */
export function hourAt(at: Instant, zone: string): number {
  return Temporal.Instant.from(at).toZonedDateTimeISO(zone).hour;
}

/** `November 25, 2026, 10:00 AM`, `25 de noviembre de 2026, 10:00 a. m.`: a moment on the office's clock. */
export function momentWords(at: Instant, zone: string, language: Language): string {
  const there = Temporal.Instant.from(at).toZonedDateTimeISO(zone);
  const day = letterDay(there.toPlainDate().toString(), language);
  const minute = String(there.minute).padStart(2, "0");
  if (language === "es")
    return `${day}, ${letterTime(`${String(there.hour).padStart(2, "0")}:${minute}`, language)}`;
  const hour = there.hour % 12 === 0 ? 12 : there.hour % 12;
  return `${day}, ${hour}:${minute} ${there.hour < 12 ? "AM" : "PM"}`;
}
