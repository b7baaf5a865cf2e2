import { day, maybe, oneOf, type RowOf, row, timeOfDay, whole, words } from "./field.ts";

const SPILL_STEP_KINDS = [
  "known",
  "office-called",
  "crew-on-site",
  "flow-stopped",
  "reported",
  "cleaned-up",
] as const;
export type SpillStepKind = (typeof SPILL_STEP_KINDS)[number];

/** One thing that happened about a spill, when it happened: all that a letter may say of it. */
export type SpillStep = RowOf<typeof SPILL_STEP>;

export const SPILL_STEP = row({
  one: "step of the spill",
  saved: "office",
  fields: {
    kind: oneOf(SPILL_STEP_KINDS),
    on: day,
    /** Local time as `16:05`; empty where none is noted. */
    at: timeOfDay,
    /** `known`: where sewage came out. `reported`: to whom. */
    place: words,
    /** `reported`: the number that was given. */
    number: words,
    /** `known`: about how much, in gallons; null where nobody can say. */
    gallons: maybe(whole(100_000_000)),
    /** `known`: what it reached, such as a street drain or a creek; empty where nothing is known. */
    reached: words,
    /** The office's own; prints nowhere. */
    note: words,
  },
});
