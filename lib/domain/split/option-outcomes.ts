import type { LineFile } from "../facts/line-file.ts";
import type { SplitChoice } from "../facts/split.ts";
import type { WorkOption } from "../facts/work-option.ts";
import type { Share, SplitOutcome } from "../findings/outcome.ts";
import type { Report } from "../findings/report.ts";
import type { Cents } from "../money/cents.ts";
import { reachFindings } from "../responsibility/reach.ts";
import { type Leaver, leaversOf } from "../sharing/leavers.ts";
import { optionInForce, scopeTotal, underOption } from "../sharing/scope-in-force.ts";
import { sharersOf } from "../sharing/sharers.ts";
import { payerKey } from "./compare.ts";
import { splitOutcome } from "./outcomes.ts";

type Placed = Pick<Report, "tieIns" | "extent">;

/** What one way of doing the work costs, and whom. */
export interface OptionOutcome {
  readonly option: WorkOption;
  readonly inForce: boolean;
  readonly total: Cents;
  /** Under the same rule as the others. */
  readonly outcome: SplitOutcome;
  /** Who gets a line of their own and shares nothing else. */
  readonly leavers: readonly Leaver[];
}

/** Every option of a file under one rule, in the order of the file. */
export function optionOutcomes(
  file: LineFile,
  report: Placed,
  choice: SplitChoice,
): OptionOutcome[] {
  const chosen = optionInForce(file);
  return file.options.map((option) => {
    const asIf = underOption(file, option.id);
    return {
      option,
      inForce: option.id === chosen,
      total: scopeTotal(asIf),
      outcome: outcomeAsIf(asIf, report, choice),
      leavers: leaversOf(asIf, sharersOf(asIf, report.tieIns)),
    };
  });
}

/** What a rule gives on a file that is the line's own but for its work. */
export function outcomeAsIf(file: LineFile, report: Placed, choice: SplitChoice): SplitOutcome {
  const { tieIns, extent } = report;
  return splitOutcome(file, { tieIns, extent, reaches: reachFindings(file, report) }, choice);
}

/** What one payer pays under one option. */
export interface OptionCell {
  readonly amount: Cents;
  /** Against the option in force; null for that option itself, and while none is. */
  readonly difference: Cents | null;
  readonly leaves: boolean;
}

export interface OptionPayer {
  readonly key: string;
  readonly label: string;
  readonly unknown: boolean;
  /** One per option, in their order; null where the rule can't be worked out for it. */
  readonly cells: readonly (OptionCell | null)[];
}

/** Every payer against every option. */
export function compareOptions(outcomes: readonly OptionOutcome[]): OptionPayer[] {
  const base = outcomes.find(({ inForce, outcome }) => inForce && outcome.refusal === null);
  const payers = new Map<string, Share>();
  for (const share of outcomes.flatMap(({ outcome }) => outcome.shares)) {
    if (!payers.has(payerKey(share))) payers.set(payerKey(share), share);
  }
  return [...payers].map(([key, { label, propertyId }]) => ({
    key,
    label,
    unknown: propertyId === null,
    cells: outcomes.map((each) => cellOf(each, key, base ?? null)),
  }));
}

function cellOf(one: OptionOutcome, key: string, base: OptionOutcome | null): OptionCell | null {
  if (one.outcome.refusal !== null) return null;
  const amount = amountOf(one, key);
  return {
    amount,
    difference: base === null || base === one ? null : amount - amountOf(base, key),
    leaves: one.leavers.some((leaver) => leaver.key === key),
  };
}

function amountOf({ outcome }: OptionOutcome, key: string): Cents {
  return outcome.shares.find((share) => payerKey(share) === key)?.amount ?? 0;
}
