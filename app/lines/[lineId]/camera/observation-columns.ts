import type { GridColumn } from "#app/_components/grid/column.ts";
import { usualRow } from "#lib/domain/facts/field.ts";
import { OBSERVATION } from "#lib/domain/facts/run.ts";
import { FAULT_WORDS, OBSERVATION_WORDS } from "#lib/domain/facts/run-words.ts";
import { DEGREE_WORDS, withNone } from "../field-terms.ts";
import { pipeColumns, uncertaintyColumn } from "../pipe-columns.ts";
import { DEGREE_SYNONYMS, FAULT_SYNONYMS, OBSERVATION_SYNONYMS } from "../synonyms.ts";
import { optionsOf } from "../terms.ts";

/** Columns before and after the station that is worked out beside each reading. */
export const OBSERVATION_COLUMNS: readonly GridColumn[] = [
  {
    key: "counter",
    title: "Counter",
    kind: "feet",
    width: 8,
    required: true,
    example: "24.1",
    pasteHeadings: ["footage", "distance", "feet", "ft", "at"],
    settles: { reading: "read" },
    unsure: "uncertainty",
    hint: "Counter reading. “about 31” or “31–33” also fills Uncertainty ±",
  },
  {
    key: "kind",
    title: "What",
    kind: "choice",
    choices: optionsOf(OBSERVATION_WORDS, OBSERVATION_SYNONYMS),
    width: 10,
    required: true,
    pasteHeadings: ["observation", "type"],
  },
  {
    key: "clock",
    title: "Clock",
    kind: "clock",
    width: 6,
    example: "9",
    hint: "As the lens looks",
    pasteHeadings: ["clock position", "o clock"],
  },
  {
    key: "fault",
    title: "Defect",
    kind: "choice",
    choices: withNone(optionsOf(FAULT_WORDS, FAULT_SYNONYMS)),
    width: 15,
    pasteHeadings: ["fault"],
  },
  ...pipeColumns(),
  {
    key: "toCounter",
    title: "To",
    kind: "feet",
    width: 8,
    hint: "End of a continuous section",
    pasteHeadings: ["end footage", "end"],
  },
  { key: "note", title: "Note", kind: "text", width: 24 },
  {
    key: "degree",
    title: "Severity",
    kind: "choice",
    choices: withNone(optionsOf(DEGREE_WORDS, DEGREE_SYNONYMS)),
    width: 8,
    hint: "As the technician put it",
    pasteHeadings: ["degree", "how bad"],
  },
  {
    key: "reduction",
    title: "% blocked",
    kind: "whole",
    width: 6,
    hint: "How much of the pipe’s opening it takes, in percent",
    pasteHeadings: ["reduction", "percent", "%", "% of bore", "blocked", "cross section loss"],
  },
  {
    key: "waterDepth",
    title: "Water",
    kind: "inches",
    width: 6,
    hint: "Depth of standing water, if given",
  },
  uncertaintyColumn(
    "How far off this reading may be; filled when the counter is typed as “about 31” or “31–33”",
  ),
  {
    key: "videoSecond",
    title: "Video",
    kind: "video",
    width: 8,
    example: "2:58",
    pasteHeadings: ["video time", "time"],
  },
  {
    key: "code",
    title: "Office code",
    kind: "text",
    width: 9,
    hint: "Your own code, if your office uses one",
    pasteHeadings: ["own code", "code"],
  },
];

export const OBSERVATION_BLANK = { ...usualRow(OBSERVATION), kind: "tie-in" };
