import type { Cft } from "../length/station.ts";
import type { Cents } from "../money/cents.ts";
import type { Day, Instant } from "../time/day.ts";
import type { ListName } from "./list-name.ts";

// What the rows of a line's file are made of. A row is defined once, as data: its type follows from
// the definition here, its shape in a line file in lib/exchange, its table in db, and who names whom,
// usual values and what is saved as a table in this room.

/** What a field holds. A value of each is said where its field is, below. */
export type Holds =
  | { readonly what: Plain }
  | { readonly what: "name"; readonly asks: string }
  | { readonly what: "ref"; readonly to: ListName; readonly asks: string | null }
  | { readonly what: "refs"; readonly to: ListName }
  | { readonly what: "idOf"; readonly asks: string }
  | { readonly what: "oneOf"; readonly values: Words }
  | { readonly what: "whole" | "from1" | "decimal" | "degrees"; readonly most: number }
  | { readonly what: "inside" | "several"; readonly fields: Fields };

/** What needs no more to be said of. */
export type Plain =
  | "id"
  | "key"
  | "text"
  | "sha256"
  | "day"
  | "instant"
  | "timeOfDay"
  | "outline"
  | "yesNo"
  | "feet"
  | "signedFeet"
  | "inches"
  | "clock"
  | "scale"
  | "quantity"
  | "percent"
  | "parts"
  | "cents"
  | "sum";

type Words = readonly [string, ...string[]];

/** One field of a row, whose values are of type `T`. */
export interface Field<T = unknown> {
  readonly holds: Holds;
  /** Null stands where nobody said anything. */
  readonly nullable: boolean;
  /** What it is where a row leaves it out; null: a row has to say it. */
  readonly usual: { readonly value: T } | null;
  /** Came when offices had rows already: those have the usual value. */
  readonly late: boolean;
  /** Carries the type; never there. */
  readonly of?: T;
}

/** A field that every row has to say. */
interface Said<T> extends Field<T> {
  readonly usual: null;
}

/** A field that a row may leave out. */
interface Usual<T> extends Field<T> {
  readonly usual: { readonly value: T };
}

/** Fields by name, in the order in which they are written. */
export type Fields = Readonly<Record<string, Field>>;

/** The type of what these fields hold. */
export type ValuesOf<F> = { readonly [K in keyof F]: F[K] extends Field<infer T> ? T : never };

/** The fields that have a usual value. */
export type UsualOf<F> = {
  readonly [K in keyof F as F[K] extends Usual<unknown> ? K : never]: F[K] extends Field<infer T>
    ? T
    : never;
};

/** Who saves a list as a table: whoever does office work, or the field too; null: only operations write it. */
type SavedBy = "office" | "field" | null;

/** The rows of one list. */
export interface Row<F extends Fields = Fields, S extends SavedBy = SavedBy> {
  /** One of them, in words. */
  readonly one: string;
  /**
   * How many a line takes. One line is a street of houses, not a town: what is longer is a mistake,
   * and everybody would wait for it whenever a page is shown.
   */
  readonly most: number;
  readonly saved: S;
  readonly fields: F;
}

/** The type of a row. */
export type RowOf<R extends Row> = ValuesOf<R["fields"]>;

/** Of every list that does not say otherwise. */
const USUAL_MOST = 3_000;

/** A row: its id, and its fields. What is not saved as a table says nothing of who saves it. */
export function row<F extends Fields, const S extends SavedBy = null>({
  one,
  most = USUAL_MOST,
  saved,
  fields,
}: {
  readonly one: string;
  readonly most?: number;
  readonly saved?: S;
  readonly fields: F;
}): Row<{ readonly id: Said<string> } & F, S> {
  return { one, most, saved: (saved ?? null) as S, fields: { id, ...fields } };
}

function said<T>(holds: Holds): Said<T> {
  return { holds, nullable: false, usual: null, late: false };
}

/** Where a row leaves it out, it is `value`. */
export function usually<T>(field: Said<T>, value: NoInfer<T>): Usual<T> {
  return { ...field, usual: { value } };
}

/** Null where nobody said anything. */
export function maybe<T>(field: Field<T>): Usual<T | null> {
  return { ...field, nullable: true, usual: { value: null } };
}

/** A field that came when offices had rows already. */
export function late<T>(field: Usual<T>): Usual<T> {
  return { ...field, late: true };
}

