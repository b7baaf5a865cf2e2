export interface Sheet {
  readonly name: string;
  /** Every row from the first, also empty ones: the row's number is its place and one. */
  readonly rows: readonly (readonly string[])[];
}

export interface TableFile {
  /** Only those that hold something. */
  readonly sheets: readonly Sheet[];
  /** The letters were guessed: accents want a look. */
  readonly guessed: boolean;
}

// What comes in at once.
export const MOST_BYTES = 4_000_000;
export const MOST_ROWS = 2_000;
export const MOST_COLUMNS = 100;

export const TOO_WIDE = "The table has more than 100 columns. Save only the ones you need.";

export function tooLong(what: string, rows: number): string {
  return `${what} has ${rows.toLocaleString("en-US")} rows; at most 2,000 can be imported at once. Split it into parts.`;
}
