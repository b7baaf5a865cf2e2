/** Rows from `from` up to and without `to`, by their number in the table. */
export interface RowSpan {
  readonly from: number;
  readonly to: number;
}

/** So many rows are drawn whole; a longer table draws what is near the window. */
export const DRAWN_WHOLE = 120;
/** Rows drawn beyond the window's edges, so that scrolling and Tab meet a row. */
const BEYOND = 30;
/** Rows drawn around one that must be there, such as the one with the cursor. */
const AROUND = 2;

/**
 * Which rows of `count` stand in a window of `height` pixels, where the first row begins `top` pixels
 * below the window's upper edge and a row is `rowHeight` pixels high; with some beyond both edges.
 */
export function rowsInView({
  count,
  top,
  height,
  rowHeight,
}: {
  readonly count: number;
  readonly top: number;
  readonly height: number;
  readonly rowHeight: number;
}): RowSpan {
  const first = Math.floor(-top / rowHeight) - BEYOND;
  const last = Math.ceil((height - top) / rowHeight) + BEYOND;
  const from = Math.min(Math.max(first, 0), Math.max(count - 1, 0));
  return { from, to: Math.max(Math.min(last, count), Math.min(from + 1, count)) };
}

/**
 * The spans to draw of `count` rows: those in view, and those around rows that must be there whatever
 * is in view. In order, apart from each other; a table that is short is one span.
 */
export function spansToDraw(
  count: number,
  inView: RowSpan,
  must: readonly number[],
): readonly RowSpan[] {
  if (count <= DRAWN_WHOLE) return count === 0 ? [] : [{ from: 0, to: count }];
  const wanted = [
    inView,
    ...must
      .filter((row) => row >= 0 && row < count)
      .map((row) => ({
        from: Math.max(row - AROUND, 0),
        to: Math.min(row + AROUND + 1, count),
      })),
  ].toSorted((one, other) => one.from - other.from);
  const spans: RowSpan[] = [];
  for (const span of wanted) {
    const last = spans.at(-1);
    if (last === undefined || span.from > last.to) spans.push(span);
    else spans[spans.length - 1] = { from: last.from, to: Math.max(last.to, span.to) };
  }
  return spans;
}
