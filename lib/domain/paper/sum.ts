import type { Cents } from "../money/cents.ts";
import { formatCents } from "../money/format-cents.ts";
import type { LetterFacts } from "./facts.ts";
import type { LetterBlock } from "./letter.ts";
import { pencilSum, sharedFraction } from "./statement-sum.ts";
import { STATEMENT_WORDS } from "./statement-words.ts";

/**
 * The calculation of the reader's amount, the same steps in every language: what each work item costs,
 * how it is shared and the reader's part, to the cent. The reader's own steps only; the exact
 * fractions stand in the statement. `after` is a sentence that follows the table.
 */
export function sumBlocks(facts: LetterFacts, after = ""): LetterBlock[] {
  const { words, notice, outcome, share, property } = facts;
  if (share === null || property === null) return [];
  const worked = outcome?.shares.find((each) => each.propertyId === property.id) ?? null;
  if (worked === null || worked.amount !== share.amount) {
    return [{ kind: "paragraph", text: `${words.split.stepsMissing} ${after}`.trim() }];
  }
  const own = STATEMENT_WORDS[notice.language];
  const notes = [...sharedFraction(facts, own, worked), words.split.odd, after];
  return [
    ...pencilSum(facts, own, worked),
    { kind: "paragraph", text: notes.join(" ").trim(), note: true },
  ];
}

/** What the reader would pay under each other rule that can be worked out. */
export function alternativeRows({ report, split, property, words }: LetterFacts): string[][] {
  return report.splits
    .filter((outcome) => outcome.refusal === null && outcome.choice.rule !== split?.rule)
    .map((outcome) => {
      const own = outcome.shares.filter((share) => share.propertyId === property?.id);
      const amount = own.reduce<Cents>((sum, share) => sum + share.amount, 0);
      return [words.rule[outcome.choice.rule].title, formatCents(amount)];
    });
}
