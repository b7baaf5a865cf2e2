import type { LineFile } from "../facts/line-file.ts";
import type { Observation } from "../facts/run.ts";
import type { StandingWater } from "../findings/capacity.ts";
import type { StationedObservation } from "../findings/report.ts";
import type { Cft } from "../length/station.ts";
import { commonStretch, joinedStretches, type Stretch, touches } from "../length/stretch.ts";
import { convertersOf } from "./observe.ts";

type WaterFacts = Pick<LineFile, "runs" | "anchors" | "gaps" | "observations">;

/**
 * Where water stood in the trunk (the pipe dips there, or something dams it), from the main upstream, joined where it overlaps: water and bellies
 * that a run saw, a point where no end was noted, and stretches that were under water. What is noted
 * as running does not stand. Each with how deep, where somebody told. Places that are relative only tell nothing. Hundredths of a foot.
 */
export function standingWater(
  file: WaterFacts,
  stations: readonly StationedObservation[],
): StandingWater[] {
  const placed = new Map(stations.map((each) => [each.observationId, each]));
  const seen = file.observations.filter(isStanding).flatMap(({ id, waterDepth: depth }) => {
    const at = placed.get(id);
    if (at === undefined || at.station === null) return [];
    return [{ ...between(at.station, at.toStation), depth }];
  });
  const runs = convertersOf(file);
  const under = file.gaps.flatMap(({ runId, cause, fromCounter, toCounter }) => {
    const converter = runs.get(runId)?.converter;
    const [from, to] = [fromCounter, toCounter].map((counter) => converter?.toStation(counter));
    return cause === "under-water" && from && to ? [between(from.station, to.station)] : [];
  });
  return joinedStretches([...seen, ...under]).map((water) => ({
    ...water,
    depth: deepest(seen.filter((each) => touches(water, each))),
  }));
}

function deepest(told: readonly Pick<StandingWater, "depth">[]): number | null {
  const depths = told.flatMap(({ depth }) => depth ?? []);
  return depths.length === 0 ? null : Math.max(...depths);
}

/** Which of them lie within a stretch of pipe, each as far as it does; a point at an end does not. */
export function waterWithin(water: readonly StandingWater[], pipe: Stretch): StandingWater[] {
  return water.flatMap((each) => {
    const common = commonStretch(each, pipe);
    const isEnd =
      common?.from === common?.to && (common?.to === pipe.from || common?.to === pipe.to);
    return common === null || isEnd ? [] : [{ ...common, depth: each.depth }];
  });
}

const RUNNING = /\b(running|runs|flowing|flows|trickl\w*|moving)\b/i;
const STANDING = /\b(stand\w*|pond\w*|pool\w*|belly|sag\w*|full|submerged|under ?water)\b/i;

function isStanding({ kind, fault, note }: Observation): boolean {
  if (kind === "fault") return fault === "belly";
  return kind === "water" && (!RUNNING.test(note) || STANDING.test(note));
}

function between(a: Cft, b: Cft | null): Stretch {
  return { from: Math.min(a, b ?? a), to: Math.max(a, b ?? a) };
}
