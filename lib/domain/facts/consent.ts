import type { Cents } from "../money/cents.ts";
import type { Day } from "../time/day.ts";

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

export const CONSENT_STATES = [
  ...RECORDED_STATES,
  /** Signed on screen in a name that is not the party's: it counts when a person has looked at it. */
  "name-held",
  /** A person of the office looked at that name, and did not take it for the party's. */
  "name-refused",
] as const;
export type ConsentState = (typeof CONSENT_STATES)[number];

/** One person's consent of one kind, tied to exactly what was signed. */
export interface Consent {
  readonly id: string;
  readonly kind: ConsentKind;
  readonly partyId: string;
  readonly propertyId: string;
  readonly state: ConsentState;
  readonly stateOn: Day;
  /** For `pay`: the split version and the amount that was put to the person. */
  readonly splitId: string | null;
  readonly amount: Cents | null;
  readonly recordingNumber: string;
  /** The signed paper, and the hash of its bytes. */
  readonly uploadId: string | null;
  readonly note: string;
  /** The word signed on screen whose name this one accepts or refuses; null for all others. */
  readonly restsOnId: string | null;
  /** Who of the office recorded it; empty where the party said it by their private link. */
  readonly enteredBy: string;
}
