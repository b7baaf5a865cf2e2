import type { LineFile } from "#lib/domain/facts/line-file.ts";
import {
  SPLIT_RULES,
  type SplitChoice,
  type UnknownShares,
  USUAL_UNKNOWN_SHARES,
} from "#lib/domain/facts/split.ts";
import type { SplitOutcome } from "#lib/domain/findings/outcome.ts";
import type { Report } from "#lib/domain/findings/report.ts";
import { type Cft, parseFeet } from "#lib/domain/length/station.ts";
import { latestSplit } from "#lib/domain/split/latest-split.ts";
import { splitOutcome } from "#lib/domain/split/outcomes.ts";

/** What the page's address says: tried out, not chosen yet. */
export interface CostQuery {
  readonly fault?: string | string[];
  readonly payer?: string | string[];
  /** The rule under which the options stand side by side. */
  readonly rule?: string | string[];
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
  const latest = latestSplit(file);
  const rule =
    SPLIT_RULES.find((each) => each === first(query.rule)) ?? latest?.rule ?? "portion-used";
  return { rule, ...particulars, unknownShares: latest?.unknownShares ?? USUAL_UNKNOWN_SHARES };
}

function chosen(report: Report, rule: SplitOutcome["choice"]["rule"]): SplitOutcome | undefined {
  return report.splits.find((outcome) => outcome.choice.rule === rule);
}

function first(value: string | string[] | undefined): string {
  return (Array.isArray(value) ? value[0] : value) ?? "";
}

export type BothOutcomes = Readonly<Record<"carried" | "heldApart", readonly SplitOutcome[]>>;

/** Every rule, once with the unknown owners' share carried by the others and once held apart. */
export function outcomesFor(
  file: LineFile,
  report: Report,
  particulars: Particulars,
): BothOutcomes {
  const { tieIns, reaches, extent } = report;
  const under = (unknownShares: UnknownShares) =>
    report.splits.map(({ choice }) =>
      splitOutcome(file, { tieIns, reaches, extent }, { ...choice, ...particulars, unknownShares }),
    );
  return { carried: under("carried"), heldApart: under("held-apart") };
}
