import { day, maybe, oneOf, type RowOf, row, usually, words } from "./field.ts";
import { LETTER_KINDS } from "./letter-kind.ts";
import { DELIVERY_METHODS } from "./notice.ts";

/** What has to be on file of an attempt before its letter counts as delivered. */
const PROOF_COUNTS = [
  /** The way shows nothing by itself; only an answer or a signature does. */
  "never",
  /** It was sent, and did not come back. */
  "sent",
  /** It was accepted, or offered and not collected, by its tracking number or receipt. */
  "attempted",
  /** It was accepted, by its tracking number or receipt. */
  "accepted",
  /** It was posted or left at a place that is named, with a photo on file. */
  "photo",
  /** A named person handed it over. */
  "handed-over",
] as const;
export type ProofCount = (typeof PROOF_COUNTS)[number];

/** What an authority takes as proof that a letter of a kind was delivered in one way. */
export type ProofRule = RowOf<typeof PROOF_RULE>;

export const PROOF_RULE = row({
  one: "rule of proof",
  fields: {
    /** Whose it is. */
    authorityId: words,
    /** For letters of this kind; null: for each kind that has no row of its own. */
    letter: maybe(oneOf(LETTER_KINDS)),
    method: oneOf(DELIVERY_METHODS),
    counts: usually(oneOf(PROOF_COUNTS), "never"),
    citation: words,
    asOf: day,
  },
});
