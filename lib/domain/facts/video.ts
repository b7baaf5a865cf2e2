import type { Instant } from "../time/day.ts";

export const VIDEO_TYPES = ["video/mp4", "video/webm"] as const;
export type VideoType = (typeof VIDEO_TYPES)[number];

/**
 * The recording of a run, one for each run. Its bytes are stored by hash and are no part of the
 * line file, which only names them.
 */
export interface Video {
  readonly id: string;
  readonly runId: string;
  readonly name: string;
  readonly type: VideoType;
  readonly bytes: number;
  readonly sha256: string;
  readonly addedBy: string;
  readonly addedAt: Instant;
  readonly note: string;
}

/** Seconds into a recording as a player shows them: `2:58`, `62:58`. */
export function videoTime(seconds: number): string {
  const minutes = Math.floor(seconds / 60);
  return `${minutes}:${String(Math.floor(seconds % 60)).padStart(2, "0")}`;
}
