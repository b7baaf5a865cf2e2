import type { HoldStop } from "../tiein/hold.ts";

/** What a hold stops, in the middle of a sentence. */
export const STOP_WORDS: Record<HoldStop, string> = {
  capping: "capping",
  lining: "lining",
  "final-split": "the final split",
  demand: "a demand for money",
  submission: "submission",
  digging: "digging",
};
