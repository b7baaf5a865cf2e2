import type { Db } from "#db/open.ts";
import type { Claim, LeaseQueue } from "#db/queries/lease-queue.ts";
import type { Day, Instant } from "#lib/domain/time/day.ts";
import type { ImapSettings, SmtpSettings } from "#lib/env.ts";
import type { Act } from "./act.ts";

/** Where work is done that no request waits for. */
export interface Workplace {
  readonly db: Db;
  readonly dataFolder: string;
  /** Names this worker, so that what another took over is not written twice. */
  readonly worker: string;
  readonly now: () => Instant;
  readonly today: () => Day;
  readonly newId: () => string;
  /** Null: messages are written to a folder. */
  readonly smtp: SmtpSettings | null;
  /** Empty: the office's own address. */
  readonly mailFrom: string;
  /** Null: nobody reads a mailbox. */
  readonly imap: ImapSettings | null;
  /** How this office is reached from outside, for links in mail; null: nobody set it. */
  readonly address: string | null;
}

/** A worker that is silent for this long is taken for dead. */
const LEASE_MINUTES = 2;
const BEAT_MS = 20_000;

/**
 * Takes the next piece of a queue and works on it, saying again and again meanwhile that it is still
 * being done; says whether there was one. Nothing waits longer than `longestWait` minutes.
 */
export async function workOnNext<Piece extends { readonly id: string }>(
  place: Workplace,
  queue: LeaseQueue<Piece, never>,
  { longestWait, work }: { longestWait: number; work: (piece: Piece) => Promise<void> },
): Promise<boolean> {
  const claim = claimOf(place);
  const latest = minutesAfter(claim.now, longestWait);
  const piece = queue.claim(place.db, { ...claim, latest });
  if (piece === null) return false;
  const beat = setInterval(() => queue.keep(place.db, piece.id, claimOf(place)), BEAT_MS);
  try {
    await work(piece);
  } finally {
    clearInterval(beat);
  }
  return true;
}

function claimOf({ worker, now }: Workplace): Claim {
  const at = now();
  return { worker, now: at, until: minutesAfter(at, LEASE_MINUTES) };
}

/** The worker's act in the name of who asked for the work. */
export function actFor(place: Workplace, db: Db, name: string): Act {
  return {
    db,
    actor: { id: "worker", name, role: "worker" },
    now: place.now(),
    today: place.today(),
    dataFolder: place.dataFolder,
    newId: place.newId,
  };
}

export function minutesAfter(at: Instant, minutes: number): Instant {
  return new Date(Date.parse(at) + minutes * 60_000).toISOString();
}
