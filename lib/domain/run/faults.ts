import { remembered } from "../../remembered.ts";
import type { LineFile } from "../facts/line-file.ts";
import type { Fault } from "../facts/run.ts";
import type { Report } from "../findings/report.ts";
import type { Cft } from "../length/station.ts";

/** A fault of the pipe, however many runs saw it. */
export interface SeenFault {
  readonly observationId: string;
  /** Null where its kind was not noted. */
  readonly fault: Fault | null;
  /** The lower and the upper station; null: relative only. `to` is null for a point. */
  readonly from: Cft | null;
  readonly to: Cft | null;
  /** How far off its ends may be either way. */
  readonly off: Cft;
  /** Inches of standing water, as told; the deepest of those told. Null where nobody said. */
  readonly waterDepth: number | null;
}

interface Sighting extends SeenFault {
  readonly runId: string;
}

interface Merged extends Sighting {
  readonly runIds: readonly string[];
}

/**
 * The faults of the pipe from the main upstream, each with its lower station first. What two runs
 * saw of the same kind within their uncertainties is one fault, over the whole of both stretches;
 * what one run logged twice stays two.
 */
export function faultsSeen(
  file: Pick<LineFile, "observations">,
  report: Stations,
): readonly SeenFault[] {
  return faultsOf(report.stations, file.observations);
}

const faultsOf = remembered(
  (stations: Report["stations"], observations: LineFile["observations"]): readonly SeenFault[] => {
    const water = seenOf("water", { observations }, { stations });
    return seenOf("fault", { observations }, { stations }).map((fault) =>
      fault.fault === "belly"
        ? { ...fault, waterDepth: deepest([fault, ...water.filter((each) => isOver(fault, each))]) }
        : fault,
    );
  },
);

/** Standing water from the main upstream, one or several runs; what a belly holds is told by the belly. */
export function waterSeen(file: Pick<LineFile, "observations">, report: Stations): SeenFault[] {
  const bellies = faultsSeen(file, report).filter(({ fault }) => fault === "belly");
  return seenOf("water", file, report).filter(
    (water) => !bellies.some((belly) => isOver(belly, water)),
  );
}

type Stations = Pick<Report, "stations">;

function seenOf(
  what: "fault" | "water",
  { observations }: Pick<LineFile, "observations">,
  { stations }: Stations,
): SeenFault[] {
  const faults: Merged[] = [];
  const logged = new Map(observations.map((each) => [each.id, each]));
  const found = stations
    .flatMap((station) => sightingOf(what, logged.get(station.observationId), station))
    .toSorted((one, other) => lowerOf(one) - lowerOf(other));
  const farthest = Math.max(0, ...found.map(({ off }) => off));
  const kinds = new Map<Fault | null, { places: number[]; begin: number }>();
  for (const one of found) {
    const kind = kinds.get(one.fault) ?? { places: [], begin: 0 };
    kinds.set(one.fault, kind);
    // Sorted by where they begin: what ended before this one meets none of those that follow either.
    while (hasEnded(faults[kind.places[kind.begin] ?? -1], lowerOf(one) - farthest))
      kind.begin += 1;
    const at = kind.places.slice(kind.begin).find((place) => isSeenAgain(faults[place], one));
    const same = at === undefined ? undefined : faults[at];
    if (at === undefined || same === undefined) {
      kind.places.push(faults.length);
      faults.push({ ...one, runIds: [one.runId] });
    } else faults[at] = { ...joined(same, one), runIds: [...same.runIds, one.runId] };
  }
  return faults.map(({ observationId, fault, from, to, off, waterDepth }) => ({
    ...{ observationId, fault, from, to, off, waterDepth },
  }));
}

function hasEnded(one: Merged | undefined, by: number): boolean {
  if (one === undefined || one.from === null) return false;
  return (one.to ?? one.from) + one.off < by;
}

/** The same fault, and by a run that has not seen it yet. */
function isSeenAgain(one: Merged | undefined, other: Sighting): boolean {
  return one !== undefined && !one.runIds.includes(other.runId) && isSame(one, other);
}

function deepest(seen: readonly Pick<SeenFault, "waterDepth">[]): number | null {
  const told = seen.flatMap(({ waterDepth }) => waterDepth ?? []);
  return told.length === 0 ? null : Math.max(...told);
}

function sightingOf(
  kind: "fault" | "water",
  seen: LineFile["observations"][number] | undefined,
  { observationId, runId, station, toStation, uncertainty }: Report["stations"][number],
): Sighting[] {
  if (seen?.kind !== kind) return [];
  const ends = [station, toStation].flatMap((each) => each ?? []).toSorted((a, b) => a - b);
  const [from = null, to = null] = ends;
  const { fault, waterDepth } = seen;
  return [{ observationId, fault, from, to, runId, off: uncertainty ?? 0, waterDepth }];
}

function lowerOf({ from }: SeenFault): number {
  return from ?? Number.MAX_SAFE_INTEGER;
}

function isSame(one: Sighting, other: Sighting): boolean {
  return one.fault === other.fault && isOver(one, other);
}

/** Their stretches meet, allowing for how far off each may be. */
function isOver(one: SeenFault, other: SeenFault): boolean {
  if (one.from === null || other.from === null) return false;
  const slack = one.off + other.off;
  return other.from <= (one.to ?? one.from) + slack && one.from <= (other.to ?? other.from) + slack;
}

/** Two points are the first of them; anything else is the stretch over both. */
function joined(one: Sighting, other: Sighting): Sighting {
  const waterDepth = deepest([one, other]);
  if (one.to === null && other.to === null) return { ...one, waterDepth };
  const ends = [one.from, one.to, other.from, other.to].flatMap((each) => each ?? []);
  return {
    ...one,
    from: Math.min(...ends),
    to: Math.max(...ends),
    off: Math.max(one.off, other.off),
    waterDepth,
  };
}
