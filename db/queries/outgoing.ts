import { and, count, eq, gt, inArray, sql } from "drizzle-orm";
import type { Db } from "#db/open.ts";
import { outbox } from "#db/schema.ts";
import { MAYBE_TWICE, type Outgoing } from "#lib/domain/notices/outgoing.ts";
import type { Instant } from "#lib/domain/time/day.ts";
import { leaseQueue } from "./lease-queue.ts";

const COLUMNS = {
  id: outbox.id,
  lineId: outbox.lineId,
  noticeId: outbox.noticeId,
  deliveryId: outbox.deliveryId,
  entryId: outbox.entryId,
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

/** The message that went out under this Message-ID. */
export function getOutgoingByMessageId(db: Db, messageId: string): Outgoing | null {
  return db.select(COLUMNS).from(outbox).where(eq(outbox.messageId, messageId)).get() ?? null;
}

/** How many messages went out after this moment. */
export function countSentSince(db: Db, after: Instant): number {
  const sent = db.select({ sent: count() }).from(outbox);
  return sent.where(and(eq(outbox.state, "sent"), gt(outbox.sentAt, after))).get()?.sent ?? 0;
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

/** Keeps the paper that went out with a message, so that a further try brings the same. */
export function keepOutgoingPaper(
  db: Db,
  { id, uploadId }: { id: string; uploadId: string },
): void {
  db.update(outbox).set({ uploadId }).where(eq(outbox.id, id)).run();
}

/** The messages that wait to be sent. */
export const outgoingQueue = leaseQueue<
  Outgoing,
  | { readonly state: "sent"; readonly problem: string; readonly sentAt: Instant }
  | { readonly state: "failed"; readonly problem: string }
  | { readonly state: "waiting"; readonly problem: string; readonly nextTryAt: Instant }
>(outbox, { get: getOutgoing, held: "sending", silent: { problem: MAYBE_TWICE } });
