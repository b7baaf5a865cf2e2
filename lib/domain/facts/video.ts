import { instant, oneOf, type RowOf, ref, row, sha256, whole, words } from "./field.ts";

const VIDEO_TYPES = ["video/mp4", "video/webm"] as const;
export type VideoType = (typeof VIDEO_TYPES)[number];

/**
 * The recording of a run, one for each run. Its bytes are stored by hash and are no part of the
 * line file, which only names them.
 */
export type Video = RowOf<typeof VIDEO>;

export const VIDEO = row({
  one: "video",
  fields: {
    runId: ref("runs"),
    name: words,
    type: oneOf(VIDEO_TYPES),
    bytes: whole(Number.MAX_SAFE_INTEGER),
    sha256,
    addedBy: words,
    addedAt: instant,
    note: words,
  },
});

/** Seconds into a recording as a player shows them: `2:58`, `62:58`. */
export function videoTime(seconds: number): string {
  const minutes = Math.floor(seconds / 60);
  return `${minutes}:${String(Math.floor(seconds % 60)).padStart(2, "0")}`;
}
