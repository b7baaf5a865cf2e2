import type { LetterFacts } from "./facts.ts";
import { LETTER_PLANS } from "./kinds/index.ts";
import type { LetterBlock } from "./letter.ts";
import type { CautionKey } from "./letter-plan.ts";

/**
 * The cautions of one letter, as its plan has them: part of composing a letter and no part of what an
 * office can edit, so that none can be left out. With the one on a crossing where the camera could not
 * rule it out.
 */
export function cautionBlocks(facts: LetterFacts): LetterBlock[] {
  const { file, report, notice, words } = facts;
  const day = words.day(report.today);
  const { cautions, spared } = LETTER_PLANS[notice.kind];
  const without = spared?.(facts) ?? [];
  const crossed = file.runs.some((run) => run.crossingSeen !== "no");
  const keys = cautions
    .filter((key) => !without.includes(key))
    .flatMap((key): CautionKey[] => (key === "gas" && crossed ? ["gas", "gasSeen"] : [key]));
  return keys.map((key) => {
    if (key === "records") {
      const { title, text } = words.caution.records;
      return { kind: "caution", title, text: text(day) };
    }
    const { title, text } = words.caution[key];
    return { kind: "caution", title, text };
  });
}
