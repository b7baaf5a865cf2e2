import { insertRow } from "#db/queries/row.ts";
import { LETTER_SAID } from "#lib/domain/facts/notice-words.ts";
import { lettersOfMeeting } from "#lib/domain/paper/meeting-letters.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { sayList } from "#lib/domain/say/say-list.ts";
import { formatDate } from "#lib/domain/time/format-day.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { changeLine, find, refuse } from "./change.ts";
import { draftsFor } from "./draft-notices.ts";

/**
 * Drafts every letter that was asked for on the sheet of a meeting and that its reader may get; they
 * wait among the drafts like any other. Refuses where nothing is left to draft.
 */
export function draftFromMeeting(
  act: Act,
  { lineId, meetingId }: { readonly lineId: string; readonly meetingId: string },
): Result<{ count: number }, Refusal> {
  const deal = { lineId, deed: "work-the-file", action: "draft-from-meeting" } as const;
  return changeLine(act, deal, (file) => {
    const meeting = find(file.meetings, meetingId, { path: "meetingId", what: "the meeting" });
    if (!meeting.ok) return meeting;
    const { letters } = lettersOfMeeting(file, reportOn(file, act.today), meeting.value);
    const fresh = letters.flatMap(({ kind, recipients }) =>
      draftsFor(act, file, { kind, replyBy: null, recipients })
        .filter(({ isNew }) => isNew)
        .map(({ notice }) => notice),
    );
    if (fresh.length === 0)
      return refuse("not-in-this-state", "", "No letter that was asked for is left to draft");
    const kinds = sayList(letters.map(({ kind }) => LETTER_SAID[kind]));
    return ok({
      value: { count: fresh.length },
      sentence: `Drafted what was asked for at the meeting of ${formatDate(meeting.value.on)}: ${kinds}.`,
      detail: { added: fresh },
      write: (db) => {
        for (const row of fresh) insertRow(db, "notices", { lineId, row });
      },
    });
  });
}
