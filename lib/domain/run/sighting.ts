import type { Side, TieIn } from "../facts/line.ts";
import type { LineFile } from "../facts/line-file.ts";
import type { Observation } from "../facts/run.ts";
import type { StationedObservation } from "../findings/report.ts";
import { type Cft, toTenth, toTenthBetween } from "../length/station.ts";
import { stationObservations } from "./observe.ts";

type SightingFacts = Pick<LineFile, "runs" | "anchors" | "observations" | "tieIns">;

/** Which tie-in an observation is a sighting of. */
export interface SightingAssignment {
  readonly observationId: string;
  readonly tieInId: string;
  /** The tie-in to add, where none of those in the file was seen here; else null. */
  readonly tieIn: TieIn | null;
}

/** Where a tie-in lies and on which side, as far as its sightings or a person say. */
export interface TieInPlace {
  readonly station: Cft | null;
  readonly uncertainty: Cft | null;
  readonly side: Side;
  readonly sightings: readonly StationedObservation[];
  /** Farthest two sightings lie apart, less what their uncertainties allow; 0 where they agree. */
  readonly spread: Cft;
}

interface Seen {
  readonly seen: Observation;
  readonly at: StationedObservation;
}

interface Known {
  readonly tieIn: TieIn;
  readonly sightings: StationedObservation[];
}

/**
 * Gives every tie-in observation that is not yet a sighting of a tie-in the one that it shows:
 * within the two uncertainties and not on the other side, nearest pairs first; or a new one.
 * Runs go one after another; one run sees a tie-in once, so that two observations of one run are
 * two tie-ins. A relative-only observation always makes its own. Labels go on from the highest
 * `T` number, up the line.
 */
export function assignSightings(file: SightingFacts, newId: () => string): SightingAssignment[] {
  const placed = new Map(stationObservations(file).map((each) => [each.observationId, each]));
  const known = knownTieIns(file, placed);
  const open = openSightings(file, placed);
  let number = lastLabel(file);
  const assigned: SightingAssignment[] = [];
  for (const runId of new Set(open.map(({ seen }) => seen.runId))) {
    const inRun = open.filter(({ seen }) => seen.runId === runId);
    const attached = attach(inRun, known);
    for (const { seen, at } of inRun) {
      const found = attached.get(seen.id);
      if (found) {
        found.sightings.push(at);
        assigned.push({ observationId: seen.id, tieInId: found.tieIn.id, tieIn: null });
        continue;
      }
      number += 1;
      const tieIn = newTieIn(seen, { id: newId(), label: `T${number}`, side: at.side });
      known.push({ tieIn, sightings: [at] });
      assigned.push({ observationId: seen.id, tieInId: tieIn.id, tieIn });
    }
  }
  return assigned;
}

/** Every tie-in's sightings, by the tie-in's id. */
export function sightingsOf(
  file: Pick<LineFile, "observations">,
  stations: readonly StationedObservation[],
): Map<string, StationedObservation[]> {
  const placed = new Map(stations.map((each) => [each.observationId, each]));
  const sightings = new Map<string, StationedObservation[]>();
  for (const { id, tieInId } of file.observations) {
    const at = placed.get(id);
    if (tieInId === null || !at) continue;
    const list = sightings.get(tieInId);
    if (list) list.push(at);
    else sightings.set(tieInId, [at]);
  }
  return sightings;
}

/**
 * A tie-in's place: as a person set it (then exact), else the mean of its sightings weighted by
 * their uncertainties, never outside of them. The best sighting's uncertainty stays: errors of one counter do not
 * average out. Where sightings contradict one another it reaches all of them, since any may be right.
 */
export function placeTieIn(tieIn: TieIn, sightings: readonly StationedObservation[]): TieInPlace {
  const stationed = sightings.flatMap(({ station, uncertainty }) =>
    station === null || uncertainty === null ? [] : [{ station, uncertainty }],
  );
  const side = tieIn.side === "unknown" ? sideSeen(sightings) : tieIn.side;
  const common = { side, sightings, spread: spreadOf(stationed) };
  if (tieIn.station !== null) return { ...common, station: tieIn.station, uncertainty: 0 };
  if (stationed.length === 0) return { ...common, station: null, uncertainty: null };
  const weights = stationed.map(({ uncertainty }) => 1 / Math.max(uncertainty, 1) ** 2);
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const mean = stationed.reduce(
    (sum, { station }, index) => sum + (station * (weights[index] ?? 0)) / total,
    0,
  );
  const stations = stationed.map((each) => each.station);
  const station = toTenthBetween(mean, stations);
  const best = Math.min(...stationed.map((each) => each.uncertainty));
  const uncertainty = common.spread === 0 ? best : Math.max(best, farthest(station, stations));
  return { ...common, station, uncertainty };
}

function farthest(from: Cft, stations: readonly Cft[]): Cft {
  return Math.max(...stations.map((each) => Math.abs(each - from)));
}

