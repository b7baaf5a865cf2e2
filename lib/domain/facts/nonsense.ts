import type { ListName } from "./list-name.ts";

/** Something in a row that can't be so, in words that say what to do. */
export interface Nonsense {
  readonly list: ListName;
  /** Number of the row, from 0. */
  readonly row: number;
  /** The field, as `propertyId` or `shares.2.propertyId`. */
  readonly path: string;
  readonly message: string;
}
