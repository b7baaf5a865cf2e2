import { z } from "zod";
import { OUTLINE, OUTLINE_WORDS } from "#lib/domain/plan/outline.ts";
import { isScaleInBounds } from "#lib/domain/reconcile/fit.ts";

// The shapes of what fields hold, by the names of lib/domain/facts/field.ts. In memory a length is whole hundredths of a foot; in a line
// file it is feet with at most two decimals. Everything else is the same in both.

/** `memory`: rows of a table as the program holds them. `exchange`: as a line file holds them. */
export type Use = "memory" | "exchange";

/** Nothing on a private line is this long (19 miles) or costs this much (ten million dollars). */
const LONGEST = 10_000_000;
const DEAREST = 1_000_000_000;
const WORDS_LIMIT = 100_000;
const MANY_WORDS = 100_000_000;

/** All that was ever said, asked and paid on one line, added up, stays far below this ($1 billion). */
const DEAREST_SUM = 100_000_000_000;

/**
 * An id stands in addresses of pages, names of fields and files: letters, digits, hyphen and
 * underline, so that none of them reads it as anything else.
 */
const ID = /^[A-Za-z0-9_-]{1,64}$/;
const ID_WORDS = "Enter an ID of at most 64 letters, digits, hyphens and underscores";

const DAY = /^(\d{4})-(\d{2})-(\d{2})$/;

/** Years in which a line's days lie: whatever is counted from one of them is a day too. */
const YEARS = { first: 1900, last: 2199 };

/** Whether a text is a day that exists, as `2026-11-25`, in years that a line's days can have. */
export function isDay(text: string): boolean {
  return isCalendarDay(text) && isOurs(Number(text.slice(0, 4)));
}

function isCalendarDay(text: string): boolean {
  const [, year, month, day] = (DAY.exec(text) ?? []).map(Number);
  if (year === undefined || month === undefined || day === undefined) return false;
  return month >= 1 && month <= 12 && day >= 1 && day <= daysIn(year, month);
}

function isOurs(year: number): boolean {
  return year >= YEARS.first && year <= YEARS.last;
}

