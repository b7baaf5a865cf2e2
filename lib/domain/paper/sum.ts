import type { Share, SumStep } from "../findings/outcome.ts";
import type { Cents } from "../money/cents.ts";
import { formatCents } from "../money/format-cents.ts";
import { ratio } from "../money/ratio.ts";
import { itemAmount } from "../sharing/item-amount.ts";
import { formatExactCents } from "../split/exact.ts";
import { workTitle } from "./common.ts";
import type { LetterFacts } from "./facts.ts";
import type { LetterBlock } from "./letter.ts";

/**
 * The sum behind the reader's amount, as steps for pencil and paper: each piece of work, what part
 * of it falls to the reader, the exact sum, and the rounding. The reader's own steps only.
 */
export function sumBlocks(facts: LetterFacts): LetterBlock[] {
  const { words, outcome, share, property } = facts;
  if (share === null || property === null) return [];
  const worked = outcome?.shares.find((each) => each.propertyId === property.id) ?? null;
  if (worked === null || worked.amount !== share.amount) {
    return [{ kind: "paragraph", text: words.split.stepsMissing }];
  }
  const rows = worked.steps.map((step) => stepRow(facts, step));
  const sums = sumRows(facts, worked);
  return [
    {
      kind: "table",
      head: words.split.stepsHead,
      rows: [...rows, ...sums],
      numeric: [2],
      totals: sums.length,
    },
    { kind: "paragraph", text: `${words.split.stepsNote} ${words.split.odd}` },
  ];
}

function stepRow(facts: LetterFacts, step: SumStep): string[] {
  const item = facts.file.scope.find((each) => each.id === step.itemId);
  return [item ? workTitle(item, facts) : "", stepWords(facts, step), formatExactCents(step.exact)];
}

/** English readers get the step as it was worked out; others its cost and their part of it. */
function stepWords({ file, notice, words }: LetterFacts, step: SumStep): string {
  const item = file.scope.find((each) => each.id === step.itemId);
  if (notice.language === "en" || !item) return step.words;
  const amount = itemAmount(item);
  if (amount === 0) return formatCents(0);
  const [numerator = "0", denominator = "1"] = step.exact.split("/");
  const part = ratio(BigInt(numerator), BigInt(denominator) * BigInt(amount));
  return words.split.stepSum(formatCents(amount), String(part.n), String(part.d));
}

/** The exact sum, and the rounded one where that is another. */
function sumRows({ words }: LetterFacts, worked: Share): string[][] {
  const exact = formatExactCents(worked.exact);
  const amount = formatCents(worked.amount);
  const sum = [words.split.stepsSum, "", exact];
  return exact === amount ? [sum] : [sum, [words.split.stepsRounded, "", amount]];
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
