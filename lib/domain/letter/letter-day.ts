import { Temporal } from "temporal-polyfill";
import type { Day } from "../calendar/day.ts";
import { formatTime, minutesOf } from "../calendar/time-of-day.ts";
import type { Language } from "../party/party.ts";

const MONTHS: Record<Language, readonly string[]> = {
  en: [
    "January",
    "February",
    "March",
    "April",
    "May",
    "June",
    "July",
    "August",
    "September",
    "October",
    "November",
    "December",
  ],
  es: [
    "enero",
    "febrero",
    "marzo",
    "abril",
    "mayo",
    "junio",
    "julio",
    "agosto",
    "septiembre",
    "octubre",
    "noviembre",
    "diciembre",
  ],
};

const WEEKDAYS: Record<Language, readonly string[]> = {
  en: ["Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday"],
  es: ["lunes", "martes", "miércoles", "jueves", "viernes", "sábado", "domingo"],
};

/** `November 25, 2026`, `25 de noviembre de 2026`: the day as a letter writes it. */
export function letterDay(day: Day, language: Language): string {
  const date = Temporal.PlainDate.from(day);
  const month = MONTHS[language][date.month - 1] ?? "";
  if (language === "es") return `${date.day} de ${month} de ${date.year}`;
  return `${month} ${date.day}, ${date.year}`;
}

/** The same with its weekday: `Wednesday, November 25, 2026`, `miércoles 25 de noviembre de 2026`. */
export function letterWeekday(day: Day, language: Language): string {
  const weekday = WEEKDAYS[language][Temporal.PlainDate.from(day).dayOfWeek - 1] ?? "";
  const comma = language === "es" ? " " : ", ";
  return `${weekday}${comma}${letterDay(day, language)}`;
}

/** A time kept as `16:05`, as a letter writes it: `4:05 pm`, `4:05 p. m.`; empty for none. */
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
  if (minutes === 0) return "12:00 am";
  return minutes === 720 ? "12:00 pm" : formatTime(time);
}
