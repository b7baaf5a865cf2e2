import type { LineFile } from "../facts/line-file.ts";
import type { Report, StationedObservation } from "../findings/report.ts";
import { type Cft, formatFeet, plainFeet } from "../length/station.ts";
import { scopeInForce } from "../sharing/scope-in-force.ts";
import { reachId } from "./bands.ts";
import { loadId, slopeId } from "./capacity-band.ts";
import type { StripSpot } from "./drawing.ts";

/** Half a foot to each side of what has no length of its own. */
const NARROW: Cft = 50;

/**
 * Where the rows of the tables lie on the line, under the ids that the tables use: observations,
 * reaches, crossings, scope items. What has no station, or concerns the whole line, has no spot.
 */
export function spotsOf(file: LineFile, report: Report): StripSpot[] {
  return [
    ...seenSpots(file, report),
    ...runSpots(report),
    ...reachSpots(report),
    ...capacitySpots(report),
    ...levelSpots(report),
    ...crossingSpots(file),
    ...scopeSpots(file, report),
  ];
}

function seenSpots(file: LineFile, report: Report): StripSpot[] {
  const stations = new Map(report.stations.map((one) => [one.observationId, one]));
  const tieIns = new Map(
    report.tieIns.flatMap((found) =>
      found.sightings.map((seen) => [seen.observationId, found.tieIn.id] as const),
    ),
  );
  return file.observations.flatMap((seen) => {
    const found = stations.get(seen.id);
    if (found === undefined || found.station === null) return [];
    const { from, to } = stretchOf(found.station, found);
    const note = seen.note === "" ? "" : `: ${seen.note}`;
    return [
      {
        id: seen.id,
        from,
        to,
        markId: tieIns.get(seen.id) ?? null,
        sentence: `Seen at ${formatFeet(found.station)}${note}.`,
      },
    ];
  });
}

function stretchOf(station: Cft, { toStation }: StationedObservation): { from: Cft; to: Cft } {
  if (toStation === null) return around(station);
  return { from: Math.min(station, toStation), to: Math.max(station, toStation) };
}

function around(station: Cft): { from: Cft; to: Cft } {
  return { from: station - NARROW, to: station + NARROW };
}

function runSpots(report: Report): StripSpot[] {
  return report.runCoverage.flatMap(({ runId, spans, sentence }) => {
    if (spans.length === 0) return [];
    const from = Math.min(...spans.map((span) => span.from));
    const to = Math.max(...spans.map((span) => span.to));
    return [{ id: runId, from, to, markId: null, sentence }];
  });
}

function reachSpots(report: Report): StripSpot[] {
  return report.reaches.map((reach) => ({
    id: reachId(reach),
    from: reach.from,
    to: reach.to,
    markId: null,
    sentence:
      `The reach from ${plainFeet(reach.from)} to ${formatFeet(reach.to)}. ${reach.reason}`.trim(),
  }));
}

function capacitySpots({ capacity }: Report): StripSpot[] {
  const slopes = capacity.slopes.map((found) => {
    const { from, to, sentence } = found;
    return { id: slopeId(found), from, to, markId: null, sentence };
  });
  const loads = capacity.reaches.flatMap((reach) => {
    const { from, to, load } = reach;
    if (load === null || load.verdict === "nothing-counted") return [];
    return [{ id: loadId(reach), from, to, markId: null, sentence: load.sentence }];
  });
  return [...slopes, ...loads];
}

function levelSpots({ capacity }: Report): StripSpot[] {
  return capacity.levels.map(({ levelId, station, depth }) => ({
    id: levelId,
    ...around(station),
    markId: null,
    sentence: `Level at ${formatFeet(station)}${depth === null ? "" : `, ${formatFeet(depth)} deep`}.`,
  }));
}

function crossingSpots(file: LineFile): StripSpot[] {
  return file.crossings.map(({ id, from, to, propertyId }) => {
    const lot = file.properties.find((one) => one.id === propertyId)?.address.street || "a lot";
    const sentence = `Crosses ${lot} from ${plainFeet(from)} to ${formatFeet(to)}.`;
    return { id, from, to, markId: null, sentence };
  });
}

function scopeSpots(file: LineFile, report: Report): StripSpot[] {
  return scopeInForce(file).flatMap((item): StripSpot[] => {
    const { id, title, from, to, tieInId } = item;
    if (tieInId !== null) {
      const station = report.tieIns.find((one) => one.tieIn.id === tieInId)?.station ?? null;
      if (station === null) return [];
      return [{ id, ...around(station), markId: tieInId, sentence: `${title}, on a branch.` }];
    }
    if (from === null) return [];
    if (to === null) {
      const sentence = `${title}, at ${formatFeet(from)}.`;
      return [{ id, ...around(from), markId: null, sentence }];
    }
    const sentence = `${title}, ${plainFeet(from)} to ${formatFeet(to)}.`;
    return [{ id, from, to, markId: null, sentence }];
  });
}
