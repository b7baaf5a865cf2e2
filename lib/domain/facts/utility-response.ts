import { day, maybe, oneOf, type RowOf, ref, row, usually, words } from "./field.ts";

/** What a utility that answers a locate ticket has in the ground. */
const UTILITY_KINDS = [
  "gas",
  "electric",
  "water",
  "sewer",
  "storm-drain",
  "phone-or-cable",
  "other",
] as const;
export type UtilityKind = (typeof UTILITY_KINDS)[number];

/** What it answered; only `marked` and `clear` let anybody dig. */
export const UTILITY_ANSWERS = [
  "awaited",
  "marked",
  /** It has nothing in the area. */
  "clear",
  "marked-in-part",
  "wants-time",
  "wants-to-meet",
  "no-access",
] as const;
export type UtilityAnswer = (typeof UTILITY_ANSWERS)[number];

/** One utility's answer to a locate ticket. */
export type UtilityResponse = RowOf<typeof UTILITY_RESPONSE>;

export const UTILITY_RESPONSE = row({
  one: "utility’s response",
  saved: "field",
  fields: {
    ticketId: ref("locateTickets"),
    utility: words,
    kind: usually(oneOf(UTILITY_KINDS), "other"),
    answer: usually(oneOf(UTILITY_ANSWERS), "awaited"),
    /** The day it answered; null: not noted. */
    answeredOn: maybe(day),
    /** The last day its marks are good for, as it said; null: what the authority's rule says. */
    goodUntil: maybe(day),
    note: words,
  },
});
