import {
  day,
  instant,
  oneOf,
  type RowOf,
  ref,
  row,
  several,
  timeOfDay,
  words,
  yesNo,
} from "./field.ts";

/** A meeting of the neighbors around a table. */
export type Meeting = RowOf<typeof MEETING>;

export const MEETING = row({
  one: "meeting",
  most: 50,
  saved: "office",
  fields: {
    on: day,
    at: timeOfDay,
    until: timeOfDay,
    /** Where, as people are told it. */
    place: words,
    note: words,
  },
});

/** What somebody asks for at a meeting; each is answered with a letter of its kind. */
export const MEETING_WISHES = [
  "findings",
  "own-figure",
  "test-here",
  "let-in",
  "sign-agreement",
] as const;
export type MeetingWish = (typeof MEETING_WISHES)[number];

/** What one person was marked with on the sheet of a meeting. Added, never changed; the latest counts. */
export type MeetingWord = RowOf<typeof MEETING_WORD>;

export const MEETING_WORD = row({
  one: "line of a meeting’s sheet",
  fields: {
    meetingId: ref("meetings"),
    partyId: ref("parties"),
    propertyId: ref("properties"),
    came: yesNo,
    wishes: several({ wish: oneOf(MEETING_WISHES) }),
    words,
    by: words,
    at: instant,
  },
});
