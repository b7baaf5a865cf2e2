import type { LineFile } from "../facts/line-file.ts";
import type { SplitVersion } from "../facts/split.ts";

/** The split version that holds: the one with the highest number. Null before the first. */
export function latestSplit(file: Pick<LineFile, "splits">): SplitVersion | null {
  return file.splits.toSorted((one, other) => one.number - other.number).at(-1) ?? null;
}
