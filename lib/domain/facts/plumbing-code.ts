export const PLUMBING_CODES = ["ipc", "upc"] as const;

export type PlumbingCode = (typeof PLUMBING_CODES)[number];

/**
 * Where a table comes from: only tables that were read in a public copy stand here. States and cities
 * amend them: the authority's own edition decides.
 */
export interface TableSource {
  readonly title: string;
  readonly edition: string;
  readonly source: string;
}

export const SLOPE_NAMES = [
  "half-inch",
  "quarter-inch",
  "two-percent",
  "eighth-inch",
  "one-percent",
  "sixteenth-inch",
] as const;

export type SlopeName = (typeof SLOPE_NAMES)[number];
