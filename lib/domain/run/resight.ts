import type { TieIn } from "../facts/line.ts";
import type { LineFile } from "../facts/line-file.ts";
import type { Observation } from "../facts/run.ts";
import type { StationedObservation } from "../findings/report.ts";
import { stationObservations } from "./observe.ts";
import { assignSightings } from "./sighting.ts";

type SightingFile = Pick<LineFile, "runs" | "anchors" | "observations" | "tieIns">;

interface Resighting {
  readonly newId: () => string;
  /** Nobody has said anything of this tie-in and nothing rests on it: sightings alone made it. */
  readonly isFree: (tieIn: TieIn) => boolean;
}

/**
 * The file after sightings changed place or looks: a run was tied to the line, a reading was
 * corrected, a clock position came in later. Sightings that moved are judged anew where nothing
 * rests on their tie-in yet, so that one branch is not two because of the order of typing; a tie-in
 * that only they made keeps its name when no other takes them. What a tie-in had from a sighting
 * (side, size, material, fitting) follows that sighting; what was not known is filled.
 */
export function resight<F extends SightingFile>(before: F, after: F, how: Resighting): F {
  const places = { before: placesOf(before), after: placesOf(after) };
  const looks = withLooks(before, after, places);
  const moved = movedFrom(looks, places, how);
  if (moved.size === 0) return looks;
  return reassigned(looks, moved, how);
}

type Places = ReadonlyMap<string, StationedObservation>;

function placesOf(file: SightingFile): Places {
  return new Map(stationObservations(file).map((each) => [each.observationId, each]));
}

/** Tie-ins whose looks came from a sighting follow it. */
function withLooks<F extends SightingFile>(
  before: F,
  after: F,
  places: { before: Places; after: Places },
): F {
  const old = new Map(before.observations.map((seen) => [seen.id, seen]));
  const tieIns = after.tieIns.map((tieIn) =>
    after.observations
      .filter((seen) => seen.tieInId === tieIn.id)
      .reduce(
        (looking, seen) =>
          followed(looking, {
            was: looksOf(old.get(seen.id), places.before),
            is: looksOf(seen, places.after),
          }),
        tieIn,
      ),
  );
  const same = tieIns.every((tieIn, at) => tieIn === after.tieIns[at]);
  return same ? after : { ...after, tieIns };
}

type Looks = Pick<TieIn, "side" | "diameter" | "material" | "fitting">;

function looksOf(seen: Observation | undefined, places: Places): Looks {
  return {
    side: (seen && places.get(seen.id)?.side) ?? "unknown",
    diameter: seen?.diameter ?? null,
    material: seen?.material ?? "unknown",
    fitting: seen?.fitting ?? "unknown",
  };
}

function followed(tieIn: TieIn, { was, is }: { was: Looks; is: Looks }): TieIn {
  const follow = <T>(own: T, unknown: T, pair: { was: T; is: T }): T => {
    if (own === unknown) return pair.is;
    return own === pair.was && pair.is !== pair.was ? pair.is : own;
  };
  const next: TieIn = {
    ...tieIn,
    side: follow(tieIn.side, "unknown", { was: was.side, is: is.side }),
    diameter: follow(tieIn.diameter, null, { was: was.diameter, is: is.diameter }),
    material: follow(tieIn.material, "unknown", { was: was.material, is: is.material }),
    fitting: follow(tieIn.fitting, "unknown", { was: was.fitting, is: is.fitting }),
  };
  const fields = ["side", "diameter", "material", "fitting"] as const;
  return fields.every((field) => next[field] === tieIn[field]) ? tieIn : next;
}

/** Sightings that changed place on a tie-in that is free, with that tie-in. */
function movedFrom(
  file: SightingFile,
  places: { before: Places; after: Places },
  { isFree }: Resighting,
): Map<string, TieIn> {
  const tieIns = new Map(file.tieIns.map((tieIn) => [tieIn.id, tieIn]));
  return new Map(
    file.observations.flatMap((seen) => {
      const tieIn = tieIns.get(seen.tieInId ?? "");
      const was = places.before.get(seen.id);
      const is = places.after.get(seen.id);
      if (!tieIn || !was || !is || !isFree(tieIn)) return [];
      return was.station === is.station && was.side === is.side ? [] : [[seen.id, tieIn] as const];
    }),
  );
}

function reassigned<F extends SightingFile>(
  file: F,
  moved: ReadonlyMap<string, TieIn>,
  { newId }: Resighting,
): F {
  const observations = file.observations.map((seen) =>
    moved.has(seen.id) ? { ...seen, tieInId: null } : seen,
  );
  const seenStill = new Set(observations.flatMap(({ tieInId }) => tieInId ?? []));
  const formers = new Set([...moved.values()].map(({ id }) => id));
  const kept = file.tieIns.filter(({ id }) => !formers.has(id) || seenStill.has(id));
  const assigned = assignSightings({ ...file, observations, tieIns: kept }, newId);
  const given = new Map<string, string>();
  const keptIds = new Set(kept.map(({ id }) => id));
  const made = assigned.flatMap(({ observationId, tieIn }) => {
    if (tieIn === null) return [];
    const former = moved.get(observationId);
    const free = former !== undefined && !keptIds.has(former.id);
    if (free) keptIds.add(former.id);
    given.set(tieIn.id, free ? former.id : tieIn.id);
    return [free ? former : tieIn];
  });
  const tieInOf = new Map(
    assigned.map(({ observationId, tieInId }) => [observationId, given.get(tieInId) ?? tieInId]),
  );
  return {
    ...file,
    observations: observations.map((seen) => {
      const tieInId = tieInOf.get(seen.id);
      return tieInId === undefined ? seen : { ...seen, tieInId };
    }),
    tieIns: inOldOrder([...kept, ...made], file.tieIns),
  };
}

function inOldOrder(tieIns: readonly TieIn[], before: readonly TieIn[]): TieIn[] {
  const place = new Map(before.map(({ id }, at) => [id, at]));
  const last = before.length;
  return tieIns.toSorted((a, b) => (place.get(a.id) ?? last) - (place.get(b.id) ?? last));
}
