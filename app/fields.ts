import { z } from "zod";
import { parseFeet } from "#lib/domain/length/station.ts";
import { parseCents } from "#lib/domain/money/parse-cents.ts";

// What a form's fields are, as zod types. Each takes what a browser sends under a name: nothing, one
// value or several. A message of a field is the sentence that is told beside it.

/** What a form sent, by the names of its fields: one value, or a list where there are several. */
export function typedIn(form: FormData): Readonly<Record<string, unknown>> {
  const names = [...new Set(form.keys())];
  return Object.fromEntries(
    names.map((name) => {
      const values = form.getAll(name);
      return [name, values.length === 1 ? values[0] : values];
    }),
  );
}

/** Whatever came under a name; a browser leaves out boxes that are not checked. */
const sent = z.unknown().optional();

function valuesOf(came: unknown): readonly unknown[] {
  if (came === undefined) return [];
  return Array.isArray(came) ? came : [came];
}

function first(came: unknown): string {
  const [value] = valuesOf(came);
  return typeof value === "string" ? value : "";
}

/** Text as it was typed, with its blanks; empty where it was not sent. For passwords. */
export const asTyped = sent.transform(first);

/** Text, trimmed; empty where it was not sent. */
export const text = asTyped.transform((typed) => typed.trim());

/** Text, or null where it was left empty. */
export const textOrNull = text.transform((typed) => (typed === "" ? null : typed));

/** Text that may not be empty. */
export function needed(message: string) {
  return text.refine((typed) => typed !== "", message);
}

/** Every value of a field that may be there more than once. */
export const texts = sent.transform((values) =>
  valuesOf(values).filter((value) => typeof value === "string"),
);

/** The same, of which there is at least one. */
export function someTexts(message: string) {
  return texts.refine((values) => values.length > 0, message);
}

/** Whether a box was checked. */
export const checked = sent.transform((values) => valuesOf(values).length > 0);

/** A file that was chosen; null where none was. */
export const fileOrNull = sent.transform((values) => {
  const [value] = valuesOf(values);
  return value instanceof File && value.size > 0 ? value : null;
});

/** One of a closed set. */
export function oneIn<const T extends string>(options: readonly T[], message: string) {
  return text.pipe(z.enum(options, { error: message }));
}

/** One of a closed set, else what is meant where nothing was chosen. */
export function oneInOr<const T extends string, const U>(options: readonly T[], otherwise: U) {
  return text.transform((typed): T | U => options.find((each) => each === typed) ?? otherwise);
}

/** One of a closed set, or null where none was chosen; what is neither is refused. */
export function oneInOrNull<const T extends string>(options: readonly T[], message: string) {
  return orNull((typed) => options.find((each) => each === typed) ?? null, message);
}

/** What `parse` reads out of the text; null where nothing was typed, refused where it reads nothing. */
export function orNull<T>(parse: (typed: string) => T | null, message: Message) {
  return text.transform((typed, context): T | null => {
    if (typed === "") return null;
    return parse(typed) ?? refuse(context, message, typed);
  });
}

/** What `parse` reads out of the text; refused where it reads nothing. */
export function read<T>(parse: (typed: string) => T | null, message: Message) {
  return text.transform((typed, context): T => parse(typed) ?? refuse(context, message, typed));
}

type Message = string | ((typed: string) => string);

function refuse(context: z.RefinementCtx, message: Message, typed: string): never {
  const words = typeof message === "string" ? message : message(typed);
  context.addIssue({ code: "custom", message: words });
  return z.NEVER;
}

/** Feet with at most two decimals. */
export function feetOrNull(message: Message) {
  return orNull(parseFeet, message);
}

/** An amount of money. */
export function cents(message: Message) {
  return read(parseCents, message);
}

/** A number as typed; what is none is left for the operation to refuse. */
export const numberOrNull = textOrNull.transform((typed) =>
  typed === null ? null : Number(typed),
);

/** Two ids that a choice sends as one value, with a blank between them. */
export function twoIds(message: string) {
  return text.transform((typed, context): readonly [string, string] => {
    const [one = "", other = ""] = typed.split(" ");
    return one === "" || other === "" ? refuse(context, message, typed) : [one, other];
  });
}

/** What a page packed into one value as JSON; null where something else was sent. */
function unpacked<T>(shape: z.ZodType<T>, typed: string): T | null {
  try {
    return shape.safeParse(JSON.parse(typed)).data ?? null;
  } catch {
    return null;
  }
}

const STALE_PAGE = "This page is out of date. Reload it and choose again.";

/** One value that a page packed. */
export function packed<T>(shape: z.ZodType<T>) {
  return read((typed) => unpacked(shape, typed), STALE_PAGE);
}

/** At least one value that a page packed. */
export function somePacked<T>(shape: z.ZodType<T>, message: string) {
  return someTexts(message).transform((values, context): readonly T[] => {
    const all = values.map((typed) => unpacked(shape, typed)).filter((each) => each !== null);
    return all.length === values.length ? all : refuse(context, STALE_PAGE, "");
  });
}

/** An id that a page hands to its action. */
export const id = z.string();
