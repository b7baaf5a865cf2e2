import type { Side } from "../line/line.ts";
import { type Cft, toTenth, toTenthBetween } from "../line/station.ts";
import type { Anchor, Direction, Run } from "./run.ts";

/** A place on the line, and how far off it may be either way. */
interface Place {
  readonly station: Cft;
  readonly uncertainty: Cft;
}

export interface Converter {
  /** Counter reading → place; null where the run is relative only. Hundredths of a foot. */
  readonly toStation: (counter: Cft) => Place | null;
}

export type AnchorProblemReason =
  | "not-a-length"
  | "below-main"
  | "anchors-disagree"
  | "anchors-out-of-order"
  | "anchors-stretched";

/** What is wrong with an anchor, alone or against the one before it along the counter. */
export interface AnchorProblem {
  readonly reason: AnchorProblemReason;
  readonly anchorId: string;
  readonly otherId: string | null;
}

/** The larger of 1 ft and 0.5 % of a distance: what camera counters are asked to keep. */
export function counterTolerance(distance: Cft): Cft {
  return Math.max(100, toTenth(Math.abs(distance) / 200));
}

/**
 * Turns a run's counter readings into stations. Between two anchors the reading is spread evenly,
 * to a tenth of a foot and never past either;
 * beyond the outermost it goes on foot for foot in the run's direction; one anchor only shifts.
 * No anchors, or anchors that contradict one another: relative only. The uncertainty is the
 * run's own, or the larger of 1 ft and 0.5 % of the distance from the nearest anchor; where two
 * anchors are stretched, at least half of what they differ by.
 */
export function converterFor(run: Run, anchors: readonly Anchor[]): Converter {
  const sorted = sortedAnchors(run, anchors);
  const problems = anchorProblems(run, anchors);
  const contradicted = problems.some((problem) => problem.reason !== "anchors-stretched");
  if (sorted.length === 0 || contradicted) return { toStation: () => null };
  const stretched = problems.length > 0 ? toTenth(widestStretch(sorted) / 2) : 0;
  return {
    toStation: (counter) => {
      const near = distanceToNearest(sorted, counter);
      const uncertainty = run.uncertainty ?? Math.max(counterTolerance(near), stretched);
      return { station: stationAt(sorted, counter, run.direction), uncertainty };
    },
  };
}

/** Anchors that contradict themselves or one another, along the counter. */
export function anchorProblems(run: Run, anchors: readonly Anchor[]): AnchorProblem[] {
  const own = anchors.filter((anchor) => anchor.runId === run.id);
  const alone = own.flatMap((anchor) => aloneProblem(anchor));
  const sorted = sortedAnchors(run, anchors);
  const pairs = sorted.slice(1).flatMap((anchor, index) => {
    const before = sorted[index];
    const reason = before ? pairProblem(run.direction, before, anchor) : null;
    return before && reason ? [{ reason, anchorId: anchor.id, otherId: before.id }] : [];
  });
  return [...alone, ...pairs];
}

/**
 * A clock position as seen in the travel direction → side as seen looking upstream.
 * Half an hour either way of 12 is the crown; of 6, or not noted, is unknown.
 */
export function sideOf(clock: number | null, direction: Direction): Side {
  if (clock === null || !Number.isFinite(clock)) return "unknown";
  const hour = ((clock % 12) + 12) % 12;
  if (hour <= 0.5 || hour >= 11.5) return "crown";
  if (hour >= 5.5 && hour <= 6.5) return "unknown";
  const right = hour < 6;
  return right === (direction === "upstream") ? "right" : "left";
}

function sortedAnchors(run: Run, anchors: readonly Anchor[]): Anchor[] {
  return anchors
    .filter((anchor) => anchor.runId === run.id && aloneProblem(anchor).length === 0)
    .sort((a, b) => a.counter - b.counter || a.station - b.station);
}

function aloneProblem(anchor: Anchor): AnchorProblem[] {
  const problem = { anchorId: anchor.id, otherId: null };
  if (!Number.isSafeInteger(anchor.counter) || !Number.isSafeInteger(anchor.station))
    return [{ reason: "not-a-length", ...problem }];
  return anchor.station < 0 ? [{ reason: "below-main", ...problem }] : [];
}

/** How two neighbouring anchors contradict each other; a foot of slack for reading them off. */
function pairProblem(
  direction: Direction,
  before: Anchor,
  after: Anchor,
): AnchorProblemReason | null {
  const counted = after.counter - before.counter;
  const gone = (after.station - before.station) * (direction === "upstream" ? 1 : -1);
  if (counted === 0) return Math.abs(gone) > 100 ? "anchors-disagree" : null;
  if (gone < 0) return "anchors-out-of-order";
  const apart = Math.abs(gone - counted);
  return apart > Math.max(200, Math.round(counted / 10)) ? "anchors-stretched" : null;
}

function widestStretch(sorted: readonly Anchor[]): Cft {
  return sorted.slice(1).reduce((widest, anchor, index) => {
    const before = sorted[index] ?? anchor;
    const gone = Math.abs(anchor.station - before.station);
    return Math.max(widest, Math.abs(gone - (anchor.counter - before.counter)));
  }, 0);
}

function distanceToNearest(sorted: readonly Anchor[], counter: Cft): Cft {
  return Math.min(...sorted.map((anchor) => Math.abs(anchor.counter - counter)));
}

function stationAt(sorted: readonly Anchor[], counter: Cft, direction: Direction): Cft {
  const way = direction === "upstream" ? 1 : -1;
  const above = sorted.find((anchor) => anchor.counter >= counter);
  const below = sorted.findLast((anchor) => anchor.counter <= counter);
  if (!above || !below) {
    const end = above ?? below;
    return end ? end.station + way * (counter - end.counter) : counter;
  }
  const counted = above.counter - below.counter;
  const ends = [below.station, above.station];
  if (counted === 0) return toTenthBetween((above.station + below.station) / 2, ends);
  const part = (counter - below.counter) / counted;
  return toTenthBetween(below.station + part * (above.station - below.station), ends);
}
