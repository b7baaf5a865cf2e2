import type { LevelMethod } from "../facts/capacity.ts";
import type { Fixture } from "../facts/fixtures.ts";
import type { PlumbingCode } from "../facts/plumbing-code.ts";
import type { LoadVerdict, SlopeVerdict } from "../findings/capacity.ts";

export const CODE_WORDS: Record<PlumbingCode, string> = {
  ipc: "International Plumbing Code",
  upc: "Uniform Plumbing Code",
};

export const METHOD_WORDS: Record<LevelMethod, string> = {
  locator: "locator",
  level: "level and rod",
  "cleanout-drop": "tape down a cleanout",
  pothole: "pothole",
  "as-built": "as-built drawing",
  other: "other",
};

export const FIXTURE_WORDS: Record<Fixture, string> = {
  "bathroom-group": "bathroom group",
  "water-closet": "toilet",
  bathtub: "bathtub",
  shower: "shower",
  lavatory: "bathroom sink",
  "kitchen-sink": "kitchen sink",
  dishwasher: "dishwasher",
  "clothes-washer": "clothes washer",
  "laundry-sink": "laundry sink",
  "floor-drain": "floor drain",
};

export const SLOPE_VERDICT_WORDS: Record<SlopeVerdict, string> = {
  meets: "steep enough",
  "too-flat": "too flat",
  "falls-back": "slopes the wrong way",
  "cannot-be-told": "can’t be determined",
  "average-only": "average only: standing water",
  "nothing-to-test": "no minimum chosen",
};

export const LOAD_VERDICT_WORDS: Record<LoadVerdict, string> = {
  within: "within the code limit",
  "too-much": "over the code limit",
  "cannot-be-told": "can’t be determined",
  "no-row": "not in the code table",
  "nothing-counted": "nothing counted",
};

/** `0.0104167` → `1.04%`. What comes of measured levels is never finer than that. */
export function percentOf(slope: number): string {
  const percent = (slope * 100).toFixed(2);
  return `${percent === "-0.00" ? "0.00" : percent}%`;
}
