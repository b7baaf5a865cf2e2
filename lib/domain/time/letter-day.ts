import { Temporal } from "temporal-polyfill";
import type { Language } from "../say/language.ts";
import type { Day } from "./day.ts";
import { formatTime, minutesOf } from "./time-of-day.ts";

/** As an office in the States writes a day in each language. */
const DAYS: Record<Language, Intl.DateTimeFormat> = {
  en: new Intl.DateTimeFormat("en-US", { dateStyle: "long", timeZone: "UTC" }),
  es: new Intl.DateTimeFormat("es-US", { dateStyle: "long", timeZone: "UTC" }),
};

const WEEKDAYS: Record<Language, Intl.DateTimeFormat> = {
  en: new Intl.DateTimeFormat("en-US", { weekday: "long", timeZone: "UTC" }),
  es: new Intl.DateTimeFormat("es-US", { weekday: "long", timeZone: "UTC" }),
};

/** `November 25, 2026`, `25 de noviembre de 2026`: the day as a letter writes it. */
export function letterDay(day: Day, language: Language): string {
  return DAYS[language].format(noonOf(day));
}

/** The same with its weekday: `Wednesday, November 25, 2026`, `miércoles 25 de noviembre de 2026`. */
export function letterWeekday(day: Day, language: Language): string {
  const weekday = WEEKDAYS[language].format(noonOf(day));
  const comma = language === "es" ? " " : ", ";
  return `${weekday}${comma}${letterDay(day, language)}`;
}

/** Milliseconds of the middle of a day on the clock that the formats read. */
function noonOf(day: Day): number {
  return Temporal.PlainDate.from(day).toZonedDateTime({ timeZone: "UTC", plainTime: "12:00" })
    .epochMilliseconds;
}

/** A time kept as `16:05`, as a letter writes it: `4:05 PM`, `4:05 p. m.`; empty for none. */
export function letterTime(time: string, language: Language): string {
  if (language === "en") return clockTime(time);
  const minutes = minutesOf(time);
  if (minutes === null) return "";
  const hour = Math.floor(minutes / 60);
  const half = hour < 12 ? "a. m." : "p. m.";
  return `${hour % 12 || 12}:${String(minutes % 60).padStart(2, "0")} ${half}`;
}

/** Noon and midnight are words where a time stands alone; beside other times all read alike. */
function clockTime(time: string): string {
  const minutes = minutesOf(time);
  if (minutes === null) return "";
  if (minutes === 0) return "12:00 AM";
  return minutes === 720 ? "12:00 PM" : formatTime(time);
}
