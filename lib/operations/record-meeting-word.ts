import { insertRow } from "#db/queries/row.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { MEETING_WISHES, type MeetingWish, type MeetingWord } from "#lib/domain/facts/meeting.ts";
import { wordsOfMeeting } from "#lib/domain/paper/meeting-letters.ts";
import { meetingGuests } from "#lib/domain/paper/meeting-sheet.ts";
import { sayParty, sayProperty } from "#lib/domain/party/say.ts";
import { formatDate } from "#lib/domain/time/format-day.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { changeLine, find, refuse } from "./change.ts";

interface SheetLine {
  readonly lineId: string;
  readonly meetingId: string;
  readonly partyId: string;
  readonly propertyId: string;
  readonly came: boolean;
  readonly wishes: readonly MeetingWish[];
  readonly words: string;
  /** Id of the person's latest line as the page showed it; empty: there was none. */
  readonly seen: string;
}

/**
 * Takes over one line of the sheet of a meeting: whether somebody came, what they marked and what they
 * said. Lines are added, never changed; the latest one of a person counts. Refuses a meeting that has not
 * been, somebody who has no role at the property, and a line on top of one recorded meanwhile.
 */
export function recordMeetingWord(
  act: Act,
  { lineId, seen, ...line }: SheetLine,
): Result<{ wordId: string }, Refusal> {
  const deal = { lineId, deed: "work-the-file", action: "record-meeting-word" } as const;
  return changeLine(act, deal, (file) => {
    const meeting = find(file.meetings, line.meetingId, { path: "meetingId", what: "the meeting" });
    if (!meeting.ok) return meeting;
    if (meeting.value.on > act.today)
      return refuse("not-in-this-state", "", "The meeting has not been held yet");
    const wrong = wrongLine(file, { line, seen });
    if (wrong !== null) return wrong;
    const row: MeetingWord = {
      id: act.newId(),
      ...line,
      wishes: [...new Set(line.wishes)].map((wish) => ({ wish })),
      words: line.words.trim(),
      by: act.actor.name,
      at: act.now,
    };
    const said = row.words === "" ? "" : `: ${row.words}`;
    return ok({
      value: { wordId: row.id },
      sentence: `Meeting of ${formatDate(meeting.value.on)}: ${sayParty(file, row.partyId)} (${sayProperty(file, row.propertyId)}) ${row.came ? "came" : "did not come"}${said}`,
      detail: { after: row },
      write: (db) => insertRow(db, "meetingWords", { lineId, row }),
    });
  });
}

function wrongLine(
  file: LineFile,
  { line, seen }: { line: Omit<SheetLine, "lineId" | "seen">; seen: string },
) {
  const { meetingId, partyId, propertyId, wishes } = line;
  const isGuest = meetingGuests(file).some(
    (guest) => guest.party.id === partyId && guest.propertyId === propertyId,
  );
  if (!isGuest) return refuse("not-found", "partyId", "the person at this property");
  if (wishes.some((wish) => !MEETING_WISHES.includes(wish)))
    return refuse("bad-value", "wishes", "Choose from the list what they asked for");
  const before = wordsOfMeeting(file, meetingId).find(
    (word) => word.partyId === partyId && word.propertyId === propertyId,
  );
  return (before?.id ?? "") === seen ? null : refuse("changed-meanwhile", "", before?.by ?? "");
}
