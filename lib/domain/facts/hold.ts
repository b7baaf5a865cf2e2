import type { Stretch } from "../length/stretch.ts";
import { day, name, type RowOf, row, words } from "./field.ts";

/** What a hold stops. */
export const HOLD_STOPS = [
  /** Whatever cuts inside the pipe: roots, grease, a blockage. */
  "clearing",
  "jetting",
  "capping",
  "lining",
  "bursting",
  "final-split",
  "demand",
  "submission",
  "digging",
  /** Lining, bursting or replacing the pipe where live branches join it. */
  "closing-branches",
  /** A pause of drains: its letter, and its day. */
  "pause",
  "test-visit",
] as const;
export type HoldStop = (typeof HOLD_STOPS)[number];

const HOLD_CAUSES = [
  "tie-in-owner-unknown",
  "tie-in-undecided",
  "ruling-not-done",
  "entry-undecided",
  "entry-not-inspected",
  "entry-place-unclear",
  "station-relative-only",
  "responsibility-unclear",
  "easement-missing",
  "crossing-seen",
  "crossing-not-ruled-out",
  "land-unknown",
  "branch-unmeasured",
  /** A utility has not marked or cleared the dig, or its marks are too old. */
  "utility-open",
  "household-need",
] as const;
export type HoldCause = (typeof HOLD_CAUSES)[number];

/** A hard stop. Computed from the facts; lifted by its cause being settled, or by a waiver. */
export interface Hold {
  /** Stable over recomputation: `cause:subject`. */
  readonly key: string;
  readonly cause: HoldCause;
  readonly subjectId: string;
  readonly subjectLabel: string;
  readonly stops: readonly HoldStop[];
  /** The part of the trunk that it concerns; null: the whole line, or nobody knows which part. */
  readonly stretch: Stretch | null;
  readonly sentence: string;
  /** What would lift it. */
  readonly closes: string;
  readonly waiver: Waiver | null;
}

/** A hold as its cause raises it: what it stops is usually the cause's to say, and a waiver is not looked for yet. */
export interface RaisedHold
  extends Pick<Hold, "cause" | "subjectId" | "subjectLabel" | "stretch" | "sentence" | "closes"> {
  /** Where it stops less than its cause usually does. */
  readonly stops?: readonly HoldStop[];
}

/** A named person's word that work may go on despite a hold. Prints in the packet. */
export type Waiver = RowOf<typeof WAIVER>;

export const WAIVER = row({
  one: "waiver",
  fields: {
    holdKey: name("the hold's key"),
    reason: words,
    by: words,
    on: day,
  },
});
