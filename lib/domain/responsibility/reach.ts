import {
  agreementEnds,
  agreementExtent,
  agreementName,
  agreementOver,
  type RankedAgreement,
  rankedAgreements,
} from "../agreement/agreement-standing.ts";
import type { ResponsibilityRule } from "../facts/authority.ts";
import type { LineFile } from "../facts/line-file.ts";
import type { Fault, Observation } from "../facts/run.ts";
import type { Holder, ReachFinding } from "../findings/reach-finding.ts";
import type { TieInFinding } from "../findings/report.ts";
import type { Cft } from "../length/station.ts";
import { type Stretch, sayWhere } from "../length/stretch.ts";
import { type PipeChange, type Reach, reachesOf } from "../line/reaches.ts";
import { pipeChanges, stationObservations } from "../run/observe.ts";
import { sayList } from "../say/say-list.ts";
import { scopeInForce } from "../sharing/scope-in-force.ts";
import { type Sharer, sharersOf } from "../sharing/sharers.ts";
import { type BoundaryPlace, boundaryPlace, partOf } from "./boundary.ts";
import { citationOf } from "./citation.ts";
import { unclear, type Verdict, verdictOf } from "./patterns.ts";
import { reachCosts } from "./reach-cost.ts";
import { type Around, answerableUnder } from "./shared-rules.ts";

interface Found {
  readonly tieIns: readonly TieInFinding[];
  readonly extent: Cft;
}

/** What every reach is judged against; worked out once for the line. */
interface Bench {
  readonly file: LineFile;
  readonly sharers: readonly Sharer[];
  readonly agreements: readonly RankedAgreement[];
  readonly rule: ResponsibilityRule | null;
  readonly boundary: BoundaryPlace;
  /** What the camera saw broken and where, a point with both ends the same. */
  readonly breaks: readonly Stretch[];
}

/**
 * The trunk from the main to its upper end, cut wherever something changes, with who is served,
 * who is responsible and why. Agreements come before the authority's rule, the recorded ones first; while
 * no rule is chosen, or its boundary is not entered, the answer stays unclear.
 */
export function reachFindings(file: LineFile, found: Found): ReachFinding[] {
  const agreements = rankedAgreements(file);
  const sharers = sharersOf(file, found.tieIns);
  const stations = stationObservations(file);
  const reaches = reachesOf(file.line, {
    cuts: [
      ...sharers.flatMap((sharer) => sharer.stations),
      ...file.points.map((point) => point.station),
      ...file.crossings.flatMap((crossing) => [crossing.from, crossing.to]),
      ...agreementEnds(agreements),
    ],
    changes: realChanges(file, pipeChanges(file, stations)),
    extent: found.extent,
  });
  const rule = file.authority?.rules.find((each) => each.id === file.line.ruleId) ?? null;
  const boundary = boundaryPlace(file, rule ?? { boundary: "main-connection" });
  const breaks = file.observations.flatMap((seen, index) => {
    const { station = null, toStation = null } = stations[index] ?? {};
    if (!isBreak(seen) || station === null) return [];
    const other = toStation ?? station;
    return [{ from: Math.min(station, other), to: Math.max(station, other) }];
  });
  const bench: Bench = {
    file,
    sharers,
    agreements,
    rule,
    boundary,
    breaks,
  };
  const findings = reaches.map((reach) => judge(reach, bench));
  const scope = scopeInForce(file);
  const costs = reachCosts(scope, reaches);
  const authoritys = reachCosts(
    scope,
    reaches,
    ({ work }, index) => findings[index]?.menders[work] === "authority",
  );
  return findings.map((finding, index) => ({
    ...finding,
    cost: costs[index] ?? 0,
    authorityCost: authoritys[index] ?? 0,
  }));
}

/** A change that two runs saw counts once, where the pipe first differs. */
function realChanges(file: LineFile, changes: readonly PipeChange[]): PipeChange[] {
  let { material, diameter } = file.line;
  return [...changes]
    .sort((a, b) => a.station - b.station)
    .filter((change) => {
      const next = change.material === "unknown" ? material : change.material;
      const size = change.diameter ?? diameter;
      const differs = next !== material || size !== diameter;
      material = next;
      diameter = size;
      return differs;
    });
}

/** Faults of the pipe itself: what an owner can prove broken. Roots, a belly or a leak are none. */
const BREAKS: ReadonlySet<Fault> = new Set([
  "crack",
  "broken",
  "hole",
  "offset-joint",
  "open-joint",
  "deformed",
  "collapsed",
]);

function isBreak({ kind, fault }: Observation): boolean {
  return kind === "fault" && fault !== null && BREAKS.has(fault);
}

