import type { LineFile } from "../facts/line-file.ts";
import type { Observation } from "../facts/run.ts";
import { assignSightings, type SightingAssignment } from "../run/sighting.ts";

/** The file with every tie-in that was seen attached to a tie-in: one that is known, or a new one. */
export function withSightings(file: LineFile, newId: () => string): LineFile {
  return attachSightings(file, assignSightings(file, newId));
}

/** The file with sightings attached as said; new tie-ins stand behind those that were there. */
export function attachSightings(
  file: LineFile,
  assignments: readonly SightingAssignment[],
): LineFile {
  if (assignments.length === 0) return file;
  const tieInOf = new Map(assignments.map((each) => [each.observationId, each.tieInId]));
  const fresh = assignments.flatMap(({ tieIn }) => (tieIn === null ? [] : [tieIn]));
  return {
    ...file,
    observations: file.observations.map((seen): Observation => {
      const tieInId = tieInOf.get(seen.id);
      return tieInId === undefined ? seen : { ...seen, tieInId };
    }),
    tieIns: [...file.tieIns, ...fresh],
  };
}

/** Ids for what is added to a file that was written by hand: the same for the same file. */
export function idsBeside(file: LineFile): () => string {
  const taken = new Set(file.tieIns.map(({ id }) => id));
  let number = 0;
  return () => {
    do number += 1;
    while (taken.has(`seen-${number}`));
    return `seen-${number}`;
  };
}
