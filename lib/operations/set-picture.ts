import { countSave } from "#db/queries/revision.ts";
import { updateRow } from "#db/queries/row.ts";
import { nameRow } from "#lib/domain/facts/references.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { changeLine, find, refuse } from "./change.ts";

interface Picture {
  readonly lineId: string;
  readonly observationId: string;
  /** A stored picture of the line; null takes the picture away from the observation. */
  readonly uploadId: string | null;
}

/** Gives an observation its picture: a still of the recording, or a photograph. */
export function setPicture(
  act: Act,
  { lineId, observationId, uploadId }: Picture,
): Result<null, Refusal> {
  const deal = { lineId, deed: "record-the-field", action: "set-picture" } as const;
  return changeLine(act, deal, (file) => {
    const seen = find(file.observations, observationId, {
      path: "observationId",
      what: "the observation",
    });
    if (!seen.ok) return seen;
    const upload = file.uploads.find((each) => each.id === uploadId);
    if (uploadId !== null && upload === undefined)
      return refuse("not-found", "uploadId", "the picture");
    if (upload?.type === "application/pdf")
      return refuse("bad-value", "uploadId", "A photo must be a JPEG or PNG");
    const before = seen.value;
    const name = nameRow(file, "observations", observationId);
    return ok({
      value: null,
      sentence: before.pictureId === uploadId ? null : sentenceOf(name, uploadId),
      detail: { id: observationId, before: before.pictureId, after: uploadId },
      write: (db) => {
        updateRow(db, "observations", { lineId, row: { ...before, pictureId: uploadId } });
        countSave(db, { lineId, table: "observations", by: act.actor.name, at: act.now });
      },
    });
  });
}

function sentenceOf(name: string, uploadId: string | null): string {
  return uploadId === null ? `Removed the photo from ${name}.` : `Added a photo to ${name}.`;
}
