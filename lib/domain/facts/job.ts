import type { Instant } from "../time/day.ts";

export const JOB_KINDS = [
  "letters",
  "mailing",
  "labels",
  "door-hangers",
  "packet",
  "as-built",
  "close-out",
  "statements",
  "accounts",
  "agreement",
  "form",
  "corrections",
  "fees",
  "declaration",
] as const;
export type JobKind = (typeof JOB_KINDS)[number];

export const JOB_STATES = ["waiting", "running", "done", "failed"] as const;
type JobState = (typeof JOB_STATES)[number];

/** One PDF to be made outside of any request. */
export interface Job {
  readonly id: string;
  readonly lineId: string;
  readonly kind: JobKind;
  /**
   * For letters: which ones, in this order; for mailings, labels and door hangers: which, for labels
   * the kind of sheet first; for statements and accounts: whose, by property; for a form:
   * which; for corrections: of which round; for fees: of which permit; for declarations: of which
   * deliveries.
   */
  readonly subjectIds: readonly string[];
  readonly state: JobState;
  readonly attempts: number;
  /** Why it failed, in words; empty unless it did. */
  readonly problem: string;
  /** The PDF, once it is done. */
  readonly uploadId: string | null;
  readonly by: string;
  readonly createdAt: Instant;
  readonly endedAt: Instant | null;
}
