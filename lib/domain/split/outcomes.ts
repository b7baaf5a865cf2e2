import type { LineFile } from "../facts/line-file.ts";
import {
  SPLIT_RULES,
  type SplitChoice,
  type SplitRule,
  type UnknownShares,
  USUAL_UNKNOWN_SHARES,
} from "../facts/split.ts";
import type { Share, SplitOutcome } from "../findings/outcome.ts";
import type { Cft } from "../length/station.ts";
import { roundShares } from "../money/apportion.ts";
import { formatRatio, ratio } from "../money/ratio.ts";
import { type Found, faultStations, type Ground, groundOf } from "../sharing/ground.ts";
import { mustChooseOption, type ScopeFile, scopeInForce } from "../sharing/scope-in-force.ts";
import { basisOf } from "./basis.ts";
import type { CostTree } from "./cost-tree.ts";
import { type Division, divide, writtenSums } from "./divide.ts";
import { oddCentsWords, tieOrderOf } from "./odd-cents.ts";
import { recoverableOf } from "./recoverable.ts";
import { RULE_TITLES, ruleSentence } from "./rule-words.ts";
import { standAloneTest, standAloneTree } from "./stand-alone.ts";

/**
 * What every rule gives on this line, one each in the order of SPLIT_RULES. A rule chosen before
 * keeps the parameters of its latest version.
 */
export function splitOutcomes(file: LineFile, found: Found): SplitOutcome[] {
  return outcomesOf(
    file,
    found,
    SPLIT_RULES.map((rule) => presentChoice(file, rule)),
  );
}

/** What each of several choices gives on this line; the ground that they share is laid once. */
export function outcomesOf(
  file: LineFile,
  found: Found,
  choices: readonly SplitChoice[],
): SplitOutcome[] {
  const siteFor = siteMaker(file, found);
  return choices.map((choice) => outcomeOn(siteFor, choice));
}

/** What one rule gives on this line; the refusal says what to enter where it can't be worked out. */
export function splitOutcome(file: LineFile, found: Found, choice: SplitChoice): SplitOutcome {
  return outcomeOn(siteMaker(file, found), choice);
}

/** What all rules share that treat unknown owners alike. */
interface Site {
  readonly ground: Ground;
  readonly tree: () => CostTree | null;
}

type SiteFor = (unknownShares: UnknownShares) => Site;

function siteMaker(file: LineFile, found: Found): SiteFor {
  const make = (unknownShares: UnknownShares): Site => {
    const ground = groundOf(file, found, unknownShares);
    const tree = once(() => ({ tree: standAloneTree(ground) }));
    return { ground, tree: () => tree().tree };
  };
  const sites: Record<UnknownShares, () => Site> = {
    carried: once(() => make("carried")),
    "held-apart": once(() => make("held-apart")),
  };
  return (unknownShares) => sites[unknownShares]();
}

/**
 * The parameters of a rule as last chosen. Without a choice: the fault is the only one that the
 * camera saw, or else where the only placed work is a point; the payer is not chosen, and unknown owners' shares are held apart, so that nobody is
 * asked for more than its own until somebody decides otherwise.
 */
export function presentChoice(
  file: Pick<LineFile, "splits" | "runs" | "anchors" | "observations"> & ScopeFile,
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
    unknownShares: versions[0]?.unknownShares ?? USUAL_UNKNOWN_SHARES,
  };
}

function onlyFault(
  file: Pick<LineFile, "runs" | "anchors" | "observations"> & ScopeFile,
): Cft | null {
  const faults = faultStations(file);
  if (faults.length > 0) return faults.length === 1 ? (faults[0] ?? null) : null;
  const placed = scopeInForce(file).filter(
    (item) => item.place === "point" || item.place === "stretch",
  );
  const [only] = placed;
  return placed.length === 1 && only?.place === "point" ? only.from : null;
}

const CHOOSE_OPTION =
  "Several repair options are priced and none is selected. Select one under “Options and changes”.";

function outcomeOn(siteFor: SiteFor, choice: SplitChoice): SplitOutcome {
  const { ground, tree } = siteFor(choice.unknownShares);
  const common = {
    choice,
    title: RULE_TITLES[choice.rule],
    sentence: ruleSentence(ground, choice),
    total: ground.total,
    basis: basisOf(ground, choice),
  };
  const nothing = { shares: [], standAlone: null, oddCents: "" };
  if (mustChooseOption(ground.file)) {
    return { ...common, ...nothing, refusal: CHOOSE_OPTION };
  }
  if (ground.items.length === 0) {
    return { ...common, ...nothing, refusal: "No work is priced yet. Enter the work items." };
  }
  const division = divide(ground, choice);
  if (!division.ok) return { ...common, ...nothing, refusal: division.error };
  return {
    ...common,
    refusal: null,
    shares: sharesOf(division.value, {
      ground,
      choice,
      groundFor: (unknownShares) => siteFor(unknownShares).ground,
    }),
    standAlone: standAloneTest(ground, tree(), division.value),
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
  const { ground, choice } = given;
  const { numerators, denominator } = division.tally;
  const amounts = roundShares(numerators, denominator, tieOrderOf(ground));
  const recoverable = recoverableOf({ amounts, tally: division.tally }, given);
  const sums = once(() => writtenSums(ground, choice));
  return ground.people.flatMap((person, index): Share[] => {
    const numerator = numerators[index] ?? 0n;
    if (person.tieIns.length === 0 && numerator === 0n) return [];
    const exact = once(() => formatRatio(ratio(numerator, denominator)));
    return [
      {
        propertyId: person.propertyId,
        tieInId: person.tieInId,
        label: person.label,
        amount: amounts[index] ?? 0,
        recoverable: recoverable[index] ?? 0,
        get exact() {
          return exact();
        },
        get steps() {
          return sums()[index] ?? [];
        },
      },
    ];
  });
}

/**
 * Works a value out when it is first read. Most readers of a split want its amounts only, and
 * writing every sum down costs many times what the amounts do.
 */
function once<T extends object | string>(make: () => T): () => T {
  let made: T | null = null;
  return () => {
    made ??= make();
    return made;
  };
}
