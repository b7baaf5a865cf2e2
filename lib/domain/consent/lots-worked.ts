import type { LineFile } from "../facts/line-file.ts";
import type { ScopeItem } from "../facts/scope.ts";
import type { Report } from "../findings/report.ts";
import { touches } from "../length/stretch.ts";
import { landOf } from "../line/whose-land.ts";
import { workInForce } from "../sharing/scope-in-force.ts";
import { isDug, isOnPipe } from "../split/work-deeds.ts";

type LotFile = Pick<LineFile, "land" | "crossings" | "scope" | "options" | "changeOrders"> & {
  readonly line: Pick<LineFile["line"], "optionId">;
} & Pick<LineFile, "tieIns">;

/** What of the work lies on one property: what is done there at all, and what of it is dug. */
export interface LotWork {
  readonly entered: readonly ScopeItem[];
  readonly dug: readonly ScopeItem[];
}

/**
 * The work in force on one property: over the stretches where its land lies or the line crosses it,
 * and on its own branches. Work without a place lies on every lot that the line passes.
 */
export function workOnLot(
  file: LotFile,
  tieIns: Report["tieIns"] | null,
  propertyId: string,
): LotWork {
  const own = ownBranches(file, tieIns, propertyId);
  const lot = landOf(file, propertyId);
  const here = workInForce(file).filter((item) => {
    if (item.place === "branch") return item.tieInId !== null && own.has(item.tieInId);
    if (item.from === null) return lot.length > 0;
    const to = item.place === "point" ? item.from : (item.to ?? item.from);
    const stretch = { from: Math.min(item.from, to), to: Math.max(item.from, to) };
    return lot.some((each) => touches(each, stretch));
  });
  return {
    entered: here.filter((item) => isOnPipe(item, file)),
    dug: here.filter((item) => isDug(item, file)),
  };
}

/** Tie-ins that were settled as the property's, or that the record shows to be. */
function ownBranches(
  file: LotFile,
  tieIns: Report["tieIns"] | null,
  propertyId: string,
): Set<string> {
  const found = (tieIns ?? []).map(({ tieIn, propertyId: of }) => ({ id: tieIn.id, of }));
  const settled = file.tieIns.map(({ id, propertyId: of }) => ({ id, of }));
  return new Set([...found, ...settled].filter(({ of }) => of === propertyId).map(({ id }) => id));
}
