import type { Instant } from "../time/day.ts";

/** What a technician said while the camera ran, as it was brought in; never changed afterwards. */
export interface Narration {
  readonly id: string;
  readonly runId: string;
  /** The transcript as pasted or uploaded: WebVTT, SRT, lines with m:ss, or plain text. */
  readonly text: string;
  readonly addedBy: string;
  readonly addedAt: Instant;
  /** What a person made of each drafted row; the drafts follow from the text. */
  readonly decided: readonly DraftDecision[];
}

/** Accepted as an observation (perhaps mended), or dropped. */
export interface DraftDecision {
  /** The draft's key: stable for the same text. */
  readonly key: string;
  readonly state: "accepted" | "dropped";
  /** The observation that was made of it; null where it was dropped. */
  readonly observationId: string | null;
}
