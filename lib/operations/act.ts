import type { Db } from "#db/open.ts";
import type { ActorRole } from "#lib/domain/facts/user.ts";
import type { Day, Instant } from "#lib/domain/time/day.ts";

export interface Actor {
  readonly id: string;
  readonly name: string;
  readonly role: ActorRole;
}

/** Who acts, when, on which database: the first argument of every operation. */
export interface Act {
  readonly db: Db;
  readonly actor: Actor;
  readonly now: Instant;
  readonly today: Day;
  /** Folder of stored files. */
  readonly dataFolder: string;
  readonly newId: () => string;
}

/** Why an operation was refused. Nothing was written. */
export interface Refusal {
  readonly reason: RefusalReason;
  /** The field or row that caused it, as `rows.3.station`. */
  readonly path: string;
  /** What was found or wanted, to complete the sentence. */
  readonly detail: string;
}

const REFUSAL_REASONS = [
  "not-allowed",
  "not-found",
  "changed-meanwhile",
  "bad-value",
  "missing-value",
  "already-there",
  "held",
  "in-use",
  "frozen",
  "too-large",
  "wrong-type",
  "wrong-password",
  "too-many-tries",
  "not-in-this-state",
] as const;
export type RefusalReason = (typeof REFUSAL_REASONS)[number];
