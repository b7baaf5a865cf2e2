import { and, eq } from "drizzle-orm";
import type { Db } from "#db/open.ts";
import { videos } from "#db/schema.ts";
import type { Video } from "#lib/domain/facts/video.ts";

type StoredVideo = Pick<Video, "name" | "sha256" | "bytes" | "type">;

/** A run's recording as it is stored, or null: asked for again with every piece that is played. */
export function getVideoOfRun(
  db: Db,
  { lineId, runId }: { readonly lineId: string; readonly runId: string },
): StoredVideo | null {
  const { name, sha256, bytes, type } = videos;
  return (
    db
      .select({ name, sha256, bytes, type })
      .from(videos)
      .where(and(eq(videos.lineId, lineId), eq(videos.runId, runId)))
      .get() ?? null
  );
}
