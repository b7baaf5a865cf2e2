import type { TestResult } from "#lib/domain/tiein/test.ts";

/** What can be pressed, as it reads on the plan. */
export const RESULT_WORDS: Record<TestResult, string> = {
  positive: "seen",
  "not-seen": "not seen",
  inconclusive: "can’t tell",
};
