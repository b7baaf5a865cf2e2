import type { Authority } from "../facts/authority.ts";
import type { LineFile, Office } from "../facts/line-file.ts";
import type { PermitKind } from "../facts/permit.ts";
import type { Report } from "../findings/report.ts";

/** What a form is filled in from. */
export interface FormInput {
  readonly file: LineFile;
  readonly report: Report;
  readonly office: Office;
  readonly authority: Pick<Authority, "name">;
  /** The application that the form belongs to. */
  readonly permitKind: PermitKind;
}

/**
 * How a fact is written: as words, a day, an amount, a telephone number, feet; or as `choice`, where
 * its values check boxes.
 */
export type FormFactKind = "words" | "day" | "money" | "phone" | "feet" | "choice";

/** Something of a line's file that a form may ask for. */
export interface FormFact {
  readonly key: string;
  /** As the office would say it. */
  readonly words: string;
  readonly kind: FormFactKind;
  /** What it belongs to; facts of a group that repeats stand in rows beside each other. */
  readonly group: string;
  /** There may be several: owners, parcels, pieces of work. */
  readonly repeats: boolean;
  /** Of a choice: every value with its words. */
  readonly values: Readonly<Record<string, string>>;
  /** As stored (days as `yyyy-mm-dd`, cents and hundredths of feet as digits); unknown is left out or empty. */
  readonly of: (input: FormInput) => readonly string[];
}

type Single = string | number | null | undefined;

/** A fact of which there is one. */
export function one(
  group: string,
  [key, words, kind]: readonly [string, string, FormFactKind?],
  of: (input: FormInput) => Single,
): FormFact {
  return {
    key,
    words,
    kind: kind ?? "words",
    group,
    repeats: false,
    values: {},
    of: (input) => {
      const value = of(input);
      return value === null || value === undefined || value === "" ? [] : [String(value)];
    },
  };
}

/** A fact of each of several things, row by row; an unknown one keeps its row. */
export function many<T>(
  group: string,
  rows: (input: FormInput) => readonly T[],
): (facts: readonly [string, string, FormFactKind?], of: (row: T) => Single) => FormFact {
  return ([key, words, kind], of) => ({
    key,
    words,
    kind: kind ?? "words",
    group,
    repeats: true,
    values: {},
    of: (input) => rows(input).map((row) => String(of(row) ?? "")),
  });
}

/** A fact that has some of a few values, which check boxes. */
export function choice(
  group: string,
  [key, words, values]: readonly [string, string, Readonly<Record<string, string>>],
  of: (input: FormInput) => readonly string[],
): FormFact {
  return {
    key,
    words,
    kind: "choice",
    group,
    repeats: false,
    values,
    of: (input) => [...new Set(of(input))],
  };
}
