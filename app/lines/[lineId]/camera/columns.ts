import type { GridColumn, LookedUp } from "#app/_components/grid/column.ts";
import { usualRow } from "#lib/domain/facts/field.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { SIDE_WORDS } from "#lib/domain/facts/line-words.ts";
import { RUN, type Run } from "#lib/domain/facts/run.ts";
import {
  ANCHOR_WORDS,
  ANSWER_WORDS,
  DIRECTION_WORDS,
  FOOTAGE_FROM_WORDS,
  OBSCURED_WORDS,
  POINT_WORDS,
  RUN_END_WORDS,
  SELF_LEVELING_WORDS,
  withNone,
} from "../field-terms.ts";
import { pipeColumns } from "../pipe-columns.ts";
import { FOOTAGE_FROM_SYNONYMS, SIDE_SYNONYMS } from "../synonyms.ts";
import { optionsOf } from "../terms.ts";

export const RUN_COLUMNS: readonly GridColumn[] = [
  { key: "name", title: "Run", kind: "text", width: 10, required: true, example: "Run 1" },
  { key: "ranOn", title: "Day", kind: "day", width: 12, required: true },
  { key: "operator", title: "Operator", kind: "text", width: 14 },
  {
    key: "accessPoint",
    title: "Access point",
    kind: "text",
    width: 20,
    example: "Basement cleanout, SE corner",
    pasteHeadings: ["access", "camera went in at", "entry", "start point"],
  },
  {
    key: "looks",
    title: "Direction",
    kind: "choice",
    choices: optionsOf(DIRECTION_WORDS),
    width: 12,
    hint: "Which way the lens looks. Toward the main is downstream. Sets left and right",
    pasteHeadings: ["looks", "camera direction", "looking"],
  },
  {
    key: "measuredFrom",
    title: "Measured from",
    kind: "choice",
    choices: optionsOf(FOOTAGE_FROM_WORDS, FOOTAGE_FROM_SYNONYMS),
    width: 17,
    hint: "Where the counter was zeroed. At the main: footage grows as the camera is pulled back",
    pasteHeadings: ["footage from", "footage measured from", "zeroed at"],
  },
  {
    key: "selfLeveling",
    title: "Self-leveling head",
    kind: "choice",
    choices: optionsOf(SELF_LEVELING_WORDS),
    width: 10,
    hint: "A head that turns in the pipe shows no true clock position",
  },
  {
    key: "zeroAt",
    title: "Zero at",
    kind: "text",
    width: 18,
    example: "center of the cleanout",
    hint: "Where the counter was set to zero",
    pasteHeadings: ["zero", "counter zero"],
  },
  {
    key: "fromCounter",
    title: "Start footage",
    kind: "feet",
    width: 9,
    hint: "Counter reading where the run began",
    pasteHeadings: ["looked from", "start", "from"],
  },
  {
    key: "toCounter",
    title: "End footage",
    kind: "feet",
    width: 9,
    hint: "Counter reading where the run ended",
    pasteHeadings: ["looked to", "end", "to"],
  },
  {
    key: "ended",
    title: "Reason ended",
    kind: "choice",
    choices: optionsOf(RUN_END_WORDS),
    width: 18,
    hint: "What stopped the camera",
    pasteHeadings: ["why it ended", "end reason"],
  },
  {
    key: "crossingSeen",
    title: "Utility crossing seen",
    kind: "choice",
    choices: optionsOf(ANSWER_WORDS),
    width: 11,
    hint: "A crossbore: anything bored through the pipe, e.g. a gas line",
    pasteHeadings: ["crossing seen", "crossbore", "cross bore", "crossing"],
  },
  {
    key: "uncertainty",
    title: "Uncertainty ±",
    kind: "feet",
    width: 9,
    hint: "Only if you know it is not the usual 1 ft or 0.5%",
    pasteHeadings: ["off by", "uncertainty", "plus or minus", "accuracy"],
  },
  { key: "note", title: "Note", kind: "text", width: 26 },
];

/** Which run saw it, where one file holds the observations of several. */
export function runColumn(runs: readonly Pick<Run, "id" | "name">[]): GridColumn {
  return {
    key: "runId",
    title: "Run",
    kind: "choice",
    choices: runs.map(({ id, name }) => ({ value: id, label: name })),
    width: 10,
    required: true,
    pasteHeadings: ["pass", "run name", "run no"],
  };
}

/** Whether anything crosses the pipe is not said until somebody says it. */
export const RUN_BLANK = { ...usualRow(RUN), looks: "downstream" as const };

export const ANCHOR_COLUMNS: readonly GridColumn[] = [
  { key: "counter", title: "Counter", kind: "feet", width: 8, required: true, example: "98.6" },
  {
    key: "station",
    title: "Station",
    kind: "feet",
    width: 10,
    required: true,
    example: "0.0",
    hint: "Feet from the main connection",
  },
  {
    key: "kind",
    title: "Landmark",
    kind: "choice",
    choices: optionsOf(ANCHOR_WORDS),
    width: 15,
  },
  { key: "note", title: "Note", kind: "text", width: 14 },
];

export const ANCHOR_BLANK = { kind: "main-connection" };

export const GAP_COLUMNS: readonly GridColumn[] = [
  { key: "fromCounter", title: "From", kind: "feet", width: 8, required: true, example: "51.6" },
  { key: "toCounter", title: "To", kind: "feet", width: 8, required: true, example: "57.6" },
  { key: "cause", title: "Reason", kind: "choice", choices: optionsOf(OBSCURED_WORDS), width: 14 },
  { key: "note", title: "Note", kind: "text", width: 12 },
];

export const GAP_BLANK = { cause: "under-water" };

export const POINT_COLUMNS: readonly GridColumn[] = [
  {
    key: "kind",
    title: "Landmark",
    kind: "choice",
    choices: optionsOf(POINT_WORDS),
    width: 18,
    required: true,
  },
  { key: "station", title: "Station", kind: "feet", width: 9, required: true, example: "12.0" },
  {
    key: "depth",
    title: "Depth",
    kind: "feet",
    width: 8,
    example: "7.0",
    hint: "To the bottom of the pipe; blank if not measured",
  },
  { key: "note", title: "Note", kind: "text", width: 30, example: "Brass cap in the alley" },
];

export const POINT_BLANK = { kind: "cleanout" };

/** `faces`: what each side of a tie-in faces, where the line’s bearing tells; else null. */
export function tieInColumns(
  file: Pick<LineFile, "tieIns">,
  faces: LookedUp | null = null,
): GridColumn[] {
  const parents = file.tieIns.map(({ id, label }) => ({ value: id, label: `branch of ${label}` }));
  return [
    { key: "label", title: "Tie-in", kind: "text", width: 7, required: true, example: "T1" },
    {
      key: "parentId",
      title: "Joins",
      kind: "choice",
      choices: withNone(parents, "the shared line"),
      width: 14,
    },
    {
      key: "station",
      title: "Station",
      kind: "feet",
      width: 9,
      hint: "Only to override the sightings; blank = use them",
    },
    {
      key: "side",
      title: "Side",
      kind: "choice",
      choices: optionsOf(SIDE_WORDS, SIDE_SYNONYMS),
      width: 9,
      hint: "Looking upstream",
    },
    ...(faces === null
      ? []
      : [{ key: "faces", title: "Faces", kind: "text", width: 12, computed: faces } as const]),
    ...pipeColumns(),
    { key: "note", title: "Note", kind: "text", width: 26 },
  ];
}
