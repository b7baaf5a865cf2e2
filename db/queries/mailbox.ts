import { eq } from "drizzle-orm";
import type { Db } from "#db/open.ts";
import { incoming, mailbox, mailRules } from "#db/schema.ts";
import type { Incoming } from "#lib/domain/notices/incoming.ts";
import type { MailRules } from "#lib/domain/notices/mail-rules.ts";
import type { Instant } from "#lib/domain/time/day.ts";

/** One installation serves one office. */
const ONLY = 1;

/** How the office sends mail; nothing is limited until somebody says so. */
export function getMailRules(db: Db): MailRules {
  const row = db.select().from(mailRules).where(eq(mailRules.id, ONLY)).get();
  return { perHour: row?.perHour ?? null };
}

export function putMailRules(db: Db, rules: MailRules): void {
  db.insert(mailRules)
    .values({ id: ONLY, ...rules })
    .onConflictDoUpdate({ target: mailRules.id, set: rules })
    .run();
}

interface MailboxState {
  readonly validity: string | null;
  readonly uid: number;
  /** When it was last read or tried; null: never. */
  readonly lookedAt: Instant | null;
  readonly problem: string;
}

/** Up to where the mailbox was read, and how that went. */
export function getMailbox(db: Db): MailboxState {
  const row = db.select().from(mailbox).where(eq(mailbox.id, ONLY)).get();
  if (!row) return { validity: null, uid: 0, lookedAt: null, problem: "" };
  const { id: _id, ...state } = row;
  return state;
}

export function putMailbox(db: Db, state: Partial<MailboxState>): void {
  db.insert(mailbox)
    .values({ id: ONLY, ...state })
    .onConflictDoUpdate({ target: mailbox.id, set: state })
    .run();
}

/** Notes that a message was taken; false where it was before. */
export function noteIncoming(
  db: Db,
  message: { readonly key: string; readonly at: Instant; readonly what: Incoming["what"] },
): boolean {
  return db.insert(incoming).values(message).onConflictDoNothing().run().changes > 0;
}
