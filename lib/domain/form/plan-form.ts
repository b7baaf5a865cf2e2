import type { AuthorityForm, DayManner, FormEntry, FormField, FormMapping } from "../facts/form.ts";
import { isDay } from "../time/days.ts";
import type { FormFact, FormInput } from "./fact.ts";
import { formFact } from "./form-facts.ts";
import type { FormFill, FormOverflow, FormValue } from "./form-fill.ts";
import { waysOfDay, waysOfFeet, waysOfMoney, waysOfPhone } from "./manner.ts";

/** How one field of a form comes out on a line. */
export interface FormAnswer {
  readonly field: FormField;
  /**
   * `empty`: something should stand there and nothing is known; `blank`: left empty on purpose;
   * `unmapped`: nobody said what goes there; `to-sign`: for whoever signs.
   */
  readonly state: "filled" | "empty" | "blank" | "unmapped" | "to-sign";
  /** What stands there, as it is written. */
  readonly words: string;
  /** Where that is from. */
  readonly from: "fact" | "words" | "typed" | "nothing";
  /** The fact, in words; empty where it is from none. */
  readonly fact: string;
}

/** A form as it comes out on a line. */
export interface FormPlan {
  readonly fill: FormFill;
  readonly answers: readonly FormAnswer[];
  /** Typed for this line into a field that this version of the form no longer has. */
  readonly strays: readonly FormEntry[];
}

/**
 * What goes into each field: what was typed for this line, else what the form takes from the file's
 * facts. Nothing is guessed: a fact that is unknown leaves its field empty, and the field is named. Rows
 * that the form has no room for (a third owner) go onto an attached sheet.
 */
export function planForm(
  form: AuthorityForm,
  input: FormInput,
  entries: readonly FormEntry[],
): FormPlan {
  const own = entries.filter(({ formId }) => formId === form.id);
  const answered = form.fields.map((field) => {
    const entry = own.findLast((each) => each.field === field.name);
    const mapping = form.mappings.find((each) => each.field === field.name);
    return answerOf(field, { entry, mapping, input, days: form.days });
  });
  const names = new Set(form.fields.map(({ name }) => name));
  return {
    fill: {
      formId: form.id,
      version: form.version,
      title: form.title,
      sha256: form.sha256,
      flatten: form.flatten,
      values: answered.flatMap(({ value }) => value ?? []),
      overflow: overflowOf(form, input),
    },
    answers: answered.map(({ answer }) => answer),
    strays: own.filter(({ field }) => !names.has(field)),
  };
}

/** Fields in which something should stand and nothing does. */
export function emptyFields({ answers }: Pick<FormPlan, "answers">): FormAnswer[] {
  return answers.filter(({ state }) => state === "empty" || state === "unmapped");
}

interface Answered {
  readonly answer: FormAnswer;
  readonly value: FormValue | null;
}

interface At {
  readonly entry: FormEntry | undefined;
  readonly mapping: FormMapping | undefined;
  readonly input: FormInput;
  readonly days: DayManner;
}

function answerOf(field: FormField, at: At): Answered {
  const { entry, mapping } = at;
  if (field.kind === "signature") return without(field, "to-sign");
  if (entry !== undefined) {
    if (entry.words.trim() === "") return without(field, "blank", "typed");
    return answered(field, "typed", valueFor(field, [entry.words]));
  }
  if (mapping === undefined) return without(field, "unmapped");
  switch (mapping.source) {
    case "blank":
      return without(field, "blank");
    case "typed":
      return without(field, "empty");
    case "words":
      return mapping.words.trim() === ""
        ? without(field, "empty")
        : answered(field, "words", valueFor(field, [mapping.words]));
    case "fact":
      return ofFact(field, mapping, at);
  }
}

function without(
  field: FormField,
  state: FormAnswer["state"],
  from: FormAnswer["from"] = "nothing",
  fact = "",
): Answered {
  return { answer: { field, state, words: "", from, fact }, value: null };
}

function answered(
  field: FormField,
  from: FormAnswer["from"],
  value: FormValue,
  fact = "",
): Answered {
  return { answer: { field, state: "filled", words: wordsOf(value), from, fact }, value };
}

/** What a value reads like. */
function wordsOf(value: FormValue): string {
  if (value.kind === "text") return value.ways[0] ?? "";
  if (value.kind === "choice") return value.option;
  return value.on ? "checked" : "not checked";
}

