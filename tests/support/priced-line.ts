import type { TieIn } from "#lib/domain/facts/line.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { SplitChoice, SplitRule } from "#lib/domain/facts/split.ts";
import type { SplitOutcome } from "#lib/domain/findings/outcome.ts";
import type { TieInFinding } from "#lib/domain/findings/report.ts";
import { reachFindings } from "#lib/domain/responsibility/reach.ts";
import type { Found } from "#lib/domain/sharing/ground.ts";
import { splitOutcome } from "#lib/domain/split/outcomes.ts";
import { aFinding } from "./answers.ts";
import { aFile, aProperty, aTieIn } from "./file.ts";

/** A line with its tie-ins placed, ready to be divided. */
export interface PricedLine {
  readonly file: LineFile;
  readonly found: Found;
}

/**
 * A line whose live tie-ins are given by id, station and property (`null`: owner unknown; without
 * one, the property is called as the tie-in). Properties named by tie-ins are made.
 */
export function aPricedLine(
  tieIns: readonly (Partial<TieIn> & { readonly id: string })[],
  overrides: Parameters<typeof aFile>[0] = {},
): PricedLine {
  const findings = tieIns.map((each) =>
    aFinding(aTieIn(each.id, { propertyId: each.id, ...each })),
  );
  const named = new Set(findings.flatMap((finding) => finding.propertyId ?? []));
  const own = overrides?.properties ?? [];
  const made = [...named].filter((id) => !own.some((property) => property.id === id));
  const top = Math.max(0, ...findings.map((finding) => finding.station ?? 0));
  const file = aFile({
    ...overrides,
    line: { upperEnd: null, ...overrides?.line },
    properties: [...made.map((id) => aProperty(id)), ...own],
    tieIns: findings.map((finding) => finding.tieIn),
  });
  return { file, found: foundOf(file, findings, top) };
}

export function foundOf(file: LineFile, tieIns: readonly TieInFinding[], extent: number): Found {
  return { tieIns, reaches: reachFindings(file, { tieIns, extent }), extent };
}

export function aChoice(rule: SplitRule, overrides: Partial<SplitChoice> = {}): SplitChoice {
  return { rule, faultStation: null, payerId: null, unknownShares: "held-apart", ...overrides };
}

export function divideLine(
  { file, found }: PricedLine,
  rule: SplitRule,
  overrides: Partial<SplitChoice> = {},
): SplitOutcome {
  return splitOutcome(file, found, aChoice(rule, overrides));
}

/** Amounts by the property's or unknown tie-in's id. */
export function amountsOf(outcome: SplitOutcome): Record<string, number> {
  return Object.fromEntries(
    outcome.shares.map((share) => [share.propertyId ?? share.tieInId ?? "", share.amount]),
  );
}

/** Exact cents, `n/d`, by id. */
export function exactOf(outcome: SplitOutcome): Record<string, string> {
  return Object.fromEntries(
    outcome.shares.map((share) => [share.propertyId ?? share.tieInId ?? "", share.exact]),
  );
}

/** The sums behind one share, in words. */
export function wordsOf(outcome: SplitOutcome, id: string): string[] {
  const share = outcome.shares.find((each) => (each.propertyId ?? each.tieInId) === id);
  return (share?.steps ?? []).map((step) => step.words);
}
