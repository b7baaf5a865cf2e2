import type { Side } from "../facts/line.ts";
import type { Anchor, Direction, Run } from "../facts/run.ts";
import { type Cft, toTenth, toTenthBetween } from "../length/station.ts";
import {
  type FootageWay,
  isSound,
  isStretched,
  type KnownPoint,
  knownPoints,
  statedWay,
  wayOf,
} from "./footage.ts";

/** A place on the line, and how far off it may be either way. */
interface Place {
  readonly station: Cft;
  readonly uncertainty: Cft;
}

export interface Converter {
  /** Counter reading → place; null where the run is relative only. Hundredths of a foot. */
  readonly toStation: (counter: Cft) => Place | null;
  /** The way in which the footage grows. */
  readonly way: FootageWay;
  /** Its known points run against what the run says: until that is settled no side can be told. */
  readonly isAgainst: boolean;
}

export type AnchorProblemReason =
  | "not-a-length"
  | "below-main"
  | "anchors-disagree"
  | "anchors-out-of-order"
  | "anchors-stretched"
  | "anchors-against-way"
  | "off-zero";

/** What is wrong with an anchor, alone or against the known point before or after it along the counter. */
export interface AnchorProblem {
  readonly reason: AnchorProblemReason;
  readonly anchorId: string;
  /** The other anchor; null where it stands alone, or against the run's zero at the main. */
  readonly otherId: string | null;
}

/** Problems that leave the run its stations. */
const BEARABLE: ReadonlySet<AnchorProblemReason> = new Set([
  "anchors-stretched",
  "anchors-against-way",
]);

/** The larger of 1 ft and 0.5 % of a distance: what camera counters are asked to keep. */
export function counterTolerance(distance: Cft): Cft {
  return Math.max(100, toTenth(Math.abs(distance) / 200));
}

/**
 * Turns a run's counter readings into stations. Between two known points the reading is spread evenly,
 * to a tenth of a foot and never past either; beyond the outermost it goes on foot for foot in the way
 * the footage grows; one known point only shifts. A zero at the main is a known point. No known
 * points, or ones that contradict one another: relative only. Anchors that all run against what the
 * run says are followed, and named. The uncertainty is the run's own, or the larger of 1 ft and
 * 0.5 % of the distance from the nearest known point; where two are stretched, at least half of what
 * they differ by.
 */
export function converterFor(run: Run, anchors: readonly Anchor[]): Converter {
  const points = knownPoints(run, anchors);
  const problems = anchorProblems(run, anchors);
  const way = wayOf(run, points);
  const common = { way, isAgainst: way !== statedWay(run) };
  const contradicted = problems.some(({ reason }) => !BEARABLE.has(reason));
  if (points.length === 0 || contradicted) return { toStation: () => null, ...common };
  const isSlipped = problems.some(({ reason }) => reason === "anchors-stretched");
  const stretched = isSlipped ? toTenth(widestStretch(points) / 2) : 0;
  return {
    toStation: (counter) => {
      const near = distanceToNearest(points, counter);
      const uncertainty = run.uncertainty ?? Math.max(counterTolerance(near), stretched);
      return { station: stationAt(points, counter, way), uncertainty };
    },
    ...common,
  };
}

/** Anchors that contradict themselves, one another or what their run says, along the counter. */
export function anchorProblems(run: Run, anchors: readonly Anchor[]): AnchorProblem[] {
  const own = anchors.filter((anchor) => anchor.runId === run.id);
  const alone = own.flatMap((anchor) => aloneProblem(anchor));
  const points = knownPoints(run, anchors);
  const way = wayOf(run, points);
  const pairs = points.slice(1).flatMap((point, index): AnchorProblem[] => {
    const before = points[index];
    const reason = before ? pairProblem(way, before, point) : null;
    if (!before || !reason) return [];
    const anchorId = point.anchorId ?? before.anchorId;
    const otherId = point.anchorId === null ? null : before.anchorId;
    return anchorId === null ? [] : [{ reason, anchorId, otherId }];
  });
  return [...alone, ...pairs, ...againstWay(run, points)];
}

