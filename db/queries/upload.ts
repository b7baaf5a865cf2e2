import { eq } from "drizzle-orm";
import { union } from "drizzle-orm/sqlite-core";
import type { Db } from "#db/open.ts";
import { forms, uploads, videos } from "#db/schema.ts";
import type { Upload } from "#lib/domain/facts/upload.ts";

/** A stored file by its id, which is unique over all lines. */
export function getUpload(db: Db, uploadId: string): (Upload & { readonly lineId: string }) | null {
  const row = db.select().from(uploads).where(eq(uploads.id, uploadId)).get();
  if (!row) return null;
  const { position: _position, ...upload } = row;
  return upload;
}

/** The hashes of every file that some line or form names: what a backup has to hold. */
export function listStoredHashes(db: Db): string[] {
  return union(
    db.select({ sha256: uploads.sha256 }).from(uploads),
    db.select({ sha256: forms.sha256 }).from(forms),
  )
    .all()
    .map((row) => row.sha256)
    .toSorted();
}

/** The hashes of every recording that some line names; its bytes need not be in this office's store. */
export function listVideoHashes(db: Db): string[] {
  return db
    .selectDistinct({ sha256: videos.sha256 })
    .from(videos)
    .orderBy(videos.sha256)
    .all()
    .map((row) => row.sha256);
}