/** Stands in addresses of pages, names of fields and files. */
const id = said<string>({ what: "id" });

/** What tells one thing from another inside of a row. */
export const key = said<string>({ what: "key" });

/** The id of a row that may be gone by now. */
export const formerId = id;

/** Text that has to be there, though it may be empty. */
export const text = said<string>({ what: "text" });

/** Text; empty where nobody wrote any. */
export const words = usually(text, "");

/** Text that may not be empty; `asks` says what to enter. */
export function name(asks: string): Said<string> {
  return said({ what: "name", asks });
}

/** The id of a row of another list; `asks` says of what, where that is not what the list calls it. */
export function ref(to: ListName, asks?: string): Said<string> {
  return said({ what: "ref", to, asks: asks ?? null });
}

/** The ids of several rows of another list, some of which may be gone by now. */
export function refs(to: ListName): Usual<readonly string[]> {
  return usually(said<readonly string[]>({ what: "refs", to }), []);
}

/** The id of what is no row of the file. */
export function idOf(asks: string): Said<string> {
  return said({ what: "idOf", asks });
}

/** A word of a closed set. */
export function oneOf<const V extends Words>(values: V): Said<V[number]> {
  return said({ what: "oneOf", values });
}

/** Yes, unless said. */
export const yesUnlessSaid = usually(said<boolean>({ what: "yesNo" }), true);

/** No, unless said. */
export const yesNo = usually(said<boolean>({ what: "yesNo" }), false);

export const day = said<Day>({ what: "day" });

/** A moment in UTC. */
export const instant = said<Instant>({ what: "instant" });

/** Local clock time as `16:05`; empty where none is noted. */
export const timeOfDay = usually(said<string>({ what: "timeOfDay" }), "");

export const sha256 = said<string>({ what: "sha256" });

/** Corners of a shape as people write them (plan/outline.ts). */
export const outline = said<string>({ what: "outline" });

/** A place or distance that can't lie below zero, in hundredths of a foot. */
export const feet = said<Cft>({ what: "feet" });

/** Hundredths of a foot either way: a counter below its zero, a height, a way west or south. */
export const signedFeet = said<Cft>({ what: "signedFeet" });

/** Inches, of a pipe. */
export const inches = said<number>({ what: "inches" });

/** 1 to 12, half hours as .5. */
export const clock = said<number>({ what: "clock" });

/** A scale, in parts per million on top of 1. */
export const scale = said<number>({ what: "scale" });

/** Hundredths of a unit. */
export const quantity = said<number>({ what: "quantity" });

/** Basis points: 1000 is 10 %. */
export const percent = said<number>({ what: "percent" });

/** A share of a whole, by any measure. */
export const parts = said<number>({ what: "parts" });

/** One amount, in whole cents. */
export const cents = said<Cents>({ what: "cents" });

/** A sum of amounts, in whole cents. */
export const sum = said<Cents>({ what: "sum" });

/** A whole number from 0. */
export function whole(most: number): Said<number> {
  return said({ what: "whole", most });
}

/** A whole number from 1. */
export function from1(most: number): Said<number> {
  return said({ what: "from1", most });
}

/** A number from 0. */
export function decimal(most: number): Said<number> {
  return said({ what: "decimal", most });
}

/** Degrees from 0, by halves. */
export function degrees(most: number): Said<number> {
  return said({ what: "degrees", most });
}

/** Fields that belong together, as an address. */
export function inside<F extends Fields>(fields: F): Said<ValuesOf<F>> {
  return said({ what: "inside", fields });
}

/** Several of the same inside of a row; none, unless said. */
export function several<F extends Fields>(fields: F): Usual<readonly ValuesOf<F>[]> {
  return usually(said<readonly ValuesOf<F>[]>({ what: "several", fields }), []);
}

/** Every field at its usual value; what has none is left out. */
export function usualValues<F extends Fields>(fields: F): UsualOf<F> {
  const usual = Object.entries(fields).flatMap(([field, { usual }]) =>
    usual === null ? [] : [[field, usual.value]],
  );
  return Object.fromEntries(usual) as UsualOf<F>;
}

/** A row of which nothing is said yet: what every row has to say is left out. */
export function usualRow<R extends Row>({ fields }: R): UsualOf<R["fields"]> {
  return usualValues(fields);
}
