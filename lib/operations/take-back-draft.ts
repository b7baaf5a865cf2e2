import { updateRow } from "#db/queries/row.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { DraftDecision, Narration } from "#lib/domain/facts/narration.ts";
import { nameRow } from "#lib/domain/facts/references.ts";
import { err, ok, type Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { changeLine, find, refuse } from "./change.ts";
import { writeTables } from "./row-writes.ts";
import { followSightings } from "./sightings.ts";

interface TakeBack {
  readonly lineId: string;
  readonly narrationId: string;
  /** The draft's key. */
  readonly key: string;
}

const TABLES = ["observations", "gaps", "tieIns"] as const;

/**
 * Opens a drafted row again: what was made of it is removed from the log, unless something rests on
 * it by now; a dropped one can be decided anew.
 */
export function takeBackDraft(
  act: Act,
  { lineId, narrationId, key }: TakeBack,
): Result<null, Refusal> {
  const deal = { lineId, deed: "record-the-field", action: "take-back-draft" } as const;
  return changeLine(act, deal, (file) => {
    const narration = find(file.narrations, narrationId, {
      path: "narrationId",
      what: "the transcript",
    });
    if (!narration.ok) return narration;
    const decision = narration.value.decided.find((each) => each.key === key);
    if (decision === undefined) return refuse("not-found", "key", "the decision on this row");
    const after = without(act, file, decision);
    if (!after.ok) return after;
    const row: Narration = {
      ...narration.value,
      decided: narration.value.decided.filter((each) => each.key !== key),
    };
    return ok({
      value: null,
      sentence: sentenceOf(file, narration.value, decision),
      detail: { narrationId, before: decision },
      write: (db) => {
        writeTables({ ...act, db }, { before: file, after: after.value, tables: TABLES });
        updateRow(db, "narrations", { lineId, row });
      },
    });
  });
}

function without(
  act: Act,
  file: LineFile,
  { observationId }: DraftDecision,
): Result<LineFile, Refusal> {
  const seen = file.observations.find(({ id }) => id === observationId);
  if (seen === undefined)
    return ok({ ...file, gaps: file.gaps.filter(({ id }) => id !== observationId) });
  if (seen.pictureId !== null)
    return refuse("in-use", "key", `${nameRow(file, "observations", seen.id)} has a picture`);
  const observations = file.observations.filter(({ id }) => id !== seen.id);
  const after = followSightings(
    act,
    { ...file, observations },
    { table: "observations", before: file },
  );
  const tieIn = after.tieIns.find(({ id }) => id === seen.tieInId);
  const others = after.observations.some(({ tieInId }) => tieInId === seen.tieInId);
  if (tieIn === undefined || others) return ok(after);
  const name = nameRow(file, "tieIns", tieIn.id);
  return err({
    reason: "in-use",
    path: "key",
    detail: `${name} has only this sighting and is used elsewhere in the file`,
  });
}

function sentenceOf(
  file: LineFile,
  { runId }: Narration,
  { state, observationId }: DraftDecision,
): string {
  const run = nameRow(file, "runs", runId);
  if (state === "dropped") return `Undid dropping a row drafted for ${run}.`;
  const list = file.gaps.some(({ id }) => id === observationId) ? "gaps" : "observations";
  const there = file[list].some(({ id }) => id === observationId);
  const name = there ? nameRow(file, list, observationId ?? "") : "a row that was gone already";
  return `Removed from the log of ${run}: ${name}, as drafted from what was said.`;
}
