import type { GridColumn } from "#app/_components/grid/column.ts";
import { LETTER_NAMES } from "#app/_components/letter-names.ts";
import { METHOD_WORDS } from "#lib/domain/facts/notice-words.ts";
import { COUNT_WORDS } from "#lib/domain/notices/way-rule.ts";
import { options, SOURCE } from "./column-parts.ts";

/** What an authority counts as delivered, by kind of letter and method. */
export const PROOF_COLUMNS: readonly GridColumn[] = [
  {
    key: "letter",
    title: "Letter",
    kind: "choice",
    width: 26,
    choices: [{ value: "", label: "every letter" }, ...options(LETTER_NAMES)],
    hint: "A row for one letter replaces the rows for every letter",
  },
  {
    key: "method",
    title: "Method",
    kind: "choice",
    width: 18,
    required: true,
    choices: options(METHOD_WORDS),
  },
  {
    key: "counts",
    title: "Counts as delivered",
    kind: "choice",
    width: 44,
    required: true,
    choices: options(COUNT_WORDS),
  },
  ...SOURCE,
];
