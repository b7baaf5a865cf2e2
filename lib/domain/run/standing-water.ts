import type { LineFile } from "../facts/line-file.ts";
import type { Observation } from "../facts/run.ts";
import type { StationedObservation } from "../findings/report.ts";
import type { Cft } from "../length/station.ts";
import { commonStretch, joinedStretches, type Stretch } from "../length/stretch.ts";
import { convertersOf } from "./observe.ts";

type WaterFacts = Pick<LineFile, "runs" | "anchors" | "gaps" | "observations">;

/**
 * Where water stood in the trunk (the pipe dips there, or something dams it), from the main upstream, joined where it overlaps: water and bellies
 * that a run saw, a point where no end was noted, and stretches that were under water. What is noted
 * as running does not stand. Places that are relative only tell nothing. Hundredths of a foot.
 */
export function standingWater(
  file: WaterFacts,
  stations: readonly StationedObservation[],
): Stretch[] {
  const placed = new Map(stations.map((each) => [each.observationId, each]));
  const seen = file.observations.filter(isStanding).flatMap(({ id }) => {
    const at = placed.get(id);
    return at === undefined || at.station === null ? [] : [between(at.station, at.toStation)];
  });
  const runs = convertersOf(file);
  const under = file.gaps.flatMap(({ runId, cause, fromCounter, toCounter }) => {
    const converter = runs.get(runId)?.converter;
    const [from, to] = [fromCounter, toCounter].map((counter) => converter?.toStation(counter));
    return cause === "under-water" && from && to ? [between(from.station, to.station)] : [];
  });
  return joinedStretches([...seen, ...under]);
}

/** Which of them lie within a stretch of pipe, each as far as it does; a point at an end does not. */
export function waterWithin(water: readonly Stretch[], pipe: Stretch): Stretch[] {
  return water.flatMap((each) => {
    const common = commonStretch(each, pipe);
    const isEnd =
      common?.from === common?.to && (common?.to === pipe.from || common?.to === pipe.to);
    return common === null || isEnd ? [] : [common];
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
