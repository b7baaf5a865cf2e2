import type { DayManner } from "../facts/form.ts";
import { type Cft, plainFeet } from "../length/station.ts";
import type { Cents } from "../money/cents.ts";
import { formatCents } from "../money/format-cents.ts";
import { formatPhone } from "../party/phone.ts";
import type { Day } from "../time/day.ts";
import { partsOf } from "../time/days.ts";
import { formatDate } from "../time/format-day.ts";

// How one thing is written on a form: first as it is usually written, then in shorter ways, for a field
// with few boxes. None of them says anything else.

/** A day in the form's manner, then in figures alone. */
export function waysOfDay(day: Day, manner: DayManner): string[] {
  const { year, month, day: date } = partsOf(day);
  const two = (value: number) => String(value).padStart(2, "0");
  const short = two(year % 100);
  const written: Record<DayManner, string> = {
    "mm/dd/yyyy": `${two(month)}/${two(date)}/${year}`,
    "m/d/yyyy": `${month}/${date}/${year}`,
    "mm/dd/yy": `${two(month)}/${two(date)}/${short}`,
    "mm-dd-yyyy": `${two(month)}-${two(date)}-${year}`,
    "yyyy-mm-dd": day,
    "Month d, yyyy": formatDate(day),
  };
  const figures =
    {
      "mm/dd/yy": `${two(month)}${two(date)}${short}`,
      "yyyy-mm-dd": `${year}${two(month)}${two(date)}`,
    }[manner as string] ?? `${two(month)}${two(date)}${year}`;
  const slim = manner === "yyyy-mm-dd" ? [] : [`${month}/${date}/${short}`];
  return distinct([written[manner], ...slim, figures]);
}

/** An amount with its sign and cents, then without what says nothing. */
export function waysOfMoney(amount: Cents): string[] {
  const full = formatCents(amount);
  const bare = full.replace("$", "");
  const whole = bare.endsWith(".00")
    ? [bare.slice(0, -3), bare.slice(0, -3).replaceAll(",", "")]
    : [];
  return distinct([full, bare, bare.replaceAll(",", ""), ...whole]);
}

/** A telephone number, then its digits with hyphens, then the digits. */
export function waysOfPhone(typed: string): string[] {
  const shown = formatPhone(typed);
  const [, area, exchange, line] = /^\((\d{3})\) (\d{3})-(\d{4})$/.exec(shown) ?? [];
  if (area === undefined) return shown === "" ? [] : [shown];
  return [shown, `${area}-${exchange}-${line}`, `${area}${exchange}${line}`];
}

/** A length as a number of feet, since the form says the unit; then without a decimal that is none. */
export function waysOfFeet(length: Cft): string[] {
  const feet = plainFeet(length);
  return distinct([feet, feet.replace(/\.0$/, "")]);
}

function distinct(ways: readonly string[]): string[] {
  return [...new Set(ways)];
}
