import type { Observation, Reading } from "../facts/run.ts";
import { type Cft, toTenth } from "../length/station.ts";
import { offBetween } from "./reading-off.ts";

type Timed = Pick<Observation, "counter" | "videoSecond" | "reading">;

/**
 * The counter at a second of a run's video: what was read there, or worked out evenly by time between
 * the readings before and after it, to a tenth of a foot. Null where no reading lies on one of the
 * sides: the camera may have stood still or turned back there. What was itself worked out counts for
 * nothing.
 */
export function counterAt(
  seen: readonly Timed[],
  second: number,
): {
  readonly counter: Cft;
  readonly reading: Reading;
  /** How far off it may be; null where it was read. */
  readonly uncertainty: Cft | null;
} | null {
  const read = seen.flatMap(({ counter, videoSecond, reading }) =>
    reading === "read" && videoSecond !== null && Number.isSafeInteger(counter)
      ? [{ counter, at: videoSecond }]
      : [],
  );
  const sorted = read.sort((a, b) => a.at - b.at || a.counter - b.counter);
  const before = sorted.findLast(({ at }) => at <= second);
  const after = sorted.find(({ at }) => at >= second);
  if (before === undefined || after === undefined) return null;
  if (before.at === after.at)
    return { counter: before.counter, reading: "read", uncertainty: null };
  const part = (second - before.at) / (after.at - before.at);
  const counter = before.counter + part * (after.counter - before.counter);
  const uncertainty = offBetween(before.counter, after.counter);
  return { counter: toTenth(counter), reading: "between", uncertainty };
}
