import { day, maybe, oneOf, type RowOf, ref, row, words } from "./field.ts";

/** What becomes of an undocumented tie-in, as authorities decide it. */
export const RULING_KINDS = [
  /** Stays, with a permit, fees and an agreement. */
  "legalise",
  /** Is cut off until it complies, at its owner's cost. */
  "disconnect",
  /** Gets a connection of its own within a time. */
  "own-connection",
  /** Stays as it is: from before the rule. */
  "accepted-as-legacy",
  /** Is capped, being proven dead. */
  "cap",
  /** The record was wrong, not the tie-in: the card is corrected by an as-built. */
  "record-corrected",
  /** The authority wants more evidence first. */
  "evidence-asked",
] as const;
export type RulingKind = (typeof RULING_KINDS)[number];

/** One decision on one tie-in; a later one replaces it. Kept with who decided and where it is written. */
export type Ruling = RowOf<typeof RULING>;

export const RULING = row({
  one: "ruling",
  fields: {
    tieInId: ref("tieIns"),
    kind: oneOf(RULING_KINDS),
    /** Who decided: the authority's officer, or the owner and the authority together. */
    decidedBy: words,
    decidedOn: day,
    /** When it has to be done by; null where nothing was said. */
    dueOn: maybe(day),
    /** Case number, letter or section. */
    reference: words,
    uploadId: maybe(ref("uploads")),
    note: words,
    enteredBy: words,
  },
});
