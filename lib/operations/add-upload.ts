import { getLine } from "#db/queries/line.ts";
import { insertRow } from "#db/queries/row.ts";
import type { Upload } from "#lib/domain/facts/upload.ts";
import { mayDo } from "#lib/domain/facts/user.ts";
import { ok, type Result } from "#lib/result.ts";
import type { StoredFile } from "#lib/storage/store.ts";
import type { Act, Refusal } from "./act.ts";
import { changeLine, refuse } from "./change.ts";

interface NewUpload {
  readonly lineId: string;
  /** As the person's machine calls it. */
  readonly name: string;
  readonly stored: StoredFile;
  readonly note: string;
}

/** Whether somebody may add files to a line: asked before a long upload is taken in. */
export function mayAddUpload(act: Act, lineId: string): Result<null, Refusal> {
  if (!mayDo(act.actor.role, "record-the-field")) return refuse("not-allowed");
  return getLine(act.db, lineId) === null ? refuse("not-found", "lineId", "the line") : ok(null);
}

/** Puts a stored file into the line's file. */
export function addUpload(
  act: Act,
  { lineId, name, stored, note }: NewUpload,
): Result<{ uploadId: string }, Refusal> {
  const deal = { lineId, deed: "record-the-field", action: "add-upload" } as const;
  return changeLine(act, deal, () => {
    const upload: Upload = {
      id: act.newId(),
      name: plainName(name),
      type: stored.type,
      bytes: stored.bytes,
      sha256: stored.sha256,
      addedBy: act.actor.name,
      addedAt: act.now,
      note,
    };
    return ok({
      value: { uploadId: upload.id },
      sentence: `Added the file ${upload.name}.`,
      detail: { after: upload },
      write: (db) => insertRow(db, "uploads", { lineId, row: upload }),
    });
  });
}

/** The last part of a path, without what no file name holds. */
export function plainName(name: string): string {
  const last = name.split(/[/\\]/).at(-1) ?? "";
  const plain = last.replace(/\p{Cc}/gu, "").trim();
  return plain === "" ? "file" : plain.slice(0, 200);
}
