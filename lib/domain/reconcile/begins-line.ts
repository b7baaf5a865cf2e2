import type { LineFile } from "../facts/line-file.ts";
import type { RecordEntry } from "../facts/record.ts";
import type { EntryFinding, TieInFinding } from "../findings/report.ts";
import type { Cft } from "../length/station.ts";
import { counterTolerance } from "../run/convert.ts";

/**
 * Where the line begins, if a record entry that no tie-in answers to lies there: the house at the
 * upper end has no branch that a camera could see, the shared pipe itself comes from it. Null where
 * the entry lies elsewhere, or where nobody knows the upper end.
 */
export function beginsLineAt(
  { line }: Pick<LineFile, "line">,
  finding: Pick<EntryFinding, "station" | "tieInId">,
): Cft | null {
  const { station, tieInId } = finding;
  const { upperEnd } = line;
  if (tieInId !== null || station === null || upperEnd === null) return null;
  return Math.abs(station - upperEnd) <= counterTolerance(upperEnd) ? upperEnd : null;
}

/** Said of the pair, and of the tie-in that stands for the house. */
export function beginsWords(entry: Pick<RecordEntry, "label">): string {
  return `The line begins at ${entry.label || "this house"}; it joins by the shared pipe itself`;
}

/**
 * Whether a tie-in of the record is the shared pipe's own beginning: at the upper end, and never seen
 * as a branch. It has no side then, and nothing of it was seen.
 */
export function beginsLine(
  { upperEnd }: Pick<LineFile["line"], "upperEnd">,
  finding: Pick<TieInFinding, "station" | "side" | "sightings" | "standing">,
): boolean {
  const { station, side, sightings, standing } = finding;
  const isAtEnd = upperEnd !== null && station === upperEnd && side === "unknown";
  return isAtEnd && sightings.length === 0 && standing === "on-record-and-seen";
}
