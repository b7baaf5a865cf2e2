import type { LineFile } from "../facts/line-file.ts";
import type { Report, TieInFinding } from "../findings/report.ts";
import { type Measured, tallyOf } from "../reconnection/tally.ts";
import { mustStop } from "../rollcall/must-stop.ts";
import { workInForce } from "../sharing/scope-in-force.ts";

/** A branch that carries sewage to the work. */
export interface LiveBranch {
  readonly finding: TieInFinding;
  /** Where it is by each end of access, as the tally has it; null: not measured from that end. */
  readonly lower: Measured | null;
  readonly upper: Measured | null;
  /** The work closes it, so that it has to be opened again. */
  readonly closed: boolean;
}

/**
 * The live branches that join at or above the lowest place of the work, from the main upstream, with
 * their stations from both ends; those without a station last. Where the work has no place, all.
 */
export function liveBranches(file: LineFile, report: Report): LiveBranch[] {
  const { tieIns } = report;
  const { lowest } = mustStop(file, report);
  const closed = tallyOf(file, workInForce(file), tieIns);
  // Whatever stands in the tally or has no place drains to the work, or may.
  const joins = ({ station, uncertainty, tieIn }: TieInFinding) =>
    station === null ||
    station + (uncertainty ?? 0) >= (lowest ?? 0) ||
    closed.some(({ tieInId }) => tieInId === tieIn.id);
  return tieIns
    .filter((finding) => finding.live && joins(finding))
    .toSorted(
      (a, b) => (a.station ?? Number.MAX_SAFE_INTEGER) - (b.station ?? Number.MAX_SAFE_INTEGER),
    )
    .map((finding) => {
      const row = closed.find(({ tieInId }) => tieInId === finding.tieIn.id);
      return {
        finding,
        lower: row?.lower ?? null,
        upper: row?.upper ?? null,
        closed: row !== undefined,
      };
    });
}
