"use server";

import { z } from "zod";
import { formAction, onLineAt } from "#app/action.ts";
import { checked, id, text, texts } from "#app/fields.ts";
import { MEETING_WISHES } from "#lib/domain/facts/meeting.ts";
import { draftFromMeeting } from "#lib/operations/draft-from-meeting.ts";
import { recordMeetingWord } from "#lib/operations/record-meeting-word.ts";

/** Takes over one line of a meeting's sheet. */
export const recordMeetingAction = formAction(
  onLineAt({ meetingId: id, partyId: id, propertyId: id, seen: z.string() }),
  {
    may: "work-the-file",
    typed: z.object({
      came: checked,
      wishes: texts.pipe(z.array(z.enum(MEETING_WISHES, "Choose from the list."))),
      words: text,
    }),
    does: recordMeetingWord,
    says: "Recorded.",
  },
);

/** Drafts the letters that were asked for at a meeting. */
export const draftMeetingAction = formAction(onLineAt({ meetingId: id }), {
  may: "work-the-file",
  typed: z.object({}),
  does: draftFromMeeting,
  says: ({ count }) =>
    `${count === 1 ? "1 letter is" : `${count} letters are`} drafted; they wait under Letters.`,
});
