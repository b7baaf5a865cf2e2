import type { Authority } from "../facts/authority.ts";
import type { LineFile, Office } from "../facts/line-file.ts";
import type { PermitKind } from "../facts/permit.ts";
import type { Report } from "../findings/report.ts";
import { OFFICE_FACTS } from "./office-facts.ts";
import { PEOPLE_FACTS } from "./people-facts.ts";
import { WORK_FACTS } from "./work-facts.ts";

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

/** Every fact that a form may be filled in with, group by group. */
export const FORM_FACTS: readonly FormFact[] = [...OFFICE_FACTS, ...PEOPLE_FACTS, ...WORK_FACTS];

const BY_KEY = new Map(FORM_FACTS.map((fact) => [fact.key, fact]));

export function formFact(key: string): FormFact | null {
  return BY_KEY.get(key) ?? null;
}
