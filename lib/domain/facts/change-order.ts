import { day, name, oneOf, type RowOf, row, usually, whole, words } from "./field.ts";

const CHANGE_ORDER_STATES = ["proposed", "agreed", "refused"] as const;
export type ChangeOrderState = (typeof CHANGE_ORDER_STATES)[number];

/**
 * A change of the scope after it was agreed, as a version: scope items name the order that added
 * them and the order that dropped them. Only agreed orders count.
 */
export type ChangeOrder = RowOf<typeof CHANGE_ORDER>;

export const CHANGE_ORDER = row({
  one: "change order",
  most: 100,
  saved: "office",
  fields: {
    number: whole(10_000),
    title: name("a title"),
    reason: words,
    state: usually(oneOf(CHANGE_ORDER_STATES), "proposed"),
    orderedBy: words,
    orderedOn: day,
    note: words,
  },
});
