import { err, ok } from "../../result.ts";
import {
  agreementEnds,
  agreementName,
  agreementOver,
  type RankedAgreement,
} from "../agreement/agreement-standing.ts";
import { firstAtOrAbove } from "../length/rising.ts";
import type { Cft } from "../length/station.ts";
import { lcm, type Ratio, ratio } from "../money/ratio.ts";
import { sayList } from "../say/say-list.ts";
import {
  type Allotment,
  equalAllotment,
  millionths,
  rangeAllotment,
  sayMillionths,
  weightedAllotment,
} from "../sharing/allotment.ts";
import type { Ground } from "../sharing/ground.ts";
import { carriedByAll, equallyBehind, freePlan, type RuleMaker } from "./plan.ts";
import { nobodyKnown, stationsMissing } from "./rules-anywhere.ts";

const SHORTEN = "Shorten it, or give it its own payer or rule.";

/**
 * Each foot among those whose flow passes it: the sequential equal contributions of Littlechild &
 * Owen (1973), which are the Shapley value of the line.
 */
export const portionUsedRule: RuleMaker = (ground) => {
  const refusal = nobodyKnown(ground) ?? stationsMissing(ground);
  if (refusal !== null) return err(refusal);
  const tops = ground.connected.map((index) => ground.people[index]?.top ?? 0);
  const cuts = risingOnce([...tops, ...topsOf(ground.absent)]);
  const carried = carriedByAll(ground);
  const highest = tops.at(-1) ?? 0;
  const byFirst = new Map<number, Allotment>();
  const passing = (to: Cft): Allotment | null => {
    const first = firstAtOrAbove(tops, to);
    if (first === tops.length) return to <= (cuts.at(-1) ?? 0) ? carried : null;
    const known = byFirst.get(first) ?? rangeAllotment(first, tops.length);
    byFirst.set(first, known);
    return known;
  };
  return ok({
    kind: "located",
    cuts,
    at: (_from, to) => passing(to),
    nobody: "no one’s flow passes there",
    remedy: SHORTEN,
    behind: equallyBehind(ground),
    portion: highest === cuts.at(-1) ? portionOfPassing(tops) : null,
  });
};

/** The length that falls to each when every foot is shared by all who join above it. */
function portionOfPassing(
  tops: readonly Cft[],
): (index: number, from: Cft, to: Cft) => Ratio | null {
  const cuts = risingOnce(tops);
  const counts = cuts.map((cut) => BigInt(tops.length - firstAtOrAbove(tops, cut)));
  const scale = counts.reduce(lcm, 1n);
  const upTo: bigint[] = [0n];
  for (const [place, cut] of cuts.entries()) {
    const length = BigInt(cut - (cuts[place - 1] ?? 0));
    upTo.push((upTo[place] ?? 0n) + (length * scale) / (counts[place] ?? 1n));
  }
  const below = (station: Cft): bigint => {
    const place = firstAtOrAbove(cuts, station);
    const past = BigInt(station - (cuts[place - 1] ?? 0));
    return (upTo[place] ?? 0n) + (past * scale) / (counts[place] ?? 1n);
  };
  const known = new Map<Cft, Map<Cft, Ratio>>();
  return (index, from, to) => {
    const top = Math.min(tops[index] ?? 0, to);
    if (top <= from) return null;
    const fromHere = known.get(from) ?? new Map<Cft, Ratio>();
    known.set(from, fromHere);
    const portion = fromHere.get(top) ?? ratio(below(top) - below(from), scale);
    fromHere.set(top, portion);
    return portion;
  };
}

/**
 * Each answers for the pipe from its own tie-in down to the next one; the lowest answers to the
 * main (Ross Valley Sanitary District, common laterals without an agreement).
 */
