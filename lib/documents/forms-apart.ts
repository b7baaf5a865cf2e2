import { askApart, type Limits, type NoAnswer } from "#lib/apart/apart.ts";
import type { FormValue } from "#lib/domain/form/form-fill.ts";
import { err, type Result } from "#lib/result.ts";
import type { FilledForm } from "./fill-form.ts";
import type { ReadForm } from "./read-form.ts";

const ENTRY = "lib/documents/form.apart.ts";

/** For one form; a long one takes a second. */
const LIMITS: Limits = { time: 20_000, memory: 1_000 };

const WORDS: Readonly<Record<NoAnswer, string>> = {
  "too-long": "it takes too long to read. Print it to a new PDF, and place boxes on that.",
  "too-much-memory":
    "it is too large once it is opened. Print it to a new PDF, and place boxes on that.",
  broke: "it can’t be read here. Print it to a new PDF, and place boxes on that.",
};

/** One piece of work on a form; without `fill` it is only read. */
export interface FormTask {
  readonly bytes: Uint8Array;
  readonly fill: { readonly values: readonly FormValue[]; readonly flatten: boolean } | null;
}

/** What is on an authority's form, read in a process of its own; or why it can't be, in words. */
export function readFormApart(
  bytes: Uint8Array,
  limits: Limits = LIMITS,
): Promise<Result<ReadForm, string>> {
  return ask<ReadForm>({ bytes, fill: null }, limits);
}

/** An authority's form filled in, in a process of its own. */
export function fillFormApart(
  bytes: Uint8Array,
  fill: { readonly values: readonly FormValue[]; readonly flatten: boolean },
): Promise<Result<FilledForm, string>> {
  return ask<FilledForm>({ bytes, fill }, LIMITS);
}

async function ask<T>(task: FormTask, limits: Limits): Promise<Result<T, string>> {
  const answer = await askApart<FormTask, Result<T, string>>(ENTRY, limits, task);
  return answer.ok ? answer.value : err(WORDS[answer.error]);
}
