import type { EvidenceLevel } from "../facts/test.ts";

/** What each level of evidence on a tie-in's owner rests on, and what it is enough for. */
export const LEVEL_WORDS: Record<EvidenceLevel, string> = {
  0: "unknown",
  1: "plausible location: enough to ask",
  2: "a record or a statement names a property",
  3: "a trace or smoke points to a property",
  4: "dye or flow seen once, one witness",
  5: "dye seen twice on video, other water off, two witnesses, negative control: enough to bill",
  6: "exposed and seen, or accepted in writing by its owner or the authority",
};
