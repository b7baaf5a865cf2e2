import { day, maybe, type RowOf, ref, row, words } from "./field.ts";

/** One comment of a reviewer’s corrections letter, and what the office answers to it. */
export type Correction = RowOf<typeof CORRECTION>;

export const CORRECTION = row({
  one: "correction",
  most: 500,
  saved: "office",
  fields: {
    /** The permit’s step by which these corrections were asked for: the round. */
    stepId: ref("permitSteps", "the round"),
    /** The reviewer’s own number, as `3` or `C2.1`. */
    number: words,
    /** The sheet or page that the comment is about. */
    sheet: words,
    /** The reviewer’s words. */
    comment: words,
    /** Who answers it, by name. */
    answeredBy: words,
    answer: words,
    /** Sheets that were changed for it. */
    changedPages: words,
    /** Why it is not changed as asked, where it is not. */
    notChanged: words,
    /** The day on which the reviewer accepted the answer. */
    acceptedOn: maybe(day),
  },
});
