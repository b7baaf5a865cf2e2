import type { FormField } from "../facts/form.ts";

/** What goes into one field of a form. */
export type FormValue =
  | {
      readonly kind: "text";
      readonly field: FormField;
      /** The words, then shorter ways to say the same, for a field that takes no more. */
      readonly ways: readonly string[];
    }
  | { readonly kind: "check"; readonly field: FormField; readonly on: boolean }
  | { readonly kind: "choice"; readonly field: FormField; readonly option: string };

/** What a form has no room for, as a table on a sheet that is attached to it. */
export interface FormOverflow {
  readonly title: string;
  readonly columns: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

/** A form filled in, as data: which file, and what goes where. */
export interface FormFill {
  readonly formId: string;
  readonly version: number;
  readonly title: string;
  readonly sha256: string;
  readonly flatten: boolean;
  readonly values: readonly FormValue[];
  readonly overflow: readonly FormOverflow[];
}

/** How a field's words were set where they did not simply go in. */
export interface FormSet {
  readonly field: string;
  /**
   * `smaller`: in smaller type than the form asks for; `continued`: on the attached sheet, in full;
   * `no-such-option`: the form does not offer it, so nothing was selected.
   */
  readonly how: "smaller" | "continued" | "no-such-option";
  /** The words in full. */
  readonly words: string;
}
