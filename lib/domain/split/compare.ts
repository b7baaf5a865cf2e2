import type { SplitRule } from "../facts/split.ts";
import type { Share, SplitOutcome } from "../findings/outcome.ts";
import type { Cents } from "../money/cents.ts";

/** One payer's amount under one rule; without the calculation, which is written out when it is asked for. */
export interface ComparedCell {
  readonly rule: SplitRule;
  /** Zero where the payer has no share under this rule. */
  readonly amount: Cents;
  /** Of the amount: covered for owners who are not known. */
  readonly recoverable: Cents;
  /** Against the rule that the others are held against; null for that rule itself, or without one. */
  readonly difference: Cents | null;
}

export interface ComparedPayer {
  /** A property, or the tie-in of an owner who is not known. */
  readonly key: string;
  readonly label: string;
  readonly unknown: boolean;
  /** One per outcome, in their order; null where the rule could not be worked out. */
  readonly cells: readonly (ComparedCell | null)[];
}

/**
 * Every payer against every rule. Payers come in the order in which the outcomes name them, each
 * once; `against` is the rule whose amounts the differences are measured from.
 */
export function compareSplits(
  outcomes: readonly SplitOutcome[],
  against: SplitRule | null,
): ComparedPayer[] {
  const workable = outcomes.filter((outcome) => outcome.refusal === null);
  const base = workable.find((outcome) => outcome.choice.rule === against) ?? null;
  const payers = new Map<string, Share>();
  for (const share of workable.flatMap((outcome) => outcome.shares)) {
    if (!payers.has(payerKey(share))) payers.set(payerKey(share), share);
  }
  return [...payers].map(([key, first]) => {
    const cells = outcomes.map((outcome) => cellOf(outcome, key, base));
    return {
      key,
      label: first.label,
      unknown: first.propertyId === null,
      cells,
    };
  });
}

/** What names a payer: the property, else the tie-in whose owner is not known. */
export function payerKey(share: Pick<Share, "propertyId" | "tieInId">): string {
  return share.propertyId ?? share.tieInId ?? "unknown";
}

function cellOf(
  outcome: SplitOutcome,
  key: string,
  base: SplitOutcome | null,
): ComparedCell | null {
  if (outcome.refusal !== null) return null;
  const share = shareOf(outcome, key);
  const amount = share?.amount ?? 0;
  const difference =
    base === null || base === outcome ? null : amount - (shareOf(base, key)?.amount ?? 0);
  return { rule: outcome.choice.rule, amount, recoverable: share?.recoverable ?? 0, difference };
}

function shareOf(outcome: SplitOutcome, key: string): Share | null {
  return outcome.shares.find((share) => payerKey(share) === key) ?? null;
}
