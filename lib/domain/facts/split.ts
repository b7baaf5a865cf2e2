import {
  day,
  feet,
  instant,
  maybe,
  oneOf,
  type RowOf,
  ref,
  row,
  several,
  sum,
  usually,
  type ValuesOf,
  whole,
  words,
} from "./field.ts";

export const SPLIT_RULES = [
  "equal",
  "per-unit",
  "portion-used",
  "upstream-of-fault",
  "reach-owner",
  "weights",
  "recorded-shares",
  "single-payer",
] as const;
export type SplitRule = (typeof SPLIT_RULES)[number];

/** What happens to the share of a tie-in whose owner is unknown. */
export const UNKNOWN_SHARES = ["carried", "held-apart"] as const;
export type UnknownShares = (typeof UNKNOWN_SHARES)[number];
/** Until a person says otherwise: no neighbor carries what a stranger owes. */
export const USUAL_UNKNOWN_SHARES: UnknownShares = "held-apart";

/** What a rule needs besides the line and the scope. */
export type SplitChoice = ValuesOf<typeof SPLIT_CHOICE>;

const SPLIT_CHOICE = {
  rule: oneOf(SPLIT_RULES),
  /** For upstream-of-fault. */
  faultStation: maybe(feet),
  /** For single-payer. */
  payerId: maybe(ref("properties")),
  unknownShares: usually(oneOf(UNKNOWN_SHARES), USUAL_UNKNOWN_SHARES),
};

export type FrozenShare = ValuesOf<typeof FROZEN_SHARE>;

const FROZEN_SHARE = {
  /** A property, or a tie-in whose owner is unknown. */
  propertyId: maybe(ref("properties")),
  tieInId: maybe(ref("tieIns")),
  amount: sum,
  /** Of `amount`, carried for owners not yet known. */
  recoverable: usually(sum, 0),
};

/** The amounts under one rule, as sent. Never edited: a new version replaces it. */
export type SplitVersion = RowOf<typeof SPLIT_VERSION>;

export const SPLIT_VERSION = row({
  one: "split",
  most: 200,
  fields: {
    number: whole(1_000_000),
    ...SPLIT_CHOICE,
    reason: words,
    chosenBy: words,
    chosenOn: day,
    total: sum,
    shares: several(FROZEN_SHARE),
    /** Fingerprint of what the amounts depend on; another one means stale. */
    basis: words,
    /** The way of doing the work that it prices; null where there is only one. */
    optionId: maybe(ref("options")),
    sentAt: maybe(instant),
  },
});
