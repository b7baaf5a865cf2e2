const CELL_KINDS = [
  "text",
  "feet",
  "inches",
  "degrees",
  "cents",
  "whole",
  "hundredths",
  "percent",
  "day",
  "time",
  "clock",
  "video",
  "choice",
  "yesno",
] as const;

/**
 * What a cell holds, in the file and as typed:
 * `feet` whole hundredths of a foot, `inches` and `degrees` a number, `cents` whole cents, `whole` a whole number,
 * `hundredths` hundredths of a unit, `percent` basis points, `day` yyyy-mm-dd, `time` a time of day as `16:05` (empty: none), `clock` 1 to 12 by
 * halves, `video` seconds typed as 2:58, `choice` one of `choices` (the value "" stands for null), `yesno` true or false.
 */
export type CellKind = (typeof CELL_KINDS)[number];

export interface GridChoice {
  readonly value: string;
  readonly label: string;
  /** Other words that mean the same, as people type and sheets write them. */
  readonly also?: readonly string[];
}

/** Words by the row’s id and by what one of its fields holds: worked out by a page, shown as is typed. */
export interface LookedUp {
  readonly field: string;
  readonly words: Readonly<Record<string, Readonly<Record<string, string>>>>;
}

/** Columns that nobody types: worked out from the rest of the row. A client page may give a function. */
export type ComputedColumn = "item-amount" | LookedUp | ((row: GridRow) => string);

export interface GridColumn {
  /** Field of the row; `address.street` inside it; `shares[propertyId=p1].parts` in a list of its own. */
  readonly key: string;
  readonly title: string;
  readonly kind: CellKind;
  readonly choices?: readonly GridChoice[];
  /** In characters. */
  readonly width?: number;
  readonly required?: boolean;
  readonly hint?: string;
  /** Shown gray in the empty last row. */
  readonly example?: string;
  readonly readOnly?: boolean;
  /** Other headings under which the column comes when rows are pasted. */
  readonly pasteHeadings?: readonly string[];
  /** The foot shows the column's sum. */
  readonly total?: boolean;
  /** Worked out while the row is typed, never saved; give such a column a `key` of its own. */
  readonly computed?: ComputedColumn;
  /** Shows the row's picture, small, with a link to it whole; for columns that nobody types. */
  readonly picture?: (row: GridRow) => GridPicture | null;
  /** Field that keeps how far off a reading is that was typed as `about 31` or `31–33`. */
  readonly unsure?: string;
  /** Fields that typing in this cell settles along with it. */
  readonly settles?: Readonly<Record<string, unknown>>;
}

export interface GridPicture {
  readonly href: string;
  readonly words: string;
}

/** A page on one row. */
export interface GridLink {
  readonly href: string;
  readonly words: string;
}

/** A row of the file, as the file holds it. */
export type GridRow = Readonly<Record<string, unknown>>;

/** What stands in the head beside the title, so that nobody has to guess. */
export const UNIT_WORDS: Record<CellKind, string> = {
  text: "",
  feet: "ft",
  inches: "in",
  degrees: "°",
  cents: "$",
  whole: "",
  hundredths: "",
  percent: "%",
  day: "date",
  time: "",
  clock: "o’clock",
  video: "",
  choice: "",
  yesno: "",
};
