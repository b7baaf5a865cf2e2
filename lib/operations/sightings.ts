import type { TieIn } from "#lib/domain/facts/line.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { danglingReferences } from "#lib/domain/facts/references.ts";
import type { RowTable } from "#lib/domain/facts/row-table.ts";
import { attachSightings } from "#lib/domain/report/with-sightings.ts";
import { resight } from "#lib/domain/run/resight.ts";
import { assignSightings, type SightingAssignment } from "#lib/domain/run/sighting.ts";
import { chosenTieIns } from "#lib/domain/run/sighting-moves.ts";
import type { Act } from "./act.ts";

/** Tables from which it follows where a sighting lies. */
const PLACING: readonly RowTable[] = ["runs", "anchors", "observations"];

/**
 * Where runs, anchors or observations were saved: judges sightings anew that changed place, gives new
 * ones their tie-in, known or new; takes the tie-in off what is no tie-in any more; and lets go of
 * tie-ins that only a removed sighting had made. What a person told apart or joined stays so.
 */
export function followSightings(
  act: Act,
  file: LineFile,
  { table, before }: { table: RowTable; before: LineFile },
): LineFile {
  if (!PLACING.includes(table)) return file;
  const cleared = file.observations.map((seen) =>
    seen.kind === "tie-in" || seen.tieInId === null ? seen : { ...seen, tieInId: null },
  );
  const kept = letGo({ ...file, observations: cleared }, before);
  const chosen = chosenTieIns(before);
  const placed = resight(before, kept, {
    newId: act.newId,
    isFree: (tieIn) => !chosen.has(tieIn.id) && isOnlySightings(kept, tieIn),
  });
  return withSightings(act, placed);
}

/**
 * The file with every tie-in observation attached to a tie-in: to one that is known, or a new one.
 * The one that stands alone gets a new one in any case.
 */
export function withSightings(
  act: Act,
  file: LineFile,
  { alone = null }: { alone?: string | null } = {},
): LineFile {
  return attachSightings(file, assigns(act, file, alone));
}

/** New labels go on from all of the file's; with nothing known, nothing can be attached to it. */
function assigns(act: Act, file: LineFile, alone: string | null): SightingAssignment[] {
  if (alone === null) return assignSightings(file, act.newId);
  const seen = file.observations.filter(({ id }) => id === alone);
  const elsewhere = file.tieIns.map((tieIn) => ({ ...tieIn, parentId: tieIn.id }));
  return assignSightings({ ...file, observations: seen, tieIns: elsewhere }, act.newId);
}

/** Without the tie-ins that were no more than sightings and have none left. */
export function letGo(file: LineFile, before: LineFile): LineFile {
  const seenBefore = tieInsSeen(before);
  const seenNow = tieInsSeen(file);
  const tieIns = file.tieIns.filter(
    (tieIn) => !seenBefore.has(tieIn.id) || seenNow.has(tieIn.id) || !isOnlySightings(file, tieIn),
  );
  return tieIns.length === file.tieIns.length ? file : { ...file, tieIns };
}

function tieInsSeen({ observations }: LineFile): Set<string> {
  return new Set(observations.flatMap(({ tieInId }) => (tieInId === null ? [] : [tieInId])));
}

/** Nobody has said anything of it, and nothing in the file rests on it: sightings alone made it. */
export function isOnlySightings(file: LineFile, tieIn: TieIn): boolean {
  return isUnsaid(tieIn) && !isNamed(file, tieIn.id);
}

/** Nobody has said anything of it: it is no more than what a sighting made. */
function isUnsaid(tieIn: TieIn): boolean {
  return (
    tieIn.station === null &&
    tieIn.parentId === null &&
    tieIn.settledReason === "" &&
    tieIn.note === "" &&
    /^T\d+$/.test(tieIn.label)
  );
}

/** Something else in the file rests on it: a pairing, a test, a letter, a price, a waiver. */
function isNamed(file: LineFile, tieInId: string): boolean {
  if (file.waivers.some(({ holdKey }) => holdKey.split(":").includes(tieInId))) return true;
  const without = { ...file, tieIns: file.tieIns.filter(({ id }) => id !== tieInId) };
  return danglingReferences(without).some(
    ({ to, id, from }) => to === "tieIns" && id === tieInId && from !== "observations",
  );
}
