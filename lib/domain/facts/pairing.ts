import { day, maybe, oneOf, type RowOf, ref, row, signedFeet, words } from "./field.ts";

export const PAIRING_STATES = ["accepted", "refused"] as const;
export type PairingState = (typeof PAIRING_STATES)[number];

/**
 * A person's word on one record entry and one tie-in. Proposals are computed and not kept;
 * what was accepted or refused is, with who said so and why.
 */
export type Pairing = RowOf<typeof PAIRING>;

export const PAIRING = row({
  one: "pairing",
  fields: {
    entryId: ref("entries"),
    tieInId: ref("tieIns"),
    state: oneOf(PAIRING_STATES),
    /** Distance between the two when it was decided, after the shift and scale then accepted. */
    distance: maybe(signedFeet),
    reason: words,
    decidedBy: words,
    decidedOn: day,
  },
});

/** In the design's words; one for each tie-in and each record entry. */
const STANDINGS = [
  "on-record-and-seen",
  "on-record-seen-elsewhere",
  "on-record-not-seen",
  "on-record-not-inspected",
  /** Which place in the pipe the record means can't be told. */
  "on-record-place-unclear",
  "undocumented",
  /** Not on record, but a written ruling of the authority stands for it. */
  "accepted-by-ruling",
  "inactive",
  "not-a-sanitary-branch",
] as const;
export type Standing = (typeof STANDINGS)[number];

/** Record and camera both have it, be it at another place. */
export function isSeenOnRecord(standing: Standing): boolean {
  return standing === "on-record-and-seen" || standing === "on-record-seen-elsewhere";
}

const BANDS = ["same", "likely", "conflict"] as const;
export type Band = (typeof BANDS)[number];
