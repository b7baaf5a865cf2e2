import { formatFeet } from "#lib/domain/length/station.ts";
import { formatCents } from "#lib/domain/money/format-cents.ts";
import { isDay } from "#lib/domain/time/days.ts";
import { formatDate } from "#lib/domain/time/format-day.ts";
import { formatTime } from "#lib/domain/time/time-of-day.ts";

/** One thing that an entry tells: a fact, or what it was before and after. */
export interface DetailLine {
  /** What it is about, in words: `T3, station`. */
  readonly name: string;
  /** Null: nothing to compare with, as in a plain fact. */
  readonly before: string | null;
  readonly after: string | null;
}

/** What the file's rows are called, by id. */
export type Names = ReadonlyMap<string, string>;

type Facts = Readonly<Record<string, unknown>>;

interface Place {
  readonly path: readonly string[];
  readonly names: Names;
}

/**
 * An entry's detail as lines to read. A before and an after are compared field by field and only
 * what differs is told; rows that were added or removed are told against nothing; everything else is
 * told as it is. Rows that a field names are told by name. Detail that is no JSON comes as one line.
 */
export function readDetail(detail: string, names: Names = new Map()): DetailLine[] {
  const parsed = parse(detail);
  return isEmpty(parsed) ? [] : linesOf(parsed, { path: [], names });
}

function parse(detail: string): unknown {
  if (detail.trim() === "") return null;
  try {
    return JSON.parse(detail);
  } catch {
    return detail;
  }
}

function linesOf(value: unknown, place: Place): DetailLine[] {
  if (Array.isArray(value)) return value.flatMap((each, at) => rowLines(each, at, place));
  if (!isFacts(value)) return fact(value, place);
  if ("before" in value || "after" in value) {
    return compared(value["before"] ?? null, value["after"] ?? null, place);
  }
  return Object.entries(value).flatMap(([key, each]) => memberLines(key, each, place));
}

/** A member of an object; the words for whole rows are not repeated in the name. */
function memberLines(key: string, value: unknown, place: Place): DetailLine[] {
  if (isEmpty(value) || key === "id" || key === "order") return [];
  if (!Array.isArray(value)) return linesOf(value, below(place, key));
  if (key === "changed") return linesOf(value, place);
  if (key !== "added" && key !== "removed") return linesOf(value, below(place, key));
  return value.flatMap((row, at) => {
    const named = below(place, rowName(row, at, place.names));
    return key === "added" ? compared(null, row, named) : compared(row, null, named);
  });
}

function rowLines(value: unknown, at: number, place: Place): DetailLine[] {
  if (!isFacts(value)) return fact(value, place);
  return linesOf(value, below(place, rowName(value, at, place.names)));
}

function compared(before: unknown, after: unknown, place: Place): DetailLine[] {
  if (isFacts(before) || isFacts(after)) {
    const was = isFacts(before) ? before : {};
    const now = isFacts(after) ? after : {};
    const keys = [...new Set([...Object.keys(was), ...Object.keys(now)])];
    return keys
      .filter((key) => key !== "id")
      .flatMap((key) => compared(was[key] ?? null, now[key] ?? null, below(place, key)));
  }
  if (JSON.stringify(before) === JSON.stringify(after)) return [];
  const [was, now] = [textOf(before, place), textOf(after, place)];
  if (was === now) return [];
  return [{ name: nameOf(place.path), before: was ?? "nothing", after: now ?? "nothing" }];
}

function fact(value: unknown, place: Place): DetailLine[] {
  const after = textOf(value, place);
  return after === null ? [] : [{ name: nameOf(place.path), before: null, after }];
}

function below({ path, names }: Place, key: string): Place {
  return { path: [...path, key], names };
}

/** A row by what people call it, else by its number. */
function rowName(value: unknown, at: number, names: Names): string {
  const row = isFacts(value) ? value : {};
  const known = typeof row["id"] === "string" ? names.get(row["id"]) : undefined;
  if (known !== undefined) return known;
  for (const key of ["label", "title", "name", "number"]) {
    const name = row[key];
    if (typeof name === "string" && name !== "") return name;
  }
  return `row ${at + 1}`;
}

function isFacts(value: unknown): value is Facts {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

function isEmpty(value: unknown): boolean {
  return (
    value === null ||
    value === undefined ||
    value === "" ||
    (Array.isArray(value) && value.length === 0)
  );
}

/** `tieIns`, `T3`, `propertyId` → `T3, property`: the row, then the field in words. */
function nameOf(path: readonly string[]): string {
  const shown = path.length > 2 ? path.slice(1) : path;
  return shown
    .map((part) => (/^[a-z]+([A-Z][a-z]+)*$/.test(part) ? spaced(part) : part))
    .join(", ");
}

/** Fields that an office calls something else. */
const FIELDS: Readonly<Record<string, string>> = {
  allegedCause: "alleged cause",
  faultStation: "defect station",
  licence: "license",
  licenceExpiresOn: "license expires on",
  place: "location",
  spread: "allocation",
};

function spaced(key: string): string {
  return (FIELDS[key] ?? key)
    .replace(/Ids?$/, "")
    .replaceAll(/([A-Z])/g, (letter) => ` ${letter.toLowerCase()}`);
}

const FEET =
  /^(station|from|to|distance|rawDistance|counter|toCounter|fromCounter|depth|upperEnd|fromStation|toStation|faultStation|mainStation|seenAt|uncertainty|length)$/;
const CENTS = /^(rate|amount|total|recoverable)$/;
/** For the machine alone. */
const HIDDEN = /(Hash|^basis|^frozen)$/;

/** A value in words; null where there is nothing to tell people. */
function textOf(value: unknown, { path, names }: Place): string | null {
  const key = path.at(-1) ?? "";
  if (isEmpty(value) || HIDDEN.test(key)) return null;
  if (/Ids?$/.test(key)) return namedIds(value, names);
  if (typeof value === "number") return numberWords(key, value);
  if (typeof value === "boolean") return value ? "yes" : "no";
  if (typeof value === "string") return wordsOf(value);
  return JSON.stringify(value);
}

function namedIds(value: unknown, names: Names): string | null {
  const ids = Array.isArray(value) ? value : [value];
  const known = ids.flatMap((id) => names.get(String(id)) ?? []);
  return known.length === 0 ? null : known.join(", ");
}

function numberWords(key: string, value: number): string {
  if (FEET.test(key)) return formatFeet(value);
  return CENTS.test(key) ? formatCents(value) : String(value);
}

/** Stored words that an office says in another way. */
const SAID: Readonly<Record<string, string>> = {
  "agreement-notarised": "agreement notarized",
  "by-placed-cost": "prorated by located cost",
  cancelled: "canceled",
  carried: "covered by the others",
  "does-not-apply": "not applicable",
  fault: "defect",
  "held-apart": "set aside",
  "in-hand": "on file",
  "mail-message": "email",
  stretch: "section",
};

/** A day, a time, a stored word: `2026-11-23` → `November 23, 2026`; everything else as it is. */
function wordsOf(text: string): string {
  const said = SAID[text];
  if (said !== undefined) return said;
  if (isDay(text)) return formatDate(text);
  if (/^\d\d:\d\d$/.test(text)) return formatTime(text) || text;
  return /^[a-z]+(-[a-z]+)+$/.test(text) ? text.replaceAll("-", " ") : text;
}
