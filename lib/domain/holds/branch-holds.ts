import type { RaisedHold } from "../facts/hold.ts";
import type { LineFile } from "../facts/line-file.ts";
import type { ScopeItem } from "../facts/scope.ts";
import type { Report } from "../findings/report.ts";
import type { Stretch } from "../length/stretch.ts";
import { readingsOf, type TallyRow, tallyOf } from "../reconnection/tally.ts";
import { scopeToCome } from "../sharing/scope-in-force.ts";
import { around } from "../stops/stopped-by.ts";

type BranchFile = Pick<
  LineFile,
  "scope" | "options" | "changeOrders" | "reconnections" | "runs" | "anchors" | "observations"
>;

/**
 * Holds on work that closes or cuts off live branches, one for each piece of work: until each branch is
 * proven and measured from both ends of access, nobody can be sure to find it again.
 */
export function branchCauses(file: BranchFile, { tieIns }: Pick<Report, "tieIns">): RaisedHold[] {
  const readings = readingsOf(file);
  return scopeToCome(file).flatMap((item) => {
    const tally = tallyOf(file, [item], tieIns, readings);
    const open = tally.filter(({ state }) => state !== "ready" && state !== "open-again");
    return open.length === 0 ? [] : [branchHold(item, open)];
  });
}

function branchHold(item: ScopeItem, open: readonly TallyRow[]): RaisedHold {
  return {
    cause: "branch-unmeasured",
    subjectId: item.id,
    subjectLabel: `branches under “${item.title}”`,
    sentence: `“${item.title}” closes or cuts off active branches that may not be found again. ${open.map(({ sentence }) => sentence).join(" ")}`,
    closes: "Each one proven and measured from both ends, on the page “Branches to reconnect”",
    stretch: stretchOf(open),
  };
}

/** From the lowest to the highest of them; null where one has no place. */
function stretchOf(open: readonly TallyRow[]): Stretch | null {
  const places = open.map(({ finding }) => around(finding.station, finding.uncertainty));
  const known = places.filter((place) => place !== null);
  if (known.length < places.length) return null;
  return {
    from: Math.min(...known.map(({ from }) => from)),
    to: Math.max(...known.map(({ to }) => to)),
  };
}
