import type { GridColumn } from "#app/_components/grid/column.ts";
import { BUILT_WORDS } from "#lib/domain/closing/built-parts.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { scopeInForce } from "#lib/domain/sharing/scope-in-force.ts";
import { pipeColumns } from "../../pipe-columns.ts";
import { optionsOf } from "../../terms.ts";

/** What was measured once it was built: one row for each piece. */
export function builtColumns(file: LineFile): GridColumn[] {
  const none = { value: "", label: "–" };
  const work = scopeInForce(file).map(({ id, title }) => ({ value: id, label: title }));
  const tieIns = file.tieIns.map(({ id, label }) => ({ value: id, label }));
  const runs = file.runs.map(({ id, name, ranOn }) => ({
    value: id,
    label: name || `run of ${ranOn}`,
  }));
  return [
    {
      key: "kind",
      title: "What was done",
      kind: "choice",
      choices: optionsOf(BUILT_WORDS),
      width: 14,
      required: true,
    },
    { key: "itemId", title: "Work item", kind: "choice", choices: [none, ...work], width: 20 },
    { key: "tieInId", title: "Branch", kind: "choice", choices: [none, ...tieIns], width: 8 },
    {
      key: "from",
      title: "From",
      kind: "feet",
      width: 8,
      hint: "Station, feet from the main",
      example: "14.0",
    },
    { key: "to", title: "To", kind: "feet", width: 8, hint: "Blank at a point", example: "22.0" },
    ...pipeColumns({ example: "6" }),
    {
      key: "depthFrom",
      title: "Depth",
      kind: "feet",
      width: 8,
      hint: "Surface to invert, lower end",
      example: "7.0",
    },
    { key: "depthTo", title: "Depth (upper)", kind: "feet", width: 8, hint: "At the upper end" },
    { key: "slope", title: "Slope", kind: "percent", width: 7, example: "2" },
    {
      key: "runId",
      title: "Second video",
      kind: "choice",
      choices: [none, ...runs],
      width: 12,
      hint: "The run after the work",
    },
    { key: "runSecond", title: "Seen at", kind: "video", width: 8, hint: "Time in that video" },
    { key: "measuredBy", title: "Measured by", kind: "text", width: 16, example: "Marek Łódź" },
    { key: "measuredOn", title: "On", kind: "day", width: 12 },
    { key: "note", title: "Note", kind: "text", width: 24 },
  ];
}

export const BUILT_BLANK = { kind: "replaced" };
