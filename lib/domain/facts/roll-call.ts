import { day, instant, maybe, oneOf, type RowOf, ref, row, timeOfDay, words } from "./field.ts";

/** What everybody is asked or told door by door: that drains are off, and that they are on again. */
export const ROLL_CALL_MATTERS = ["drains-off", "drains-on"] as const;
export type RollCallMatter = (typeof ROLL_CALL_MATTERS)[number];

export const ROLL_CALL_ANSWERS = [
  "aware",
  "agreed",
  "needs-help",
  "not-reached",
  "waived",
] as const;
export type RollCallAnswer = (typeof ROLL_CALL_ANSWERS)[number];

/** One call or knock at one door about one pause of drains. Added, never changed; the latest counts. */
export type RollCallWord = RowOf<typeof ROLL_CALL_WORD>;

export const ROLL_CALL_WORD = row({
  one: "roll-call",
  fields: {
    matter: oneOf(ROLL_CALL_MATTERS),
    /** First day of the pause. */
    forDay: day,
    /** The hours that were spoken of, as `08:00`; empty where none were set. Other hours want another call. */
    from: timeOfDay,
    until: timeOfDay,
    propertyId: ref("properties"),
    /** Null: the whole property. */
    unitId: maybe(ref("units")),
    answer: oneOf(ROLL_CALL_ANSWERS),
    /** Who answered, by name; empty where nobody did, or gave one. */
    spokeWith: words,
    /** What was said; for a waiver its reason. */
    words,
    /** Who called or knocked; for a waiver, who gave it. */
    by: words,
    at: instant,
  },
});
