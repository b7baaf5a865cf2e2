import type { GridColumn } from "#app/_components/grid/column.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";

/** The tally as the crew fills it: one row for each branch. */
export function reconnectionColumns({
  tieIns,
  runs,
}: Pick<LineFile, "tieIns" | "runs">): GridColumn[] {
  const named = tieIns.map(({ id, label }) => ({ value: id, label }));
  const videos = runs.map(({ id, name, ranOn }) => ({
    value: id,
    label: name || `run of ${ranOn}`,
  }));
  return [
    { key: "tieInId", title: "Branch", kind: "choice", choices: named, width: 8, required: true },
    {
      key: "lowerAccess",
      title: "Lower access",
      pasteHeadings: ["lower way in"],
      kind: "feet",
      width: 8,
      hint: "Station of the pit or the main",
      example: "0.0",
    },
    {
      key: "fromLower",
      title: "Up to it",
      kind: "feet",
      width: 8,
      hint: "Measured from the lower access",
      example: "20.4",
    },
    {
      key: "upperAccess",
      title: "Upper access",
      pasteHeadings: ["upper way in"],
      kind: "feet",
      width: 8,
      hint: "Station of the upper cleanout",
      example: "96.0",
    },
    {
      key: "fromUpper",
      title: "Down to it",
      kind: "feet",
      width: 8,
      hint: "Measured from the upper access",
      example: "75.4",
    },
    { key: "measuredBy", title: "Measured by", kind: "text", width: 16 },
    { key: "measuredOn", title: "On", kind: "day", width: 12 },
    {
      key: "openedRunId",
      title: "Second video",
      kind: "choice",
      choices: [{ value: "", label: "–" }, ...videos],
      width: 12,
      hint: "The run after the work",
    },
    {
      key: "openedSecond",
      title: "Seen open at",
      kind: "video",
      width: 9,
      hint: "Time in that video",
      example: "2:58",
    },
    { key: "openedBy", title: "Seen by", kind: "text", width: 16 },
    { key: "openedOn", title: "On (open)", kind: "day", width: 12 },
    { key: "note", title: "Note", kind: "text", width: 24 },
  ];
}

export const RECONNECTION_BLANK = { tieInId: null };
