import type { LineFile } from "#lib/domain/facts/line-file.ts";
import {
  SPLIT_RULES,
  type SplitChoice,
  type SplitRule,
  UNKNOWN_SHARES,
  type UnknownShares,
  USUAL_UNKNOWN_SHARES,
} from "#lib/domain/facts/split.ts";
import type { SplitOutcome } from "#lib/domain/findings/outcome.ts";
import type { Report } from "#lib/domain/findings/report.ts";
import { type Cft, parseFeet } from "#lib/domain/length/station.ts";
import { latestSplit } from "#lib/domain/split/latest-split.ts";
import { outcomesOf } from "#lib/domain/split/outcomes.ts";
import { nobodysTieIns } from "#lib/domain/split/unknown-owner.ts";

/** What the page's address says: tried out, not chosen yet. */
export interface CostQuery {
  readonly fault?: string | string[];
  readonly payer?: string | string[];
  /** The rule under which options are compared, or that is offered to be chosen. */
  readonly rule?: string | string[];
  /** How the shares of unknown owners are treated. */
  readonly unknown?: string | string[];
}

/** What two of the rules need besides the line and the scope. */
export interface Particulars {
  readonly faultStation: Cft | null;
  readonly payerId: string | null;
}

/** From the address where it says something, else as the report has them. */
export function particularsOf(file: LineFile, report: Report, query: CostQuery): Particulars {
  const fault = parseFeet(first(query.fault));
  const payerId = first(query.payer);
  const known = file.properties.some((property) => property.id === payerId);
  return {
    faultStation: fault ?? chosen(report, "upstream-of-fault")?.choice.faultStation ?? null,
    payerId: known ? payerId : (chosen(report, "single-payer")?.choice.payerId ?? null),
  };
}

/** The rule to hold the options against: as the address says, else the chosen one, else by portion used. */
export function optionChoice(
  file: LineFile,
  particulars: Particulars,
  query: CostQuery,
): SplitChoice {
  const rule = ruleOf(query) ?? latestSplit(file)?.rule ?? "portion-used";
  return { rule, ...particulars, unknownShares: unknownSharesOf(file) };
}

function chosen(report: Report, rule: SplitOutcome["choice"]["rule"]): SplitOutcome | undefined {
  return report.splits.find((outcome) => outcome.choice.rule === rule);
}

function first(value: string | string[] | undefined): string {
  return (Array.isArray(value) ? value[0] : value) ?? "";
}

/** The rule that the address names. */
export function ruleOf(query: CostQuery): SplitRule | null {
  return SPLIT_RULES.find((each) => each === first(query.rule)) ?? null;
}

/** As the address says, else as the chosen version treats unknown owners, else as is usual. */
export function unknownSharesOf(file: LineFile, query: CostQuery = {}): UnknownShares {
  return (
    UNKNOWN_SHARES.find((each) => each === first(query.unknown)) ??
    latestSplit(file)?.unknownShares ??
    USUAL_UNKNOWN_SHARES
  );
}

/** Every rule under one treatment of unknown owners. */
export interface RulesUnder {
  readonly unknownShares: UnknownShares;
  readonly outcomes: readonly SplitOutcome[];
}

export interface BothOutcomes {
  readonly main: RulesUnder;
  /** The other treatment of unknown owners; null where every owner is known. */
  readonly other: RulesUnder | null;
}

/** Every rule as unknown owners are treated now; where there are any, also the other way. */
export function outcomesFor(
  file: LineFile,
  report: Report,
  particulars: Particulars,
): BothOutcomes {
  const main = rulesUnder(file, report, particulars);
  if (nobodysTieIns(report.tieIns).length === 0) return { main, other: null };
  const other = main.unknownShares === "carried" ? "held-apart" : "carried";
  return { main, other: rulesUnder(file, report, particulars, other) };
}

/** Every rule under one treatment of unknown owners: the present one unless another is asked for. */
export function rulesUnder(
  file: LineFile,
  report: Report,
  particulars: Particulars,
  unknownShares: UnknownShares = unknownSharesOf(file),
): RulesUnder {
  const choices = report.splits.map(({ choice }) => ({ ...choice, ...particulars, unknownShares }));
  return { unknownShares, outcomes: outcomesOf(file, report, choices) };
}
