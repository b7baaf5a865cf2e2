const MONTHS = ["jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec"];

/** `2026-11-25` → `Nov 25, 2026`; anything else stays as it is. */
export function formatShortDay(day: string): string {
  const found = /^(\d{4})-(\d{2})-(\d{2})$/.exec(day);
  const month = found === null ? undefined : MONTHS[Number(found[2]) - 1];
  if (found === null || month === undefined) return day;
  return `${month.charAt(0).toUpperCase()}${month.slice(1)} ${Number(found[3])}, ${found[1]}`;
}

/**
 * A date as people here type it → `yyyy-mm-dd`, or null where there is no such day:
 * `2026-11-25`, `11/25/2026`, `11/25/26`, `Nov 25, 2026`, `25 Nov 2026`.
 */
export function parseTypedDay(text: string): string | null {
  const plain = text.trim().toLowerCase().replace(/,/g, " ").replace(/\s+/g, " ");
  const iso = /^(\d{4})-(\d{1,2})-(\d{1,2})$/.exec(plain);
  if (iso) return dayFrom(Number(iso[1]), Number(iso[2]), Number(iso[3]));
  const slashed = /^(\d{1,2})[/.-](\d{1,2})[/.-](\d{2}|\d{4})$/.exec(plain);
  if (slashed) return dayFrom(fullYear(slashed[3]), Number(slashed[1]), Number(slashed[2]));
  const named = /^([a-z]{3})[a-z]*\.? (\d{1,2}) (\d{4})$/.exec(plain);
  if (named) return dayFrom(Number(named[3]), monthOf(named[1]), Number(named[2]));
  const turned = /^(\d{1,2}) ([a-z]{3})[a-z]*\.? (\d{4})$/.exec(plain);
  if (turned) return dayFrom(Number(turned[3]), monthOf(turned[2]), Number(turned[1]));
  return null;
}

function monthOf(word: string | undefined): number {
  return MONTHS.indexOf(word ?? "") + 1;
}

function fullYear(digits: string | undefined): number {
  const year = Number(digits);
  if (digits?.length === 4) return year;
  return year < 70 ? 2000 + year : 1900 + year;
}

function dayFrom(year: number, month: number, day: number): string | null {
  if (month < 1 || month > 12 || day < 1 || day > daysIn(year, month)) return null;
  return `${year}-${String(month).padStart(2, "0")}-${String(day).padStart(2, "0")}`;
}

function daysIn(year: number, month: number): number {
  if (month === 2) return (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0 ? 29 : 28;
  return [4, 6, 9, 11].includes(month) ? 30 : 31;
}
