import { and, eq, gt, inArray, lt, lte, or, sql } from "drizzle-orm";
import type { Db } from "#db/open.ts";
import { outbox } from "#db/schema.ts";
import { MAYBE_TWICE, type Outgoing } from "#lib/domain/notices/outgoing.ts";
import type { Instant } from "#lib/domain/time/day.ts";
import type { Claim } from "./job.ts";

const COLUMNS = {
  id: outbox.id,
  lineId: outbox.lineId,
  noticeId: outbox.noticeId,
  deliveryId: outbox.deliveryId,
  uploadId: outbox.uploadId,
  toAddress: outbox.toAddress,
  toName: outbox.toName,
  subject: outbox.subject,
  text: outbox.text,
  messageId: outbox.messageId,
  state: outbox.state,
  attempts: outbox.attempts,
  nextTryAt: outbox.nextTryAt,
  problem: outbox.problem,
  createdAt: outbox.createdAt,
  sentAt: outbox.sentAt,
};

function getOutgoing(db: Db, id: string): Outgoing | null {
  return db.select(COLUMNS).from(outbox).where(eq(outbox.id, id)).get() ?? null;
}

/** The messages of a line, oldest first: what waits, what went, what failed and why. */
export function listOutgoing(db: Db, lineId: string): Outgoing[] {
  return db
    .select(COLUMNS)
    .from(outbox)
    .where(eq(outbox.lineId, lineId))
    .orderBy(outbox.createdAt, sql`rowid`)
    .all();
}

/** Messages that still wait or are being sent. */
export function listUnsentIds(db: Db): string[] {
  const unsent = db.select({ id: outbox.id }).from(outbox);
  return unsent
    .where(inArray(outbox.state, ["waiting", "sending"]))
    .all()
    .map(({ id }) => id);
}

export function insertOutgoing(db: Db, message: Outgoing): void {
  db.insert(outbox).values(message).run();
}

/**
 * Takes the next message that waits, or whose worker went silent; null where there is none. No
 * message is put off beyond `latest`: one that is was put off before the clock was set back, and is due.
 */
export function claimOutgoing(
  db: Db,
  { worker, now, until, latest }: Claim & { readonly latest: Instant },
): Outgoing | null {
  return db.transaction(
    (one) => {
      const next = one
        .select({ id: outbox.id, state: outbox.state, problem: outbox.problem })
        .from(outbox)
        .where(
          or(
            and(
              eq(outbox.state, "waiting"),
              or(lte(outbox.nextTryAt, now), gt(outbox.nextTryAt, latest)),
            ),
            and(
              eq(outbox.state, "sending"),
              or(lt(outbox.leaseUntil, now), gt(outbox.leaseUntil, until)),
            ),
          ),
        )
        .orderBy(outbox.nextTryAt, sql`rowid`)
        .limit(1)
        .get();
      if (!next) return null;
      one
        .update(outbox)
        .set({
          state: "sending",
          lockedBy: worker,
          leaseUntil: until,
          attempts: sql`${outbox.attempts} + 1`,
          // Whoever had it did not say what became of it.
          problem: next.state === "sending" ? MAYBE_TWICE : next.problem,
        })
        .where(eq(outbox.id, next.id))
        .run();
      return getOutgoing(one, next.id);
    },
    { behavior: "immediate" },
  );
}

/** Keeps a message for longer, while it is still this worker's. */
export function keepOutgoing(db: Db, id: string, { worker, until }: Claim): void {
  db.update(outbox).set({ leaseUntil: until }).where(isMine(id, worker)).run();
}

/** What a try came to; false where the message is no longer this worker's. */
export function endTry(
  db: Db,
  { id, worker }: { id: string; worker: string },
  end:
    | { readonly state: "sent"; readonly problem: string; readonly sentAt: Instant }
    | { readonly state: "failed"; readonly problem: string }
    | { readonly state: "waiting"; readonly problem: string; readonly nextTryAt: Instant },
): boolean {
  const ended = db
    .update(outbox)
    .set({ ...end, lockedBy: null, leaseUntil: null })
    .where(isMine(id, worker))
    .run();
  return ended.changes > 0;
}

function isMine(id: string, worker: string) {
  return and(eq(outbox.id, id), eq(outbox.state, "sending"), eq(outbox.lockedBy, worker));
}
