import { eq } from "drizzle-orm";
import type { Db } from "#db/open.ts";
import { dailyMails, mailRules } from "#db/schema.ts";
import { MAYBE_TWICE, type Outgoing } from "#lib/domain/notices/outgoing.ts";
import type { Day, Instant } from "#lib/domain/time/day.ts";
import { leaseQueue } from "./lease-queue.ts";

/** One installation serves one office. */
const ONLY = 1;

/** Whether everyone is sent each morning what is late or due; off until an admin turns it on. */
export function isDailyOn(db: Db): boolean {
  const row = db.select({ daily: mailRules.daily }).from(mailRules).where(eq(mailRules.id, ONLY));
  return row.get()?.daily ?? false;
}

export function putDaily(db: Db, daily: boolean): void {
  db.insert(mailRules)
    .values({ id: ONLY, daily })
    .onConflictDoUpdate({ target: mailRules.id, set: { daily } })
    .run();
}

/** A morning's message to one of the office. */
export interface DailyMail {
  readonly id: string;
  readonly userId: string;
  readonly day: Day;
  readonly toAddress: string;
  readonly toName: string;
  readonly subject: string;
  readonly text: string;
  readonly messageId: string;
  readonly state: Outgoing["state"];
  readonly attempts: number;
  readonly nextTryAt: Instant;
  readonly problem: string;
  readonly createdAt: Instant;
  readonly sentAt: Instant | null;
}

function getDailyMail(db: Db, id: string): DailyMail | null {
  return db.select().from(dailyMails).where(eq(dailyMails.id, id)).get() ?? null;
}

/** The messages of a day, as they stand. */
export function listDailyMails(db: Db, day: Day): DailyMail[] {
  return db.select().from(dailyMails).where(eq(dailyMails.day, day)).all();
}

/** Keeps a message to be sent; where that person has one of that day already, nothing is added. */
export function insertDailyMail(db: Db, mail: DailyMail): void {
  db.insert(dailyMails).values(mail).onConflictDoNothing().run();
}

/** The messages that wait to be sent. */
export const dailyQueue = leaseQueue<
  DailyMail,
  | { readonly state: "sent"; readonly problem: string; readonly sentAt: Instant }
  | { readonly state: "failed"; readonly problem: string }
  | { readonly state: "waiting"; readonly problem: string; readonly nextTryAt: Instant }
>(dailyMails, { get: getDailyMail, held: "sending", silent: { problem: MAYBE_TWICE } });