export const reachOwnerRule: RuleMaker = (ground) => {
  const refusal = nobodyKnown(ground) ?? stationsMissing(ground);
  if (refusal !== null) return err(refusal);
  const owners = new Map<Cft, number[]>();
  for (const index of ground.connected) {
    for (const station of ground.people[index]?.stations ?? []) {
      owners.set(station, [...(owners.get(station) ?? []), index]);
    }
  }
  const stations = risingOnce([...owners.keys()]);
  const shared = new Map(
    [...owners].map(([station, indices]) => [station, equalAllotment(indices)]),
  );
  const carried = carriedByAll(ground);
  const farthest = Math.max(...stations, ...topsOf(ground.absent));
  return ok({
    kind: "located",
    cuts: risingOnce([...stations, farthest]),
    at: (_from, to) => {
      const station = stations[firstAtOrAbove(stations, to)];
      if (station !== undefined) return shared.get(station) ?? null;
      return to <= farthest ? carried : null;
    },
    nobody: "no tie-in above is responsible for it",
    remedy: SHORTEN,
    behind: equallyBehind(ground),
    portion: null,
  });
};

/**
 * The parts that a recorded agreement states, on the part of the trunk that it covers. Who is
 * named in it pays, connected or not; who is not named pays nothing.
 */
export const recordedSharesRule: RuleMaker = (ground) => {
  const refusal = agreementsMissing(ground);
  if (refusal !== null) return err(refusal);
  const shared = new Map(
    ground.agreements.map((ranked) => [ranked, agreementAllotment(ground, ranked)]),
  );
  const [strongest] = ground.agreements;
  const whole = strongest === undefined ? null : wholeLine(strongest, shared);
  if (whole !== null) return freePlan(whole, equallyBehind(ground));
  return ok({
    kind: "located",
    cuts: risingOnce(agreementEnds(ground.agreements)),
    at: (from, to) => {
      const ranked = agreementOver(ground.agreements, from, to);
      return ranked === null ? null : (shared.get(ranked) ?? null);
    },
    nobody: "no agreement covers it",
    remedy: "Enter the agreement that does, or give the item its own payer or rule.",
    behind: equallyBehind(ground),
    portion: null,
  });
};

function wholeLine(
  ranked: RankedAgreement,
  shared: ReadonlyMap<RankedAgreement, Allotment>,
): Allotment | null {
  const { fromStation, toStation } = ranked.agreement;
  return (fromStation ?? 0) <= 0 && toStation === null ? (shared.get(ranked) ?? null) : null;
}

function agreementAllotment(ground: Ground, { agreement }: RankedAgreement): Allotment {
  const members = agreement.shares.flatMap((share) => {
    const index = ground.indexOf.get(share.propertyId);
    return index === undefined ? [] : [{ index, weight: millionths(share.parts) }];
  });
  return weightedAllotment(members, sayMillionths, `parts of “${agreement.title}”`);
}

function agreementsMissing(ground: Ground): string | null {
  if (ground.agreements.length === 0) {
    const drafts = ground.file.agreements.map((agreement) => `“${agreement.title}”`);
    if (drafts.length === 0) return "No agreement is entered. Enter it with each property’s share.";
    return `${sayList(drafts)} is neither recorded nor signed for every property in it. Enter the recording or the signatures.`;
  }
  for (const ranked of ground.agreements) {
    const { shares } = ranked.agreement;
    if (!shares.some((share) => share.parts > 0)) {
      return `${agreementName(ranked)}, states no shares. Enter each property’s share.`;
    }
    if (shares.some((share) => share.parts < 0 || !ground.indexOf.has(share.propertyId))) {
      return `${agreementName(ranked)}, has a share below 0 or of a property that is not on this line. Correct its shares.`;
    }
  }
  return null;
}

function topsOf(sharers: Ground["absent"]): Cft[] {
  return sharers.flatMap((sharer) => sharer.top ?? []);
}

function risingOnce(stations: readonly Cft[]): Cft[] {
  return [...new Set(stations)].sort((a, b) => a - b);
}
