import { day, decimal, feet, maybe, type RowOf, ref, row, words } from "./field.ts";

/**
 * A branch that a liner closes, or that a burst or a new pipe cuts off: measured from both ends of
 * access before, and seen open again in the video after.
 */
export type Reconnection = RowOf<typeof RECONNECTION>;

export const RECONNECTION = row({
  one: "reconnection",
  most: 80,
  saved: "field",
  fields: {
    tieInId: ref("tieIns"),
    /** Station of the lower way in, and what was measured from there up to the branch. */
    lowerAccess: maybe(feet),
    fromLower: maybe(feet),
    /** Station of the upper way in, and what was measured from there down to the branch. */
    upperAccess: maybe(feet),
    fromUpper: maybe(feet),
    measuredBy: words,
    measuredOn: maybe(day),
    /** The run of the camera after the work, and the second of its video where the branch is seen open. */
    openedRunId: maybe(ref("runs")),
    openedSecond: maybe(decimal(1_000_000)),
    openedBy: words,
    openedOn: maybe(day),
    note: words,
  },
});
