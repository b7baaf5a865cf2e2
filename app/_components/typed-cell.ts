/** Something typed into a cell of a row that is not saved yet. */
export interface CellChange {
  /** The row's. */
  readonly key: string;
  readonly column: string;
  readonly text: string;
}

/** Names the one cell that was typed in, so that its letters are one step; null where many were pasted. */
export function cellOf(changes: readonly CellChange[]): string | null {
  const [one, ...more] = changes;
  return one === undefined || more.length > 0 ? null : `${one.key} ${one.column}`;
}

/** The row of a table that is typed in, as a link points to it. */
export function rowId(key: string): string {
  return `row-${key}`;
}
