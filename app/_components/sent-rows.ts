/** A table of so many rows goes with its page. */
const SENT_WHOLE = 32;
/** Of a longer one so many: what is seen before the others are here. */
const SENT_FIRST = 24;

/** The rows of a table that go with its page. */
export interface SentRows<T> {
  readonly rows: readonly T[];
  /** So many rows of those that are shown follow by themselves; 0: nothing is missing. */
  readonly unsent: number;
  /** Nothing is missing, also of what is not shown. */
  readonly whole: boolean;
}

/** What to send of a table that shows the rows with the values of `where`. */
export function sentRows<T extends object>(
  rows: readonly T[],
  where: Readonly<Record<string, unknown>> = {},
): SentRows<T> {
  if (rows.length <= SENT_WHOLE) return { rows, unsent: 0, whole: true };
  const shown = rows.filter((row) =>
    Object.entries(where).every(([name, value]) => Reflect.get(row, name) === value),
  );
  const first = shown.slice(0, SENT_FIRST);
  return { rows: first, unsent: shown.length - first.length, whole: false };
}

/** Rows as they travel: the names of their fields once, then the values of each. */
export interface PackedRows {
  /** The revision that they were read at. */
  readonly base: number;
  readonly shapes: readonly (readonly string[])[];
  /** Which of the shapes a row has, then its values. */
  readonly rows: readonly (readonly [number, ...unknown[]])[];
}

/** Packs a table that was read at revision `base`. */
export function packRows(base: number, rows: readonly object[]): PackedRows {
  const shapes = new Map<string, { at: number; fields: string[] }>();
  const packed = rows.map((row): [number, ...unknown[]] => {
    const fields = Object.keys(row);
    const name = fields.join(" ");
    const shape = shapes.get(name) ?? { at: shapes.size, fields };
    shapes.set(name, shape);
    return [shape.at, ...Object.values(row)];
  });
  return { base, shapes: [...shapes.values()].map(({ fields }) => fields), rows: packed };
}

/** The rows of a pack. */
export function unpackRows({ shapes, rows }: PackedRows): Record<string, unknown>[] {
  return rows.map(([shape, ...values]) =>
    Object.fromEntries((shapes[shape] ?? []).map((field, at) => [field, values[at]])),
  );
}
