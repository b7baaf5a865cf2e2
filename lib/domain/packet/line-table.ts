import { type Cft, plainFeet } from "../length/station.ts";

/** A cell of a table for a spreadsheet: numbers stay numbers, what is not known is empty. */
export type TableCell = string | number;

/** What the office takes out of a line’s file for a spreadsheet. */
export interface LineTable {
  readonly title: string;
  readonly head: readonly string[];
  readonly rows: readonly (readonly TableCell[])[];
  /** Columns of sentences. */
  readonly wide: ReadonlySet<string>;
  /** What a reader has to know of the whole of it; one sentence each. */
  readonly notes: readonly string[];
}

/** Feet as a number of a spreadsheet; empty where it is not known. */
export function feetCell(length: Cft | null): TableCell {
  return length === null ? "" : Number(plainFeet(length));
}
