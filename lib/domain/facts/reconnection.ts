import type { Cft } from "../length/station.ts";
import type { Day } from "../time/day.ts";

/**
 * A branch that a liner closes, or that a burst or a new pipe cuts off: measured from both ends of
 * access before, and seen open again in the video after.
 */
export interface Reconnection {
  readonly id: string;
  readonly tieInId: string;
  /** Station of the lower way in, and what was measured from there up to the branch. */
  readonly lowerAccess: Cft | null;
  readonly fromLower: Cft | null;
  /** Station of the upper way in, and what was measured from there down to the branch. */
  readonly upperAccess: Cft | null;
  readonly fromUpper: Cft | null;
  readonly measuredBy: string;
  readonly measuredOn: Day | null;
  /** The run of the camera after the work, and the second of its video where the branch is seen open. */
  readonly openedRunId: string | null;
  readonly openedSecond: number | null;
  readonly openedBy: string;
  readonly openedOn: Day | null;
  readonly note: string;
}