/** Sound anchors that all run against what the run says: the last one, and the first. */
function againstWay(run: Run, points: readonly KnownPoint[]): AnchorProblem[] {
  if (wayOf(run, points) === statedWay(run)) return [];
  const anchorId = points.at(-1)?.anchorId ?? null;
  const otherId = points[0]?.anchorId ?? null;
  return anchorId === null ? [] : [{ reason: "anchors-against-way", anchorId, otherId }];
}

/**
 * A clock position as the lens looks → side as seen looking upstream.
 * Half an hour either way of 12 is the crown; of 6, or not noted, is unknown.
 */
export function sideOf(clock: number | null, looks: Direction): Side {
  if (clock === null || !Number.isFinite(clock)) return "unknown";
  const hour = ((clock % 12) + 12) % 12;
  if (hour <= 0.5 || hour >= 11.5) return "crown";
  if (hour >= 5.5 && hour <= 6.5) return "unknown";
  const right = hour < 6;
  return right === (looks === "upstream") ? "right" : "left";
}

/** The side that counts, and the one that is only kept because it can't be relied on. */
export interface Sides {
  readonly side: Side;
  /** As a head that turns showed it: told, but never used; else unknown. */
  readonly unsureSide: Side;
}

export const UNKNOWN_SIDES: Sides = { side: "unknown", unsureSide: "unknown" };

/**
 * The side of a clock position in a run. A head that turns in the pipe shows no true clock, so that
 * its side is kept apart; where the run's known points run against what it says, there is none.
 */
export function sidesOf(
  clock: number | null,
  { looks, selfLeveling }: Pick<Run, "looks" | "selfLeveling">,
  { isAgainst }: Pick<Converter, "isAgainst">,
): Sides {
  if (isAgainst) return UNKNOWN_SIDES;
  const side = sideOf(clock, looks);
  return selfLeveling === "no"
    ? { side: "unknown", unsureSide: side }
    : { side, unsureSide: "unknown" };
}

function aloneProblem(anchor: Anchor): AnchorProblem[] {
  if (isSound(anchor)) return [];
  const isLength = Number.isSafeInteger(anchor.counter) && Number.isSafeInteger(anchor.station);
  const reason = isLength ? "below-main" : "not-a-length";
  return [{ reason, anchorId: anchor.id, otherId: null }];
}

/** How two neighboring known points contradict each other; a foot of slack for reading them off. */
function pairProblem(
  way: FootageWay,
  before: KnownPoint,
  after: KnownPoint,
): AnchorProblemReason | null {
  const counted = after.counter - before.counter;
  const gone = (after.station - before.station) * way;
  const withZero = before.anchorId === null || after.anchorId === null;
  if (withZero && isOffZero(counted, gone)) return "off-zero";
  if (counted === 0) return Math.abs(gone) > 100 ? "anchors-disagree" : null;
  if (gone < 0) return "anchors-out-of-order";
  return isStretched(counted, gone) ? "anchors-stretched" : null;
}

/** Farther from a zero at the main than any counter slips (5 ft and a quarter): the zero was elsewhere. */
function isOffZero(counted: Cft, gone: Cft): boolean {
  return gone < 0 || Math.abs(gone - counted) > Math.max(500, Math.round(counted / 4));
}

function widestStretch(points: readonly KnownPoint[]): Cft {
  return points.slice(1).reduce((widest, point, index) => {
    const before = points[index] ?? point;
    const gone = Math.abs(point.station - before.station);
    return Math.max(widest, Math.abs(gone - (point.counter - before.counter)));
  }, 0);
}

function distanceToNearest(points: readonly KnownPoint[], counter: Cft): Cft {
  return Math.min(...points.map((point) => Math.abs(point.counter - counter)));
}

function stationAt(points: readonly KnownPoint[], counter: Cft, way: FootageWay): Cft {
  const above = points.find((point) => point.counter >= counter);
  const below = points.findLast((point) => point.counter <= counter);
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
