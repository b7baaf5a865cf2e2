import type { Instant } from "../time/day.ts";
import { day, type RowOf, row, words } from "./field.ts";
import type { PermitKind } from "./permit.ts";

// An authority's own form: a PDF that it hands out, what is on it, and which fact of a line's file goes
// where. Every save is a version of its own; what was filled in by an earlier one stays as it was.

export const FORM_FIELD_KINDS = ["text", "check", "choice", "signature"] as const;
type FormFieldKind = (typeof FORM_FIELD_KINDS)[number];

/** How a text field takes its words: on one line, on several, or a sign to each box. */
export const FORM_LINES = ["one", "many", "comb"] as const;
export type FormLines = (typeof FORM_LINES)[number];

/** Where something is on a page, in points (72 to the inch) from the upper left of the page as shown. */
export interface FormPlace {
  /** From 1. */
  readonly page: number;
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

/** Something to fill in: a field of the PDF, or a box that the office placed on its page. */
export interface FormField {
  /** The field's full name in the PDF, or the name that the office gave to its box. */
  readonly name: string;
  readonly kind: FormFieldKind;
  readonly lines: FormLines;
  /** A field may stand in several places. */
  readonly places: readonly FormPlace[];
  /** What the form says of it to somebody who points at it. */
  readonly hint: string;
  /** The words printed beside it on the page; empty where none are near. */
  readonly printed: string;
  /** Most signs that it takes; null: no limit. */
  readonly most: number | null;
  /** What can be selected, for a choice. */
  readonly options: readonly string[];
  /** The form itself demands it. */
  readonly needed: boolean;
  /** The form itself keeps it from being typed in. */
  readonly locked: boolean;
  /** Placed by the office: typed over the page. */
  readonly placed: boolean;
}

export interface FormPage {
  readonly width: number;
  readonly height: number;
}

/** How a form wants its days. */
export const DAY_MANNERS = [
  "mm/dd/yyyy",
  "m/d/yyyy",
  "mm/dd/yy",
  "mm-dd-yyyy",
  "yyyy-mm-dd",
  "Month d, yyyy",
] as const;
export type DayManner = (typeof DAY_MANNERS)[number];

/** Where what stands in a field comes from. */
export const FORM_SOURCES = [
  /** A fact of the line's file. */
  "fact",
  /** The same words on every line. */
  "words",
  /** Typed for each line. */
  "typed",
  /** Left empty on purpose: for the authority, or to be signed by hand. */
  "blank",
] as const;
type FormSource = (typeof FORM_SOURCES)[number];

/** Which value of a fact checks a box, or selects an option. */
interface FormWhen {
  readonly value: string;
  /** Of a choice: what is selected then; of a check box of no meaning. */
  readonly option: string;
}

/** What goes into one field. */
export interface FormMapping {
  readonly field: string;
  readonly source: FormSource;
  /** Key of the fact (lib/domain/form/form-facts.ts); empty unless it is from one. */
  readonly fact: string;
  /** Which of several owners, parcels, pieces of work, from 1; 0: all of them, in one field. */
  readonly row: number;
  /** The same on every line; `yes` checks a box. */
  readonly words: string;
  readonly when: readonly FormWhen[];
}

/** One version of a form of an authority. */
export interface AuthorityForm {
  readonly id: string;
  readonly authorityId: string;
  /** From 1; the highest is the one in use. */
  readonly version: number;
  readonly title: string;
  /** The application that it belongs to. */
  readonly permitKind: PermitKind;
  /** What the authority asks for that it meets, in place of a sheet of ours; null: it comes besides. */
  readonly requirementId: string | null;
  readonly fileName: string;
  readonly sha256: string;
  readonly bytes: number;
  readonly pages: readonly FormPage[];
  readonly fields: readonly FormField[];
  /** What was found when it was read that somebody should know. */
  readonly notes: readonly string[];
  readonly mappings: readonly FormMapping[];
  readonly days: DayManner;
  /** What is filled in becomes part of the page and can't be changed afterwards. */
  readonly flatten: boolean;
  /** No longer used. */
  readonly retired: boolean;
  readonly savedBy: string;
  readonly savedAt: Instant;
}

/** What somebody typed into a field of a form for one line; it goes before what the form takes from facts. */
export type FormEntry = RowOf<typeof FORM_ENTRY>;

export const FORM_ENTRY = row({
  one: "form answer",
  fields: {
    formId: words,
    field: words,
    /** `yes` checks a box; the option of a choice; empty: the field stays empty. */
    words,
    by: words,
    on: day,
  },
});
