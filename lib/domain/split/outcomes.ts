import type { LineFile } from "../file/line-file.ts";
import type { Cft } from "../line/station.ts";
import { roundShares } from "../money/apportion.ts";
import type { Cents } from "../money/cents.ts";
import { formatRatio, ratio } from "../money/ratio.ts";
import { basisOf } from "./basis.ts";
import { type Division, divide } from "./divide.ts";
import { type Found, faultStations, type Ground, groundOf } from "./ground.ts";
import { oddCentsWords, tieOrderOf } from "./odd-cents.ts";
import type { Share, SplitOutcome } from "./outcome.ts";
import { recoverableOf } from "./recoverable.ts";
import { RULE_TITLES, ruleSentence } from "./rule-words.ts";
import { SPLIT_RULES, type SplitChoice, type SplitRule, type UnknownShares } from "./split.ts";
import { standAloneTest } from "./stand-alone.ts";

/**
 * What every rule gives on this line, one each in the order of SPLIT_RULES. A rule chosen before
 * keeps the parameters of its latest version.
 */
export function splitOutcomes(file: LineFile, found: Found): SplitOutcome[] {
  const grounds = new Map<UnknownShares, Ground>();
  const ground = (unknownShares: UnknownShares): Ground => {
    const known = grounds.get(unknownShares) ?? groundOf(file, found, unknownShares);
    grounds.set(unknownShares, known);
    return known;
  };
  return SPLIT_RULES.map((rule) => outcomeOn(ground, presentChoice(file, rule)));
}

/** What one rule gives on this line; the refusal says what to enter where it can't be worked out. */
export function splitOutcome(file: LineFile, found: Found, choice: SplitChoice): SplitOutcome {
  return outcomeOn((unknownShares) => groundOf(file, found, unknownShares), choice);
}

/**
 * The parameters of a rule as last chosen. Without a choice: the fault is the only one that the
 * camera saw, or else where the only placed work is a point; the payer is not chosen, and unknown owners' shares are held apart, so that nobody is
 * asked for more than its own until somebody decides otherwise.
 */
export function presentChoice(
  file: Pick<LineFile, "splits" | "scope" | "runs" | "anchors" | "observations">,
  rule: SplitRule,
): SplitChoice {
  const versions = [...file.splits].sort((a, b) => b.number - a.number);
  const latest = versions.find((version) => version.rule === rule);
  if (latest !== undefined) {
    const { faultStation, payerId, unknownShares } = latest;
    return { rule, faultStation, payerId, unknownShares };
  }
  return {
    rule,
    faultStation: rule === "upstream-of-fault" ? onlyFault(file) : null,
    payerId: null,
    unknownShares: versions[0]?.unknownShares ?? "held-apart",
  };
}

function onlyFault(
  file: Pick<LineFile, "scope" | "runs" | "anchors" | "observations">,
): Cft | null {
  const faults = faultStations(file);
  if (faults.length > 0) return faults.length === 1 ? (faults[0] ?? null) : null;
  const placed = file.scope.filter((item) => item.place === "point" || item.place === "stretch");
  const [only] = placed;
  return placed.length === 1 && only?.place === "point" ? only.from : null;
}

function outcomeOn(
  groundFor: (unknownShares: UnknownShares) => Ground,
  choice: SplitChoice,
): SplitOutcome {
  const ground = groundFor(choice.unknownShares);
  const common = {
    choice,
    title: RULE_TITLES[choice.rule],
    sentence: ruleSentence(ground, choice),
    total: ground.total,
    basis: basisOf(ground, choice),
  };
  const nothing = { shares: [], standAlone: null, oddCents: "" };
  if (ground.items.length === 0) {
    return { ...common, ...nothing, refusal: "No work is priced yet. Enter the scope items." };
  }
  const division = divide(ground, choice);
  if (!division.ok) return { ...common, ...nothing, refusal: division.error };
  return {
    ...common,
    refusal: null,
    shares: sharesOf(division.value, { ground, choice, groundFor }),
    standAlone: standAloneTest(ground, division.value),
    oddCents: oddCentsWords(ground, division.value.tally),
  };
}

function sharesOf(
  division: Division,
  given: {
    readonly ground: Ground;
    readonly choice: SplitChoice;
    readonly groundFor: (unknownShares: UnknownShares) => Ground;
  },
): Share[] {
  const { ground } = given;
  const { numerators, denominator } = division.tally;
  const amounts = roundShares(numerators, denominator, tieOrderOf(ground));
  const recoverable = recoverableOf(division, amounts, given);
  return ground.people.flatMap((person, index): Share[] => {
    const steps = division.steps[index] ?? [];
    if (person.tieIns.length === 0 && steps.length === 0) return [];
    const amount: Cents = amounts[index] ?? 0;
    return [
      {
        propertyId: person.propertyId,
        tieInId: person.tieInId,
        label: person.label,
        amount,
        recoverable: recoverable[index] ?? 0,
        exact: formatRatio(ratio(numerators[index] ?? 0n, denominator)),
        steps,
      },
    ];
  });
}
