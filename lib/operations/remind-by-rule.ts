import { randomBytes } from "node:crypto";
import { listLines } from "#db/queries/line.ts";
import {
  insertDraftedReminder,
  listDraftedReminders,
  listReminderRules,
} from "#db/queries/reminder.ts";
import { insertRow, listRows } from "#db/queries/row.ts";
import { versionOf } from "#db/queries/summary.ts";
import { sentDayOf } from "#lib/domain/calendar/happenings.ts";
import { addressStop, LINK_DAYS } from "#lib/domain/consent/private-link.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { Notice } from "#lib/domain/facts/notice.ts";
import { nameRow } from "#lib/domain/facts/references.ts";
import { isReminderDue, type ReminderRule } from "#lib/domain/notices/reminder-rules.ts";
import { remindersDue } from "#lib/domain/paper/reminder.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { ok } from "#lib/result.ts";
import type { Act } from "./act.ts";
import { changeLine } from "./change.ts";
import { draftOf } from "./draft-reminders.ts";
import { sendNotices } from "./send-notices.ts";
import { actFor, type Workplace } from "./workplace.ts";

/** In whose name drafts are made and, where the office turned that on, sent. */
const BY = "Reminder rules";

/**
 * Looks through the lines for reminders that are due by the office's rules, one line each time it is
 * called; false: there is nothing more to look at for now. What it looked at is looked at again on
 * another day, after a change of the line, and with other rules.
 */
export function reminding(): (place: Workplace) => Promise<boolean> {
  const seen = new Map<string, string>();
  return async (place) => {
    const rules = listReminderRules(place.db);
    if (rules.length === 0) return false;
    for (const { id, closedOn } of listLines(place.db)) {
      const mark = () => JSON.stringify([versionOf(place.db, id), place.today(), rules]);
      if (closedOn !== null || seen.get(id) === mark()) continue;
      remindOn(place, id, rules);
      seen.set(id, mark());
      return true;
    }
    return false;
  };
}

/** One line: drafts what is due, then sends what may go without a release. */
function remindOn(place: Workplace, lineId: string, rules: readonly ReminderRule[]): void {
  const worker = actFor(place, place.db, BY);
  const act: Act = { ...worker, actor: { ...worker.actor, role: "office" } };
  changeLine(act, { lineId, deed: "work-the-file", action: "remind-by-rule" }, (file, db) => {
    const before = new Set(listDraftedReminders(db, lineId).map(({ noticeId }) => noticeId));
    const due = remindersDue(file, reportOn(file, act.today)).flatMap((reminder) => {
      const first = file.notices.find(({ id }) => id === reminder.noticeId);
      const rule = rules.find(({ kind }) => kind === reminder.kind);
      if (first === undefined || rule === undefined || before.has(first.id)) return [];
      const is = isReminderDue(rule, { sent: lettersLike(file, first), today: act.today });
      return is ? [{ rule, ...draftOf(act, file, reminder) }] : [];
    });
    const letters = due.map(({ noticeId }) => nameRow(file, "notices", noticeId));
    return ok({
      value: null,
      sentence: due.length === 0 ? null : `Drafted by rule a reminder of ${letters.join(", ")}.`,
      detail: { added: due.map(({ notice }) => notice), rules },
      write: (one) => {
        for (const { rule, noticeId, notice } of due) {
          insertRow(one, "notices", { lineId, row: notice });
          insertDraftedReminder(one, { lineId, noticeId, draftId: notice.id, sends: rule.sends });
        }
      },
    });
  });
  sendReleased(act, lineId, { rules, address: place.address });
}

/** The letters of the same kind that were sent to the same party about the same thing. */
function lettersLike(file: LineFile, { kind, partyId, propertyId, tieInId }: Notice) {
  return file.notices.flatMap((notice) => {
    const like =
      notice.state === "sent" &&
      notice.kind === kind &&
      notice.partyId === partyId &&
      notice.propertyId === propertyId &&
      notice.tieInId === tieInId;
    const on = like ? sentDayOf(file, notice) : null;
    return on === null ? [] : [{ notice, on }];
  });
}

/**
 * Emails the drafts that were made while sending was on and of whose kind it still is, each with the
 * link to its reader's page where the office's address opens outside. What can't go so (no address,
 * something lacks, a hold) stays a draft on the desk.
 */
function sendReleased(
  act: Act,
  lineId: string,
  { rules, address }: { readonly rules: readonly ReminderRule[]; readonly address: string | null },
): void {
  const on = new Set(rules.filter(({ sends }) => sends).map(({ kind }) => kind));
  if (on.size === 0) return;
  const linked = addressStop(address) === null;
  const links = { days: LINK_DAYS, address, newSecret };
  const drafted = listDraftedReminders(act.db, lineId).filter(({ sends }) => sends);
  for (const { draftId } of drafted) {
    const draft = listRows(act.db, "notices", lineId).find(({ id }) => id === draftId);
    if (draft === undefined || draft.state !== "draft" || !on.has(draft.kind)) continue;
    sendNotices(act, {
      ...{ lineId, noticeIds: [draftId] },
      ...{ method: "mail-message", sentOn: act.today },
      ...(linked ? { links } : {}),
    });
  }
}

function newSecret(): string {
  return randomBytes(32).toString("base64url");
}
