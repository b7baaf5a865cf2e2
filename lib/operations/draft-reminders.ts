import { insertRow } from "#db/queries/row.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { Notice } from "#lib/domain/facts/notice.ts";
import { nameRow } from "#lib/domain/facts/references.ts";
import { type Reminder, remindersDue } from "#lib/domain/paper/reminder.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { changeLine, refuse } from "./change.ts";

/**
 * Drafts a reminder to everyone whose reply is past due: the same kind of letter with a note above
 * it. The drafts are read and sent like any other. Refused where no reply is past due.
 */
export function draftReminders(
  act: Act,
  { lineId }: { readonly lineId: string },
): Result<{ noticeIds: string[] }, Refusal> {
  const deal = { lineId, deed: "work-the-file", action: "draft-reminders" } as const;
  return changeLine(act, deal, (file) => {
    const drafts = remindersDue(file, reportOn(file, act.today)).map((reminder) =>
      draftOf(act, file, reminder),
    );
    if (drafts.length === 0)
      return refuse("not-in-this-state", "", "No reply is past due without a reminder drafted");
    const letters = drafts.map(({ noticeId }) => nameRow(file, "notices", noticeId));
    const fresh = drafts.map(({ notice }) => notice);
    return ok({
      value: { noticeIds: fresh.map(({ id }) => id) },
      sentence: `Drafted a reminder of ${letters.join(", ")}.`,
      detail: { added: fresh },
      write: (db) => {
        for (const row of fresh) insertRow(db, "notices", { lineId, row });
      },
    });
  });
}

/** A reminder as a draft, with the letter that it reminds of. */
export function draftOf(
  act: Act,
  file: LineFile,
  { noticeId, note, kind, partyId, propertyId, tieInId, splitId, replyBy }: Reminder,
): { readonly noticeId: string; readonly notice: Notice } {
  const first = file.notices.find(({ id }) => id === noticeId);
  const notice: Notice = {
    ...{ id: act.newId(), kind, partyId, propertyId, tieInId, splitId, replyBy },
    language: first?.language ?? "en",
    alsoIn: first?.alsoIn ?? null,
    state: "draft",
    createdOn: act.today,
    createdBy: act.actor.name,
    ownWords: note,
    frozen: null,
    frozenHash: null,
    sentAt: null,
    uploadId: null,
    paperId: first?.paperId ?? "",
  };
  return { noticeId, notice };
}
