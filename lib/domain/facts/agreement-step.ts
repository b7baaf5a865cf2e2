import type { Day } from "../time/day.ts";

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
export interface AgreementStep {
  readonly id: string;
  readonly agreementId: string;
  readonly kind: AgreementStepKind;
  readonly on: Day;
  readonly by: string;
  /** Who signed or acknowledged, for `signed` and `notarised`. */
  readonly partyId: string | null;
  /** Recording number, or the authority's review number. */
  readonly number: string;
  readonly uploadId: string | null;
  readonly note: string;
}