/** The breaks on one reach; one where two reaches meet is on the lower of them. */
function sayBreaks(breaks: readonly Stretch[], reach: Reach): string {
  const here = breaks
    .filter(
      ({ from, to }) => from <= reach.to && (to > reach.from || (reach.from === 0 && to === 0)),
    )
    .toSorted((a, b) => a.from - b.from);
  if (here.length === 0) return "";
  return `The camera saw a break ${sayList([...new Set(here.map(sayWhere))])}`;
}

function judge(reach: Reach, bench: Bench): Omit<ReachFinding, "cost" | "authorityCost"> {
  const around = aroundOf(reach, bench);
  const served = around.passing.flatMap((sharer) => sharer.propertyId ?? []);
  const agreement = agreementOver(bench.agreements, reach.from, reach.to);
  const judged =
    agreement === null ? byRule(reach, around, bench) : byAgreement(reach, agreement, bench);
  return {
    from: reach.from,
    to: reach.to,
    material: reach.material,
    diameter: reach.diameter,
    servedBy: served,
    unknownTieIns: around.passing.flatMap((sharer) => sharer.tieInId ?? []),
    ...judged,
    menders: judged.menders ?? everyKind(judged.mender),
    reason: `${judged.reason}${unplacedNote(bench)}`,
    crossedBy: crossedBy(reach, served, bench),
  };
}

type Judged = Verdict & Pick<ReachFinding, "answerable" | "citation">;

function everyKind(holder: Holder): ReachFinding["menders"] {
  return { clearing: holder, repair: holder, replacement: holder };
}

function byRule(reach: Reach, around: Around, bench: Bench): Judged {
  const { rule } = bench;
  const verdict = ruleVerdict(reach, bench);
  const citation = rule === null ? "" : citationOf(rule);
  if (rule === null || verdict.holder !== "owners") return { ...verdict, answerable: [], citation };
  const shared = answerableUnder(rule.sharedRule, around);
  return {
    ...verdict,
    answerable: shared.propertyIds,
    reason: `${verdict.reason} ${shared.reason}`,
    citation,
  };
}

function ruleVerdict(reach: Reach, { file, rule, boundary, breaks }: Bench): Verdict {
  if (file.authority === null) {
    return unclear(
      "No authority is selected for this line yet. Select it and the rule that applies.",
    );
  }
  if (rule === null) {
    return unclear(`No rule of ${file.authority.name} is selected for this line yet. Select one.`);
  }
  return verdictOf(rule, {
    part: partOf(reach, boundary),
    boundary: boundary.words,
    atMain: reach.from === 0,
    breaks: sayBreaks(breaks, reach),
  });
}

/** An agreement among owners outranks the rule; what the rule says by itself is told beside it. */
function byAgreement(reach: Reach, ranked: RankedAgreement, bench: Bench): Judged {
  const { agreement } = ranked;
  const named = agreement.shares.filter((share) => share.parts > 0);
  const start = `${agreementName(ranked)}, covers ${agreementExtent(agreement)} and outranks the authority’s rule.`;
  const verdict = ruleVerdict(reach, bench);
  const beside =
    bench.rule === null || verdict.holder === "owners"
      ? ""
      : ` By itself, the rule says: ${verdict.reason}`;
  return {
    holder: "owners",
    mender: "owners",
    answerable: named.map((share) => share.propertyId),
    reason: `${start}${beside}`,
    citation: agreementName(ranked),
  };
}

function aroundOf(reach: Reach, { sharers }: Bench): Around {
  const passing = sharers.filter((sharer) =>
    sharer.stations.some((station) => station >= reach.to),
  );
  const above = passing.flatMap((sharer) => sharer.stations).filter((each) => each >= reach.to);
  const nearest = Math.min(...above);
  return {
    all: sharers,
    passing,
    next: passing.filter((sharer) => sharer.stations.includes(nearest)),
  };
}

function unplacedNote({ sharers }: Bench): string {
  const labels = sharers.flatMap((sharer) => sharer.unplaced);
  if (labels.length === 0) return "";
  const have = labels.length === 1 ? "has" : "have";
  return ` ${sayList(labels)} ${have} no station yet: flow from there may pass here too.`;
}

/** Lots over this reach whose owner's flow does not pass it. */
function crossedBy(reach: Reach, served: readonly string[], { file }: Bench): string[] {
  const lots = file.crossings
    .filter((crossing) => crossing.from < reach.to && crossing.to > reach.from)
    .map((crossing) => crossing.propertyId);
  return [...new Set(lots)].filter((propertyId) => !served.includes(propertyId));
}
