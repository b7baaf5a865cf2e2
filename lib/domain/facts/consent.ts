import { day, late, maybe, oneOf, type RowOf, ref, row, sum, usually, words } from "./field.ts";

export const CONSENT_KINDS = [
  "enter",
  "dig",
  "pay",
  "agreement-signed",
  "agreement-notarised",
  "agreement-recorded",
] as const;
export type ConsentKind = (typeof CONSENT_KINDS)[number];

/** What a person of the office records of somebody's word. */
export const RECORDED_STATES = ["asked", "given", "refused", "withdrawn"] as const;
export type RecordedState = (typeof RECORDED_STATES)[number];

const CONSENT_STATES = [
  ...RECORDED_STATES,
  /** Signed on screen in a name that is not the party's: it counts when a person has looked at it. */
  "name-held",
  /** A person of the office looked at that name, and did not take it for the party's. */
  "name-refused",
] as const;
export type ConsentState = (typeof CONSENT_STATES)[number];

/** One person's consent of one kind, tied to exactly what was signed. */
export type Consent = RowOf<typeof CONSENT>;

export const CONSENT = row({
  one: "consent",
  fields: {
    kind: oneOf(CONSENT_KINDS),
    partyId: ref("parties"),
    propertyId: ref("properties"),
    state: usually(oneOf(CONSENT_STATES), "asked"),
    stateOn: day,
    /** For `pay`: the split version and the amount that was put to the person. */
    splitId: maybe(ref("splits")),
    amount: maybe(sum),
    recordingNumber: words,
    /** The signed paper, and the hash of its bytes. */
    uploadId: maybe(ref("uploads")),
    note: words,
    /** The word signed on screen whose name this one accepts or refuses; null for all others. */
    restsOnId: maybe(ref("consents")),
    /** Who of the office recorded it; empty where the party said it by their private link. */
    enteredBy: late(words),
  },
});
