import { and, eq, gt, lt, lte, or, sql } from "drizzle-orm";
import type { AnySQLiteColumn, SQLiteTable } from "drizzle-orm/sqlite-core";
import type { Db } from "#db/open.ts";
import type { Instant } from "#lib/domain/time/day.ts";

/** Who takes a piece of work, when, and until when it is theirs. */
export interface Claim {
  readonly worker: string;
  readonly now: Instant;
  /** The longest that anybody may have it: what is held for longer was claimed by another clock. */
  readonly until: Instant;
}

/** A table of work: what waits has a time for its next try, what is worked on a worker and a lease. */
type WorkTable = SQLiteTable &
  Record<"id" | "state" | "nextTryAt" | "leaseUntil" | "lockedBy" | "attempts", AnySQLiteColumn>;

export interface LeaseQueue<Piece, End extends object> {
  /**
   * Takes the next piece that waits, or whose worker went silent; null where there is none. Nothing is
   * put off beyond `latest`: what is was put off before the clock was set back, and is due.
   */
  readonly claim: (db: Db, claim: Claim & { readonly latest: Instant }) => Piece | null;
  /** Keeps a piece for longer, while it is still this worker's. */
  readonly keep: (db: Db, id: string, claim: Claim) => void;
  /** What a try came to; false where the piece is no longer this worker's, so that nothing is written twice. */
  readonly end: (
    db: Db,
    mine: { readonly id: string; readonly worker: string },
    end: End,
  ) => boolean;
}

interface WorkWords<Piece> {
  readonly get: (db: Db, id: string) => Piece | null;
  readonly held: string;
  readonly silent?: object;
}

/**
 * Work that several workers share without doing a piece twice: each is theirs for a while, and longer
 * as long as they say so. `held` is the state of what is worked on; `silent` is written on a piece
 * whose last worker never said what became of it.
 */
export function leaseQueue<Piece, End extends object>(
  table: WorkTable,
  { get, held, silent = {} }: WorkWords<Piece>,
): LeaseQueue<Piece, End> {
  const set = (db: Db, change: object) => db.update(table).set(change);
  const isMine = (id: string, worker: string) =>
    and(eq(table.id, id), eq(table.state, held), eq(table.lockedBy, worker));

  function isDue({ now, until, latest }: Claim & { readonly latest: Instant }) {
    const { state, nextTryAt, leaseUntil } = table;
    return or(
      and(eq(state, "waiting"), or(lte(nextTryAt, now), gt(nextTryAt, latest))),
      and(eq(state, held), or(lt(leaseUntil, now), gt(leaseUntil, until))),
    );
  }

  return {
    claim: (db, claim) =>
      db.transaction(
        (one) => {
          const due = one.select({ id: table.id, state: table.state }).from(table);
          const next = due.where(isDue(claim)).orderBy(table.nextTryAt, sql`rowid`).limit(1).get();
          if (next === undefined) return null;
          const id = String(next.id);
          set(one, {
            ...(next.state === held ? silent : {}),
            state: held,
            lockedBy: claim.worker,
            leaseUntil: claim.until,
            attempts: sql`${table.attempts} + 1`,
          })
            .where(eq(table.id, id))
            .run();
          return get(one, id);
        },
        { behavior: "immediate" },
      ),
    keep: (db, id, { worker, until }) => {
      set(db, { leaseUntil: until }).where(isMine(id, worker)).run();
    },
    end: (db, { id, worker }, end) => {
      const free = { ...end, lockedBy: null, leaseUntil: null };
      return set(db, free).where(isMine(id, worker)).run().changes > 0;
    },
  };
}
