import type { HoldStop } from "../facts/hold.ts";

/** What a hold stops, in the middle of a sentence. */
export const STOP_WORDS: Record<HoldStop, string> = {
  clearing: "cutting inside the pipe",
  jetting: "jetting",
  capping: "capping",
  lining: "lining",
  bursting: "bursting",
  "final-split": "the final split",
  demand: "a demand for money",
  submission: "submission",
  digging: "digging",
  "closing-branches": "lining, bursting or replacing the pipe over active branches",
  pause: "a drain shutdown",
  "test-visit": "a test visit",
};
