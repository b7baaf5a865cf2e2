import type { Share, SplitOutcome } from "#lib/domain/findings/outcome.ts";
import { payerKey } from "#lib/domain/split/compare.ts";

/** How one payer’s amount comes about, as it is sent to a page that opens it. */
export interface Calculation extends Pick<Share, "label" | "amount" | "recoverable" | "exact"> {
  readonly steps: readonly { readonly words: string; readonly exact: string }[];
}

/** What the route of one calculation answers. */
export interface CalculationAnswer {
  /** Null: the payer pays nothing under the rule. */
  readonly calculation: Calculation | null;
  readonly oddCents: string;
}

/** One payer’s calculation under a rule, without what only the program works with. */
export function calculationOf(outcome: SplitOutcome, key: string): CalculationAnswer {
  const share = outcome.shares.find((each) => payerKey(each) === key);
  if (share === undefined) return { calculation: null, oddCents: "" };
  const { label, amount, recoverable, exact } = share;
  const steps = share.steps.map((step) => ({ words: step.words, exact: step.exact }));
  return { calculation: { label, amount, recoverable, exact, steps }, oddCents: outcome.oddCents };
}
