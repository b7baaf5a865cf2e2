import type { Observation } from "../facts/run.ts";
import type { Cft } from "../length/station.ts";

type Read = Pick<Observation, "runId" | "counter" | "reading" | "uncertainty">;

/** A reading worked out by time is never surer than this. */
const LEAST_BY_TIME: Cft = 50;

/**
 * How far off a reading itself may be, besides what its run's counter may be: as somebody said (a
 * reading given as about, or as a range); where it was worked out by time, and nobody said, half of
 * the way between the readings around it; else nothing. Hundredths of a foot.
 */
export function readingOff(seen: Read, log: readonly Read[]): Cft {
  if (seen.uncertainty !== null) return seen.uncertainty;
  return seen.reading === "between" ? offByTime(seen, log) : 0;
}

function offByTime({ runId, counter }: Read, log: readonly Read[]): Cft {
  const read = log.filter((each) => each.runId === runId && each.reading === "read");
  const below = read.map((each) => each.counter).filter((each) => each <= counter);
  const above = read.map((each) => each.counter).filter((each) => each >= counter);
  if (below.length === 0 || above.length === 0) return LEAST_BY_TIME;
  return offBetween(Math.max(...below), Math.min(...above));
}

/** How far off a counter worked out evenly by time between two readings is taken to be. */
export function offBetween(a: Cft, b: Cft): Cft {
  return Math.max(LEAST_BY_TIME, Math.ceil(Math.abs(b - a) / 2));
}
