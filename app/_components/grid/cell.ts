import { parseRoughFeet } from "#lib/domain/length/rough-feet.ts";
import { parseFeet, plainFeet } from "#lib/domain/length/station.ts";
import { formatTime, parseTime } from "#lib/domain/time/time-of-day.ts";
import { err, ok, type Result } from "#lib/result.ts";
import { choiceMeant } from "./choices.ts";
import type { CellKind, GridChoice, GridColumn } from "./column.ts";
import { formatShortDay, parseTypedDay } from "./day-text.ts";

/** A cell's value as a person would type it; empty for null. */
export function formatCell(column: GridColumn, value: unknown): string {
  if (value === null || value === undefined) return nullWord(column);
  if (typeof value === "boolean") return value ? "yes" : "no";
  if (typeof value === "number") return formatNumber(column.kind, value);
  const text = String(value);
  if (column.kind === "choice") return labelOf(column.choices ?? [], text);
  if (column.kind === "day") return formatShortDay(text);
  if (column.kind === "time") return formatTime(text);
  return text;
}

/**
 * What was typed, as the file holds it, or a sentence on what is wanted. Lengths become hundredths
 * of a foot, amounts cents, percentages basis points, quantities hundredths. An empty cell is null
 * (text: empty), unless the column needs a value.
 */
export function parseCell(column: GridColumn, typed: string): Result<unknown, string> {
  const text = typed.trim();
  if (text === "") return parseEmpty(column);
  return PARSERS[column.kind](text, column);
}

/** How far off a reading is that was typed as about right, or as a range; null: it was not. */
export function unsureIn(column: GridColumn, typed: string): number | null {
  return column.unsure === undefined ? null : (parseRoughFeet(typed)?.off ?? null);
}

function parseEmpty(column: GridColumn): Result<unknown, string> {
  if (column.kind === "yesno") return ok(false);
  if (column.kind === "choice") return parseNoChoice(column.choices ?? []);
  if (column.required === true) return err("needed");
  return ok(column.kind === "text" || column.kind === "time" ? "" : null);
}

/** Nothing chosen: null where that is a choice, else `unknown` where that is one. */
function parseNoChoice(choices: readonly GridChoice[]): Result<string | null, string> {
  const has = (value: string) => choices.some((choice) => choice.value === value);
  if (has("")) return ok(null);
  return has("unknown") ? ok("unknown") : err("needed");
}

type Parser = (text: string, column: GridColumn) => Result<unknown, string>;