/** Two independent uncertainties together. */
export function together(a: Cft, b: Cft): Cft {
  return toTenth(Math.hypot(a, b));
}

/** True unless one is on the left and the other on the right: the crown leans to neither. */
export function sidesAgree(a: Side, b: Side): boolean {
  return a === b || !LATERAL.has(a) || !LATERAL.has(b);
}

const LATERAL: ReadonlySet<Side> = new Set(["left", "right"]);

/** Tie-ins on the trunk: a run along the trunk sees no others. */
function knownTieIns(
  file: SightingFacts,
  placed: ReadonlyMap<string, StationedObservation>,
): Known[] {
  const sightings = sightingsOf(file, [...placed.values()]);
  return file.tieIns
    .filter((tieIn) => tieIn.parentId === null)
    .map((tieIn) => ({ tieIn, sightings: [...(sightings.get(tieIn.id) ?? [])] }));
}

/** Tie-in observations without a tie-in, up the line; relative-only ones last, by counter. */
function openSightings(
  file: SightingFacts,
  placed: ReadonlyMap<string, StationedObservation>,
): Seen[] {
  const runs = new Map(file.runs.map((run, index) => [run.id, index]));
  const open = file.observations.flatMap((seen) => {
    const at = placed.get(seen.id);
    return seen.kind === "tie-in" && seen.tieInId === null && at ? [{ seen, at }] : [];
  });
  const runOf = ({ seen }: Seen) => runs.get(seen.runId) ?? runs.size;
  const rank = ({ at }: Seen) => at.station ?? Number.MAX_SAFE_INTEGER;
  return open.sort(
    (a, b) => runOf(a) - runOf(b) || rank(a) - rank(b) || a.seen.counter - b.seen.counter,
  );
}

/** Pairs one run's sightings with tie-ins that the run has not seen yet, nearest pairs first. */
function attach(inRun: readonly Seen[], known: readonly Known[]): Map<string, Known> {
  const attached = new Map<string, Known>();
  const free = new Set(
    known.filter(({ sightings }) => sightings.every((at) => at.runId !== inRun[0]?.seen.runId)),
  );
  const pairs = inRun.flatMap((each) =>
    [...free].flatMap((tieIn) => {
      const distance = distanceTo(tieIn, each.at);
      return distance === null ? [] : [{ ...each, tieIn, distance }];
    }),
  );
  for (const { seen, tieIn } of pairs.sort((a, b) => a.distance - b.distance)) {
    if (attached.has(seen.id) || !free.delete(tieIn)) continue;
    attached.set(seen.id, tieIn);
  }
  return attached;
}

/** How far a sighting lies from a tie-in; null where it can't be the same one. */
function distanceTo(known: Known, at: StationedObservation): Cft | null {
  const place = placeTieIn(known.tieIn, known.sightings);
  if (place.station === null || at.station === null) return null;
  if (!sidesAgree(place.side, at.side)) return null;
  const distance = Math.abs(place.station - at.station);
  return distance <= together(place.uncertainty ?? 0, at.uncertainty ?? 0) ? distance : null;
}

function newTieIn(
  seen: Observation,
  { id, label, side }: { id: string; label: string; side: Side },
): TieIn {
  return {
    id,
    label,
    parentId: null,
    station: null,
    side,
    diameter: seen.diameter,
    material: seen.material,
    fitting: seen.fitting,
    kind: "unknown",
    propertyId: null,
    inactive: false,
    settledReason: "",
    settledBy: "",
    settledOn: null,
    ownerAccepted: false,
    note: "",
  };
}

/** The highest number that a tie-in has: the next one is called after it. */
export function lastLabel({ tieIns }: Pick<LineFile, "tieIns">): number {
  return tieIns.reduce((most, tieIn) => Math.max(most, labelNumber(tieIn.label)), 0);
}

function labelNumber(label: string): number {
  return Number(/^T(\d{1,6})$/i.exec(label.trim())?.[1] ?? 0);
}

/** The side that the sightings agree on; unknown where they contradict one another. */
function sideSeen(sightings: readonly StationedObservation[]): Side {
  const sides = new Set(sightings.map((each) => each.side));
  if (sides.has("left") && sides.has("right")) return "unknown";
  return (["left", "right", "crown"] as const).find((side) => sides.has(side)) ?? "unknown";
}

/** Whether two sightings of one tie-in contradict one another: one may be another tie-in. */
export function isContradicted(sightings: readonly StationedObservation[]): boolean {
  const stationed = sightings.flatMap(({ station, uncertainty }) =>
    station === null || uncertainty === null ? [] : [{ station, uncertainty }],
  );
  return spreadOf(stationed) > 0;
}

function spreadOf(stationed: readonly { station: Cft; uncertainty: Cft }[]): Cft {
  let worst = 0;
  for (const [index, a] of stationed.entries()) {
    for (const b of stationed.slice(index + 1)) {
      const allowed = together(a.uncertainty, b.uncertainty);
      worst = Math.max(worst, Math.abs(a.station - b.station) - allowed);
    }
  }
  return worst;
}
