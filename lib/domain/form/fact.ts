import type { FormFact, FormFactKind, FormInput } from "./form-facts.ts";

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
