import type { GridColumn } from "#app/_components/grid/column.ts";
import type { StatutoryPaper } from "#lib/domain/facts/statutory-paper.ts";
import {
  BY_WORDS,
  CONDITION_WORDS,
  EVENT_WORDS,
  GIVEN_WORDS,
  READER_WORDS,
} from "#lib/domain/statutory/paper-words.ts";
import { options, SOURCE } from "./column-parts.ts";

const UNIT_WORDS: Readonly<Record<StatutoryPaper["unit"], string>> = {
  "calendar-days": "calendar days",
  "business-days": "business days",
  months: "months",
};

/** What the law of a state asks of a contractor, paper by paper. */
export const STATUTORY_COLUMNS: readonly GridColumn[] = [
  { key: "state", title: "State", kind: "text", width: 7, example: "WA" },
  {
    key: "title",
    title: "Paper",
    kind: "text",
    width: 24,
    required: true,
    example: "Notice to customer",
  },
  { key: "titleEs", title: "Its name in Spanish", kind: "text", width: 22 },
  { key: "to", title: "To", kind: "choice", width: 24, choices: options(READER_WORDS) },
  { key: "condition", title: "If", kind: "choice", width: 30, choices: options(CONDITION_WORDS) },
  {
    key: "least",
    title: "From amount",
    kind: "cents",
    width: 12,
    example: "1,000.00",
    hint: "Blank: whatever the amount of the contract",
  },
  { key: "count", title: "Days", kind: "whole", width: 7, example: "20" },
  {
    key: "unit",
    title: "Counted in",
    kind: "choice",
    width: 15,
    choices: options(UNIT_WORDS),
  },
  {
    key: "way",
    title: "Before or after",
    kind: "choice",
    width: 11,
    choices: options({ after: "after", before: "before" }),
  },
  {
    key: "event",
    title: "Event",
    kind: "choice",
    width: 20,
    required: true,
    choices: options(EVENT_WORDS),
  },
  { key: "by", title: "Delivered by", kind: "choice", width: 22, choices: options(BY_WORDS) },
  {
    key: "given",
    title: "Counts when",
    kind: "choice",
    width: 16,
    choices: options(GIVEN_WORDS),
  },
  {
    key: "workWaits",
    title: "Work waits",
    kind: "whole",
    width: 9,
    hint: "So many full days after it is given, before work begins; 0 for none",
  },
  {
    key: "waitUnit",
    title: "Waits in",
    kind: "choice",
    width: 15,
    choices: options({ "business-days": "business days", "calendar-days": "calendar days" }),
  },
  ...SOURCE,
];
