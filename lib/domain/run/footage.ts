import type { Anchor, FootageFrom, Run } from "../facts/run.ts";
import { type Cft, formatFeet } from "../length/station.ts";

/** 1: the footage grows the way upstream; −1: it grows toward the main. */
export type FootageWay = 1 | -1;

/** What a run says of itself: which way its lens looks, and what its footage is measured from. */
export type RunWay = Pick<Run, "looks" | "measuredFrom">;

/** A counter reading whose station is known. */
export interface KnownPoint {
  readonly counter: Cft;
  readonly station: Cft;
  /** Null: the counter's own zero, of a run that is measured from the main. */
  readonly anchorId: string | null;
}

/**
 * The way in which a run's footage grows, as it says itself. Footage from the main grows upstream,
 * whichever way the lens looks; footage from the access grows the way the lens looks, because a
 * camera is pushed in looking ahead and looks the same way while it is pulled back.
 */
export function statedWay({ looks, measuredFrom }: RunWay): FootageWay {
  return measuredFrom === "main" || looks === "upstream" ? 1 : -1;
}

/**
 * A run's sound anchors along its counter, and its zero where its footage is measured from the main:
 * that is a known point too, unless an anchor says the same.
 */
export function knownPoints(run: Run, anchors: readonly Anchor[]): KnownPoint[] {
  const own = anchors
    .filter((anchor) => anchor.runId === run.id && isSound(anchor))
    .map(({ id, counter, station }): KnownPoint => ({ counter, station, anchorId: id }));
  const isSaid = own.some(({ counter, station }) => counter === 0 && station === 0);
  const zero = run.measuredFrom === "main" && !isSaid ? [ZERO] : [];
  return [...zero, ...own].sort((a, b) => a.counter - b.counter || a.station - b.station);
}

const ZERO: KnownPoint = { counter: 0, station: 0, anchorId: null };

/** Whether an anchor can be used at all: two lengths, and no place below the main. */
export function isSound({ counter, station }: Anchor): boolean {
  return Number.isSafeInteger(counter) && Number.isSafeInteger(station) && station >= 0;
}

/** Known points closer together than this tell no way: two readings may be a foot off each. */
const CLEAR = 500;

/**
 * The way in which the footage grows: as the run says, unless its known points all run the other way,
 * foot for foot as far as a counter slips. Points that contradict one another tell nothing.
 */
export function wayOf(run: RunWay, points: readonly KnownPoint[]): FootageWay {
  const stated = statedWay(run);
  const [first] = points;
  const last = points.at(-1);
  if (!first || !last || last.counter - first.counter < CLEAR) return stated;
  const against = points.slice(1).every((point, index) => {
    const before = points[index] ?? point;
    const counted = point.counter - before.counter;
    const gone = (point.station - before.station) * -stated;
    return counted === 0 ? Math.abs(gone) <= 100 : gone > 0 && !isStretched(counted, gone);
  });
  return against ? (-stated as FootageWay) : stated;
}

/** Whether counter and line are more apart than the 2 ft or a tenth that a counter may slip. */
export function isStretched(counted: Cft, gone: Cft): boolean {
  return Math.abs(gone - counted) > Math.max(200, Math.round(counted / 10));
}

/** Completes `footage measured from …`. */
export const FOOTAGE_WORDS: Record<FootageFrom, string> = {
  access: "where the camera went in",
  main: "the main",
};

/** The question that a run's known points ask where they run against what it says: the other way to say it. */
export function otherWayWords(run: RunWay): string {
  if (statedWay(run) === -1)
    return "The footage increases away from the main: measured from the main? Set that on the run, or that it looks upstream.";
  const ask = "The footage increases toward the main:";
  if (run.looks === "downstream")
    return `${ask} measured from where the camera went in? Set that on the run.`;
  return run.measuredFrom === "access"
    ? `${ask} did the camera look downstream? Set that on the run.`
    : `${ask} did the camera look downstream, its footage measured from where it went in? Set that on the run.`;
}

/** What a reading is by what the run says, for its form: `31.5 ft on the counter is 31.5 ft from the main.` */
export function readingWords(run: RunWay, counter: Cft): string {
  const read = `${formatFeet(counter)} on the counter is ${formatFeet(counter)}`;
  if (run.measuredFrom === "main") return `${read} from the main.`;
  const way = run.looks === "upstream" ? "up the line" : "toward the main";
  return `${read} from where the camera went in, ${way}.`;
}
