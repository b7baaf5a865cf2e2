import type { Day } from "../time/day.ts";

export const CHANGE_ORDER_STATES = ["proposed", "agreed", "refused"] as const;
export type ChangeOrderState = (typeof CHANGE_ORDER_STATES)[number];

/**
 * A change of the scope after it was agreed, as a version: scope items name the order that added
 * them and the order that dropped them. Only agreed orders count.
 */
export interface ChangeOrder {
  readonly id: string;
  readonly number: number;
  readonly title: string;
  readonly reason: string;
  readonly state: ChangeOrderState;
  readonly orderedBy: string;
  readonly orderedOn: Day;
  readonly note: string;
}
