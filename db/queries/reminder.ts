import { eq } from "drizzle-orm";
import type { Db } from "#db/open.ts";
import { reminderRules, remindersDrafted } from "#db/schema.ts";
import type { LetterKind } from "#lib/domain/facts/letter-kind.ts";
import type { ReminderRule } from "#lib/domain/notices/reminder-rules.ts";

export function listReminderRules(db: Db): ReminderRule[] {
  return db.select().from(reminderRules).orderBy(reminderRules.kind).all() as ReminderRule[];
}

export function putReminderRule(db: Db, rule: ReminderRule): void {
  db.insert(reminderRules)
    .values(rule)
    .onConflictDoUpdate({ target: reminderRules.kind, set: rule })
    .run();
}

export function deleteReminderRule(db: Db, kind: LetterKind): void {
  db.delete(reminderRules).where(eq(reminderRules.kind, kind)).run();
}

/** A reminder that the worker drafted of a letter: there is never a second one. */
interface DraftedReminder {
  readonly lineId: string;
  /** The letter that was not answered. */
  readonly noticeId: string;
  readonly draftId: string;
  /** Whether it may go out without a release, as the office had it when it was drafted. */
  readonly sends: boolean;
}

export function listDraftedReminders(db: Db, lineId: string): DraftedReminder[] {
  return db.select().from(remindersDrafted).where(eq(remindersDrafted.lineId, lineId)).all();
}

export function insertDraftedReminder(db: Db, row: DraftedReminder): void {
  db.insert(remindersDrafted).values(row).run();
}
