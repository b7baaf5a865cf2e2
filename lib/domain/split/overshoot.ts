import type { LineFile } from "../facts/line-file.ts";
import type { ScopeItem } from "../facts/scope.ts";
import type { TieInFinding } from "../findings/report.ts";
import { type Cft, formatFeet, plainFeet } from "../length/station.ts";
import { type ScopeFile, workInForce } from "../sharing/scope-in-force.ts";
import { sharersOf } from "../sharing/sharers.ts";

/** Work that reaches past the last tie-in by no more than that tie-in's station may be off. */
export interface Overshoot {
  readonly itemId: string;
  /** The station of the last tie-in, where the work would end instead. */
  readonly end: Cft;
  /** The last tie-in's name and station: `T5 at 140.9 ft`. */
  readonly tieIn: string;
  /** By how much, and why no rule by place can share it out. */
  readonly sentence: string;
}

/** A station that a person measured may be off by as much as the end of a stretch that is priced. */
const LEAST_SLACK: Cft = 100;

/**
 * Priced work in force that ends above the last live tie-in by no more than that tie-in is uncertain
 * by, and at least by 1 ft: most likely it was meant to end there. Past it nobody's flow runs, so that
 * no rule by place has anybody to pay for it. Work with a payer of its own needs none.
 */
export function overshoots(
  file: ScopeFile & Pick<LineFile, "properties" | "units">,
  tieIns: readonly TieInFinding[],
): Overshoot[] {
  const stations = sharersOf(file, tieIns).flatMap((sharer) => sharer.stations);
  if (stations.length === 0) return [];
  const end = Math.max(...stations);
  const last = tieIns.find(({ tieIn, station }) => tieIn.parentId === null && station === end);
  if (last === undefined) return [];
  const slack = Math.max(last.uncertainty ?? 0, LEAST_SLACK);
  const tieIn = `${last.tieIn.label || "the last tie-in"} at ${formatFeet(end)}`;
  return workInForce(file).flatMap((item): Overshoot[] => {
    const reach = reachOf(item);
    if (reach === null || item.payerId !== null) return [];
    const isPast = reach.to > end && reach.to <= end + slack;
    if (!isPast || (item.place === "stretch" && reach.from >= end)) return [];
    const where = item.place === "stretch" ? "reaches" : "lies at";
    const give = `${plainFeet(end)} ± ${formatFeet(slack)}`;
    const sentence = `“${item.title}” ${where} ${formatFeet(reach.to)}, ${formatFeet(reach.to - end)} past ${last.tieIn.label || "the last tie-in"} at ${give}, the last tie-in. No one’s flow passes beyond it.`;
    return [{ itemId: item.id, end, tieIn, sentence }];
  });
}

/** The item ending at a station instead; which end of it was typed as the upper one stays so. */
export function cutAt(item: ScopeItem, end: Cft): ScopeItem {
  if (item.place === "point") return { ...item, from: end };
  const isTurned = (item.from ?? 0) > (item.to ?? 0);
  return isTurned ? { ...item, from: end } : { ...item, to: end };
}

function reachOf({ place, from, to }: ScopeItem): { from: Cft; to: Cft } | null {
  if (from === null || (place !== "point" && place !== "stretch")) return null;
  if (place === "point") return { from, to: from };
  return to === null ? null : { from: Math.min(from, to), to: Math.max(from, to) };
}
