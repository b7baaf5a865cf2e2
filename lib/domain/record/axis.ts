import type { PermitRecord, RecordEntry } from "../facts/record.ts";
import type { Cft } from "../length/station.ts";

/** Why a distance on a record says no station. */
export type AxisGap =
  | "no-record"
  | "no-distance"
  | "measured-from-unknown"
  | "no-length"
  | "beyond-length"
  | "below-main"
  | "not-a-length";

export interface OnAxis {
  /** Feet from the main connection as the record has it, before shift and scale. */
  readonly station: Cft | null;
  /** Null where there is a station. */
  readonly gap: AxisGap | null;
}

/**
 * Puts a distance of a record on the line's axis: measured from the main as it stands, measured
 * from the upper end as length less distance. The record's own length outranks the line's.
 * Hundredths of a foot. Without a known starting point or length there is no station.
 */
export function recordStation(
  entry: Pick<RecordEntry, "distance">,
  record: Pick<PermitRecord, "measuredFrom" | "length"> | null,
  upperEnd: Cft | null,
): OnAxis {
  if (entry.distance === null) return nowhere("no-distance");
  if (!record) return nowhere("no-record");
  if (!Number.isSafeInteger(entry.distance)) return nowhere("not-a-length");
  if (entry.distance < 0) return nowhere("below-main");
  if (record.measuredFrom === "unknown") return nowhere("measured-from-unknown");
  const length = record.length ?? upperEnd;
  if (record.measuredFrom === "main") return { station: entry.distance, gap: null };
  if (length === null) return nowhere("no-length");
  if (entry.distance > length) return nowhere("beyond-length");
  return { station: length - entry.distance, gap: null };
}

function nowhere(gap: AxisGap): OnAxis {
  return { station: null, gap };
}
