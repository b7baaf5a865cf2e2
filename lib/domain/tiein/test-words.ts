import type { TestResult } from "../facts/test.ts";

/** What came of a test, in the same words on every page, in the grid and on paper. */
export const TEST_RESULT_WORDS: Readonly<Record<TestResult, string>> = {
  positive: "seen",
  "not-seen": "not seen",
  inconclusive: "can’t tell",
};