function daysIn(year: number, month: number): number {
  if (month !== 2) return [4, 6, 9, 11].includes(month) ? 30 : 31;
  return (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0 ? 29 : 28;
}

export function fieldsFor(use: Use) {
  return {
    ...timeFields(use),
    ...moneyFields(),
    /** A row: in a line file, fields that nobody knows are refused, because they are typing errors. */
    row: <S extends z.ZodRawShape>(shape: S): z.ZodObject<S> =>
      (use === "exchange" ? z.strictObject(shape) : z.object(shape)) as unknown as z.ZodObject<S>,
    id: z.string({ error: ID_WORDS }).regex(ID, ID_WORDS),
    /** What tells one thing from another inside of a row. */
    key: z
      .string({ error: "Enter how it is known" })
      .min(1, "Enter how it is known")
      .max(200, "Enter at most 200 characters"),
    ref: (of: string) =>
      z
        .string({ error: `Enter the ID of the ${of}` })
        .min(1, `Select the ${of}`)
        .max(200, "An ID has at most 200 characters"),
    text: wordsFor(use),
    /** Words that must be there. */
    name: (what: string) =>
      z
        .string({ error: `Enter ${what}` })
        .max(use === "memory" ? WORDS_LIMIT : MANY_WORDS, `Enter at most ${WORDS_LIMIT} characters`)
        .refine((text) => text.trim() !== "", `Enter ${what}`),
    sha256: z
      .string({ error: "Enter the SHA-256 of the bytes, 64 hexadecimal digits" })
      .regex(/^[0-9a-f]{64}$/, "Enter the SHA-256 of the bytes, 64 hexadecimal digits"),
    oneOf: <const V extends readonly [string, ...string[]]>(values: V) =>
      z.enum(values, { error: `Choose one of: ${values.join(", ")}` }),
    yesNo: z.boolean({ error: "Choose yes or no" }),
    /** A place or distance that can't lie below zero. */
    feet: hundredths(use, {
      least: 0,
      most: LONGEST,
      unit: "feet",
      error: "Enter a length in feet from 0 to 100,000, with at most two decimals",
    }),
    /** What a counter shows: below zero where the camera was drawn back past its zero. */
    signedFeet: hundredths(use, {
      least: -LONGEST,
      most: LONGEST,
      unit: "feet",
      error: "Enter the counter reading in feet, with at most two decimals",
    }),
    quantity: hundredths(use, {
      least: 0,
      most: 100_000_000,
      unit: "units",
      error: "Enter a quantity from 0 to 1,000,000, with at most two decimals",
    }),
    percent: hundredths(use, {
      least: 0,
      most: 10_000,
      unit: "percent",
      error: "Enter a percentage from 0 to 100, with at most two decimals",
    }),
    inches: z
      .number({ error: "Enter a diameter in inches, e.g. 6" })
      .positive("Enter a diameter above zero")
      .max(240, "Enter a diameter in inches, at most 240"),
    clock: z
      .number({ error: "Enter a clock position from 1 to 12; half hours as .5" })
      .min(1, "Enter a clock position from 1 to 12; half hours as .5")
      .max(12.5, "Enter a clock position from 1 to 12; half hours as .5")
      .multipleOf(0.5, "Enter a clock position in whole or half hours, e.g. 9 or 9.5"),
    /** Below `most`, by halves. */
    degrees: (most: number) => {
      const error = `Enter degrees from 0 to ${most}, whole or half`;
      return z.number({ error }).min(0, error).max(most, error).multipleOf(0.5, error);
    },
    /** Parts per million on top of 1. */
    scale: z.int({ error: "Enter the scale in parts per million" }).refine(isScaleInBounds, {
      error: "A scale is at most 20% off, in feet or meters, from either end",
    }),
    outline: z
      .string({ error: OUTLINE_WORDS })
      .max(4_000, OUTLINE_WORDS)
      .regex(OUTLINE, OUTLINE_WORDS),
    whole: (most: number) =>
      z
        .int({ error: `Enter a whole number from 0 to ${most}` })
        .min(0, `Enter a whole number from 0 to ${most}`)
        .max(most, `Enter a whole number from 0 to ${most}`),
    from1: (most: number) =>
      z
        .int({ error: `Enter a whole number from 1 to ${most}` })
        .min(1, `Enter a whole number from 1 to ${most}`)
        .max(most, `Enter a whole number from 1 to ${most}`),
    decimal: (most: number) =>
      z
        .number({ error: `Enter a number from 0 to ${most}` })
        .min(0, `Enter a number from 0 to ${most}`)
        .max(most, `Enter a number from 0 to ${most}`),
  };
}

/** People see their dates as 11/25/2026; a line file holds them as 2026-11-25. */
function timeFields(use: Use) {
  const example = use === "memory" ? "e.g. 11/25/2026" : "as 2026-11-25";
  const hour = use === "memory" ? "e.g. 9:40 AM" : "as 09:40";
  return {
    day: z
      .string({ error: `Enter a date, ${example}` })
      .refine(isCalendarDay, { error: `Enter a date that exists, ${example}`, abort: true })
      .refine(isDay, `Enter a date from ${YEARS.first} to ${YEARS.last}, ${example}`)
      .meta({ description: "A day, yyyy-mm-dd", format: "date" }),
    instant: z.iso
      .datetime({ error: "Enter a moment in UTC as 2026-11-25T08:00:00.000Z" })
      .refine(
        (text) => isOurs(Number(text.slice(0, 4))),
        `Enter a moment from ${YEARS.first} to ${YEARS.last}, as 2026-11-25T08:00:00.000Z`,
      ),
    timeOfDay: z
      .string({ error: `Enter a time, ${hour}, or leave it blank` })
      .regex(/^(([01]\d|2[0-3]):[0-5]\d)?$/, `Enter a time, ${hour}, or leave it blank`),
  };
}

function moneyFields() {
  return {
    cents: z
      .int({ error: "Enter an amount in whole cents" })
      .min(0, "An amount can't be below zero")
      .max(DEAREST, "An amount can't be above $10,000,000.00")
      .meta({ description: "Whole US cents" }),
    /** A sum of amounts. */
    sum: z
      .int({ error: "Enter an amount in whole cents" })
      .min(0, "An amount can't be below zero")
      .max(DEAREST_SUM, "An amount can't be above $1,000,000,000.00")
      .meta({ description: "Whole US cents" }),
    /** A share of a whole, by any measure: nothing, or at least a millionth. */
    parts: z
      .number({ error: "Enter a number from 0 to 1,000,000" })
      .min(0, "Enter a number from 0 to 1,000,000")
      .max(1_000_000, "Enter a number from 0 to 1,000,000")
      .refine((value) => value <= 0 || value >= 0.000_001, "Enter 0, or at least 0.000001"),
  };
}

/** What people type has a limit; what the program wrote (a frozen letter, a record) is read as it is. */
function wordsFor(use: Use): z.ZodString {
  return z
    .string({ error: "Enter text, or leave blank" })
    .max(use === "memory" ? WORDS_LIMIT : MANY_WORDS, `Enter at most ${WORDS_LIMIT} characters`);
}

export type FieldShapes = ReturnType<typeof fieldsFor>;

/** Whole hundredths in memory, a decimal with at most two places in a line file. */
function hundredths(
  use: Use,
  { least, most, unit, error }: { least: number; most: number; unit: string; error: string },
): z.ZodType<number, number> {
  const whole = z.int({ error }).min(least, error).max(most, error);
  if (use === "memory") return whole;
  return z.codec(
    z
      .number({ error })
      .refine((value) => Math.abs(value * 100 - Math.round(value * 100)) < 1e-6, error)
      .meta({ description: `In ${unit}, with at most two decimals` }),
    whole,
    { decode: (value) => Math.round(value * 100), encode: (value) => value / 100 },
  );
}