function valueFor(field: FormField, ways: readonly string[]): FormValue {
  const [words = ""] = ways;
  if (field.kind === "check") return { kind: "check", field, on: isYes(words) };
  if (field.kind === "choice") return { kind: "choice", field, option: words };
  return { kind: "text", field, ways };
}

/** How a person says that a box is checked. */
function isYes(words: string): boolean {
  return /^(yes|x|true|checked|on|1)$/i.test(words.trim());
}

function ofFact(field: FormField, mapping: FormMapping, { input, days }: At): Answered {
  const fact = formFact(mapping.fact);
  if (fact === null) return without(field, "unmapped");
  const values = fact.of(input);
  if (field.kind !== "text") return ofValues(field, { mapping, fact, values });
  const rows = rowsOf(fact, mapping, values);
  if (rows === null) return without(field, "blank", "fact", fact.words);
  const ways = waysOf(fact, rows, days);
  return ways.length === 0
    ? without(field, "empty", "fact", fact.words)
    : answered(field, "fact", valueFor(field, ways), fact.words);
}

/** The rows that go into a field; null where there is no such row, so that it rightly stays empty. */
function rowsOf(
  fact: FormFact,
  { row }: FormMapping,
  values: readonly string[],
): readonly string[] | null {
  if (!fact.repeats || row === 0) return values;
  const value = values[row - 1];
  if (value !== undefined) return [value];
  return row === 1 ? [] : null;
}

function waysOf(fact: FormFact, rows: readonly string[], days: DayManner): string[] {
  const known = rows.filter((value) => value.trim() !== "");
  if (known.length === 0) return [];
  const each = known.map((value) => waysOfOne(fact, value, days));
  const [only = []] = each;
  if (each.length === 1) return only;
  // Neighbors with one owner are that owner once.
  return [[...new Set(each.map(([first = ""]) => first))].join("; ")];
}

function waysOfOne(fact: FormFact, value: string, days: DayManner): string[] {
  switch (fact.kind) {
    case "day":
      return isDay(value) ? waysOfDay(value, days) : [value];
    case "money":
      return waysOfMoney(Number(value));
    case "phone":
      return waysOfPhone(value);
    case "feet":
      return waysOfFeet(Number(value));
    case "choice":
      return [fact.values[value] ?? value];
    case "words":
      return [value];
  }
}

/** A box is checked, or an option selected, by the value that it was given; one that is unknown checks nothing. */
function ofValues(
  field: FormField,
  {
    mapping,
    fact,
    values,
  }: { readonly mapping: FormMapping; readonly fact: FormFact; readonly values: readonly string[] },
): Answered {
  const known = values.filter((value) => value !== "");
  if (known.length === 0) return without(field, "empty", "fact", fact.words);
  const meant = mapping.when.find(({ value }) => known.some((each) => isSame(each, value)));
  if (field.kind === "check")
    return answered(field, "fact", { kind: "check", field, on: meant !== undefined }, fact.words);
  if (meant !== undefined && field.options.includes(meant.option))
    return answered(field, "fact", { kind: "choice", field, option: meant.option }, fact.words);
  return without(field, "empty", "fact", fact.words);
}

function isSame(one: string, other: string): boolean {
  return one.trim().toLowerCase() === other.trim().toLowerCase();
}

/** Rows of a group beyond those that the form has fields for. */
function overflowOf(form: AuthorityForm, input: FormInput): FormOverflow[] {
  const numbered = form.mappings.flatMap(({ source, fact: key, row }) => {
    const fact = formFact(key);
    return source === "fact" && row > 0 && fact?.repeats ? [{ fact, row }] : [];
  });
  const groups = [...new Set(numbered.map(({ fact }) => fact.group))];
  return groups.flatMap((group) => {
    const of = numbered.filter(({ fact }) => fact.group === group);
    const facts = [...new Set(of.map(({ fact }) => fact))];
    const last = Math.max(...of.map(({ row }) => row));
    const columns = facts.map((fact) => fact.of(input));
    const count = Math.max(...columns.map((values) => values.length));
    if (count <= last) return [];
    const rows = Array.from({ length: count - last }, (_, at) => [
      String(last + at + 1),
      ...facts.map((fact, column) => {
        const value = columns[column]?.[last + at] ?? "";
        return value === "" ? "unknown" : (waysOfOne(fact, value, form.days)[0] ?? "");
      }),
    ]);
    const title = `${group}, continued from row ${last}`;
    return [{ title, columns: ["Row", ...facts.map(({ words }) => words)], rows }];
  });
}
