import type { AlignmentDecision } from "../facts/alignment-decision.ts";
import type { Pairing } from "../facts/pairing.ts";
import type { Cft } from "../length/station.ts";
import type { RecordMark, SeenMark } from "./likeness.ts";

/** Everything to be compared: only what has a station, and only what may be a sanitary branch. */
export interface ReconcileInput {
  readonly entries: readonly RecordMark[];
  readonly tieIns: readonly SeenMark[];
  readonly pairings: readonly Pairing[];
  readonly alignments: readonly AlignmentDecision[];
  /** What to call each record in a sentence, by its id. */
  readonly recordNames: ReadonlyMap<string, string>;
  /** What to call each entry in a sentence, by its id. */
  readonly entryNames: ReadonlyMap<string, string>;
  /** Records that measure from the upper end, as they say. */
  readonly fromUpperEnd: ReadonlySet<string>;
  /** True where a run looked at that station, so that what is there would have been seen. */
  readonly looked: (station: Cft) => boolean;
}