const PARSERS: Record<CellKind, Parser> = {
  text: (text) => ok(text),
  feet: (text, column) => present(parseLength(text, column), "enter feet, e.g. 26.5"),
  inches: (text) =>
    present(decimal(text.replace(/\s*(in|inch|inches|"|″)\.?$/i, "")), "enter inches, e.g. 6"),
  degrees: (text) =>
    present(decimal(text.replace(/\s*(°|deg|degrees)\.?$/i, "")), "enter degrees, e.g. 22.5"),
  cents: (text) => present(parseAmount(text), "enter dollars and cents, e.g. 1,250.00"),
  whole: (text) => present(whole(text), "enter a whole number"),
  hundredths: (text) => present(scaled(text, 100), "enter a number with at most two decimals"),
  percent: (text) =>
    present(scaled(text.replace(/\s*%$/, ""), 100), "enter a percentage, e.g. 10 or 8.25"),
  day: (text) => present(parseTypedDay(text), "enter a date, e.g. 11/25/2026"),
  time: (text) => present(parseTime(text), "enter a time with AM or PM, e.g. 4:05 PM"),
  clock: (text) => present(parseClock(text), "enter 1 to 12, half hours as 3:30"),
  video: (text) => present(parseVideoTime(text), "enter minutes and seconds, e.g. 2:58"),
  choice: (text, column) => parseChoice(text, column.choices ?? []),
  yesno: (text) => parseYesNo(text),
};

function parseLength(text: string, { unsure }: GridColumn): number | null {
  const rough = unsure === undefined ? null : parseRoughFeet(text);
  return rough === null ? parseFeet(text) : rough.length;
}

function present<T>(value: T | null, wanted: string): Result<T, string> {
  return value === null ? err(wanted) : ok(value);
}

function formatNumber(kind: CellKind, value: number): string {
  if (kind === "feet") return plainFeet(value);
  if (kind === "cents") return formatAmount(value);
  if (kind === "hundredths" || kind === "percent") return trimmed(value / 100);
  if (kind === "video") return formatVideoTime(value);
  if (kind === "clock") return Number.isInteger(value) ? String(value) : `${Math.floor(value)}:30`;
  return String(value);
}

function trimmed(value: number): string {
  return String(Math.round(value * 100) / 100);
}

function formatAmount(cents: number): string {
  const sign = cents < 0 ? "-" : "";
  const size = Math.abs(cents);
  const dollars = String(Math.floor(size / 100)).replace(/\B(?=(\d{3})+$)/g, ",");
  return `${sign}${dollars}.${String(size % 100).padStart(2, "0")}`;
}

function parseAmount(text: string): number | null {
  return scaled(text.replace(/^(-?)\s*\$\s*/, "$1").replace(/,(?=\d{3}(\D|$))/g, ""), 100);
}

function decimal(text: string): number | null {
  return /^-?(\d+(\.\d*)?|\.\d+)$/.test(text) ? Number(text) : null;
}

function whole(text: string): number | null {
  return /^-?\d{1,15}$/.test(text) ? Number(text) : null;
}

/** Exact for at most two decimals; null for more. */
function scaled(text: string, by: 100): number | null {
  const plain = text.replace(/,(?=\d{3}(\D|$))/g, "");
  if (!/^-?(\d+(\.\d{0,2})?|\.\d{1,2})$/.test(plain)) return null;
  const value = Math.round(Number(plain) * by);
  return Number.isSafeInteger(value) ? value : null;
}

function parseClock(text: string): number | null {
  const found = /^(\d{1,2})(:30|:00|\.5|\.0|½)?\s*(o['’]?clock|h)?$/i.exec(text);
  if (found === null) return null;
  const half = found[2] === ":30" || found[2] === ".5" || found[2] === "½";
  const hour = Number(found[1]) + (half ? 0.5 : 0);
  if (hour === 0.5) return 12.5;
  return hour >= 1 && hour < 13 ? hour : null;
}

/** `178` → `2:58`, an hour and more as `1:02:58`. */
function formatVideoTime(seconds: number): string {
  const hours = Math.floor(seconds / 3600);
  const minutes = Math.floor((seconds % 3600) / 60);
  const rest = String(seconds % 60).padStart(2, "0");
  return hours === 0
    ? `${minutes}:${rest}`
    : `${hours}:${String(minutes).padStart(2, "0")}:${rest}`;
}

function parseVideoTime(text: string): number | null {
  const found = /^(?:(?:(\d{1,2}):)?(\d{1,3}):)?(\d{1,5})$/.exec(text);
  if (found === null) return null;
  const [, hours = "0", minutes = "0", seconds = "0"] = found;
  return Number(hours) * 3600 + Number(minutes) * 60 + Number(seconds);
}

function parseYesNo(text: string): Result<boolean, string> {
  if (/^(y|yes|true|x|1|✓)$/i.test(text)) return ok(true);
  if (/^(n|no|false|0|-)$/i.test(text)) return ok(false);
  return err("enter yes or no");
}

function parseChoice(text: string, choices: readonly GridChoice[]): Result<string | null, string> {
  const meant = choiceMeant(choices, text);
  if (!meant.ok) return meant;
  return ok(meant.value.value === "" ? null : meant.value.value);
}

function nullWord(column: GridColumn): string {
  return column.kind === "choice" ? labelOf(column.choices ?? [], "") : "";
}

function labelOf(choices: readonly GridChoice[], value: string): string {
  return choices.find((choice) => choice.value === value)?.label ?? value;
}
