import type { HoldCause } from "../facts/hold.ts";

/** Why something is held, in a few words behind its name: `T3 and T6 (owner not proven)`. */
export const CAUSE_WORDS: Record<HoldCause, string> = {
  "household-need": "call first",
  "tie-in-owner-unknown": "owner not proven",
  "tie-in-undecided": "not decided",
  "ruling-not-done": "ruling not carried out",
  "entry-undecided": "neither found nor explained",
  "entry-not-inspected": "not inspected",
  "entry-place-unclear": "location unclear",
  "station-relative-only": "not tied to the main",
  "responsibility-unclear": "responsibility unclear",
  "easement-missing": "easement not on file",
  "crossing-seen": "something crosses the pipe",
  "crossing-not-ruled-out": "a gas line through the pipe is not ruled out",
  "land-unknown": "land owner not on file",
  "utility-open": "not marked or cleared",
  "branch-unmeasured": "not measured from both ends",
};
