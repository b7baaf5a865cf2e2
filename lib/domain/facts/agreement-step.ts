import { day, maybe, oneOf, type RowOf, ref, row, words } from "./field.ts";

/** The way of an agreement that is to be recorded, in this order. */
export const AGREEMENT_STEP_KINDS = [
  "drafted",
  "reviewed",
  "returned",
  "signed",
  "notarised",
  "recorded",
  "number-filed",
  "given-up",
] as const;
export type AgreementStepKind = (typeof AGREEMENT_STEP_KINDS)[number];

/** One step of a recordable agreement. A signature names its signer; such papers are never signed on screen. */
export type AgreementStep = RowOf<typeof AGREEMENT_STEP>;

export const AGREEMENT_STEP = row({
  one: "agreement step",
  fields: {
    agreementId: ref("agreements"),
    kind: oneOf(AGREEMENT_STEP_KINDS),
    on: day,
    by: words,
    /** Who signed or acknowledged, for `signed` and `notarised`. */
    partyId: maybe(ref("parties")),
    /** Recording number, or the authority's review number. */
    number: words,
    uploadId: maybe(ref("uploads")),
    note: words,
  },
});
