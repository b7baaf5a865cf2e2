import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { Alternative, Report } from "#lib/domain/findings/report.ts";
import type { Cft } from "#lib/domain/length/station.ts";
import { pairsNow } from "#lib/domain/report/pairs-now.ts";

interface ComparedCell {
  readonly key: string;
  /** Labels of the entries; empty for none. */
  readonly entry: string;
  readonly distance: Cft | null;
  /** Other than as it stands. */
  readonly differs: boolean;
}

export interface ComparedRow {
  readonly tieInId: string;
  readonly label: string;
  /** As it stands first, then each alternative. */
  readonly cells: readonly ComparedCell[];
}

type Pairs = Alternative["pairs"];

/** `A`, `B`, … */
export function wayLetter(at: number): string {
  return String.fromCharCode(65 + at);
}

/** Tie-ins that an alternative would pair otherwise, from the main upwards, way by way. */
export function comparedRows(
  file: Pick<LineFile, "entries" | "pairings">,
  report: Report,
): ComparedRow[] {
  const now = pairsNow(file, report);
  const ways = [{ key: "now", pairs: now }, ...report.alternatives];
  const last = Number.MAX_SAFE_INTEGER;
  return report.tieIns
    .toSorted((a, b) => (a.station ?? last) - (b.station ?? last))
    .map(({ tieIn }) => {
      const stands = entriesAt(file, now, tieIn.id).entry;
      const cells = ways.map(({ key, pairs }) => {
        const found = entriesAt(file, pairs, tieIn.id);
        return { key, ...found, differs: found.entry !== stands };
      });
      return { tieInId: tieIn.id, label: tieIn.label, cells };
    })
    .filter(({ cells }) => cells.some(({ differs }) => differs));
}

function entriesAt(
  file: Pick<LineFile, "entries">,
  pairs: Pairs,
  tieInId: string,
): { entry: string; distance: Cft | null } {
  const here = pairs.filter((pair) => pair.tieInId === tieInId);
  const labels = here.map(
    ({ entryId }) => file.entries.find((entry) => entry.id === entryId)?.label || "an entry",
  );
  return { entry: labels.toSorted().join(" and "), distance: here[0]?.distance ?? null };
}
