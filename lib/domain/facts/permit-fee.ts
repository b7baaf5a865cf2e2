import {
  cents,
  day,
  idOf,
  late,
  maybe,
  oneOf,
  type RowOf,
  ref,
  row,
  usually,
  words,
} from "./field.ts";

/** What happened to a fee: the authority billed it, the office paid it, money came back. */
const FEE_ENTRY_KINDS = ["billed", "paid", "refunded"] as const;
export type FeeEntryKind = (typeof FEE_ENTRY_KINDS)[number];

/** One amount between the office and the authority over a permit. */
export type PermitFeeEntry = RowOf<typeof PERMIT_FEE_ENTRY>;

export const PERMIT_FEE_ENTRY = row({
  one: "permit fee",
  most: 500,
  saved: "office",
  fields: {
    permitId: ref("permits"),
    kind: usually(oneOf(FEE_ENTRY_KINDS), "paid"),
    /** The line of the authority’s schedule; null: all of the permit’s fees together. */
    feeId: maybe(idOf("the fee")),
    amount: cents,
    on: day,
    /** The authority’s receipt or invoice number. */
    receipt: words,
    /** Who paid, or took the money back, and how: `Dana Okafor, check 2214`. */
    by: late(words),
    note: words,
  },
});
