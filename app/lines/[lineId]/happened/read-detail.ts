import { formatFeet } from "#lib/domain/line/station.ts";
import { formatCents } from "#lib/domain/money/format-cents.ts";

/** One thing that an entry tells: a fact, or what it was before and after. */
export interface DetailLine {
  /** What it is about, in words: `tie-in T3, station`. */
  readonly name: string;
  /** Null: nothing to compare with, as in a plain fact. */
  readonly before: string | null;
  readonly after: string | null;
}

type Facts = Readonly<Record<string, unknown>>;

const BEFORE = ["before", "was", "old"];
const AFTER = ["after", "now", "new"];

/**
 * An entry's detail as lines to read. Objects with a before and an after are compared field by
 * field and only what differs is told; everything else is told as it is. Detail that is no JSON
 * comes as one line.
 */
export function readDetail(detail: string): DetailLine[] {
  const parsed = parse(detail);
  if (parsed === null || parsed === undefined) return [];
  return linesOf(parsed, []);
}

function parse(detail: string): unknown {
  if (detail.trim() === "") return null;
  try {
    return JSON.parse(detail);
  } catch {
    return detail;
  }
}

function linesOf(value: unknown, path: readonly string[]): DetailLine[] {
  if (Array.isArray(value)) {
    return value.flatMap((each: unknown, at) => linesOf(each, [...path, rowName(each, at)]));
  }
  if (!isFacts(value)) return [fact(path, value)];
  const before = pick(value, BEFORE);
  const after = pick(value, AFTER);
  if (before === undefined && after === undefined) {
    return Object.entries(value).flatMap(([key, each]) =>
      isEmpty(each) || isId(key) ? [] : linesOf(each, [...path, key]),
    );
  }
  return compared(before ?? null, after ?? null, path);
}

function compared(before: unknown, after: unknown, path: readonly string[]): DetailLine[] {
  if (isFacts(before) || isFacts(after)) {
    const was = isFacts(before) ? before : {};
    const now = isFacts(after) ? after : {};
    const keys = [...new Set([...Object.keys(was), ...Object.keys(now)])];
    return keys
      .filter((key) => !isId(key))
      .flatMap((key) => compared(was[key] ?? null, now[key] ?? null, [...path, key]));
  }
  if (JSON.stringify(before) === JSON.stringify(after)) return [];
  if (isEmpty(before) && isEmpty(after)) return [];
  const key = path.at(-1) ?? "";
  return [{ name: nameOf(path), before: textOf(key, before), after: textOf(key, after) }];
}

function fact(path: readonly string[], value: unknown): DetailLine {
  return { name: nameOf(path), before: null, after: textOf(path.at(-1) ?? "", value) };
}

function pick(facts: Facts, keys: readonly string[]): unknown {
  const key = keys.find((each) => each in facts);
  return key === undefined ? undefined : facts[key];
}

/** A row by what people call it, else by its number. */
function rowName(value: unknown, at: number): string {
  const facts = isFacts(value) ? (firstFacts(value, [...AFTER, ...BEFORE]) ?? value) : {};
  for (const key of ["label", "title", "name", "number"]) {
    const name = facts[key];
    if (typeof name === "string" && name !== "") return name;
  }
  return `row ${at + 1}`;
}

function firstFacts(value: Facts, keys: readonly string[]): Facts | null {
  for (const key of keys) {
    const inner = value[key];
    if (isFacts(inner)) return inner;
  }
  return null;
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

/** Names of things for the machine; people are told the rest. */
function isId(key: string): boolean {
  return key === "id" || /Id$|Ids$|Hash$|basis|frozen/.test(key);
}

/** `tieIns`, `T3`, `station` → `T3, station`: words, the machine's own capitals undone. */
function nameOf(path: readonly string[]): string {
  return path.map((part) => (/^[a-z]+[A-Z]/.test(part) ? spaced(part) : part)).join(", ");
}

function spaced(key: string): string {
  return key.replaceAll(/([A-Z])/g, (letter) => ` ${letter.toLowerCase()}`);
}

const FEET =
  /^(station|from|to|distance|counter|toCounter|fromCounter|depth|upperEnd|fromStation|toStation|faultStation|mainStation|seenAt|uncertainty|length)$/;
const CENTS = /^(rate|amount|total|recoverable)$/;

function textOf(key: string, value: unknown): string {
  if (isEmpty(value)) return "nothing";
  if (typeof value === "number" && FEET.test(key)) return formatFeet(value);
  if (typeof value === "number" && CENTS.test(key)) return formatCents(value);
  if (typeof value === "boolean") return value ? "yes" : "no";
  if (typeof value === "string")
    return /^[a-z]+(-[a-z]+)+$/.test(value) ? spacedDashes(value) : value;
  return typeof value === "object" ? JSON.stringify(value) : String(value);
}

function spacedDashes(word: string): string {
  return word.replaceAll("-", " ");
}
