import { insertRow } from "#db/queries/row.ts";
import type { Upload } from "#lib/domain/facts/upload.ts";
import { storeFile } from "#lib/storage/store.ts";
import type { Act } from "./act.ts";

interface MadePdf {
  readonly lineId: string;
  readonly name: string;
  readonly bytes: Uint8Array;
  readonly note: string;
}

/** Stores a PDF that was made here; `enter` puts it into the line's file. */
export async function keepPdf(
  act: Act,
  { lineId, name, bytes, note }: MadePdf,
): Promise<{ upload: Upload; enter: (act: Act) => void }> {
  const stored = await storeFile(act.dataFolder, once(bytes), {
    declared: bytes.byteLength,
    limit: Number.MAX_SAFE_INTEGER,
  });
  if (!stored.ok) throw new Error(`A PDF could not be stored: ${stored.error.detail}`);
  const upload: Upload = {
    id: act.newId(),
    name,
    ...stored.value,
    addedBy: act.actor.name,
    addedAt: act.now,
    note,
  };
  return { upload, enter: ({ db }) => insertRow(db, "uploads", { lineId, row: upload }) };
}

async function* once(bytes: Uint8Array): AsyncGenerator<Uint8Array> {
  yield bytes;
}
