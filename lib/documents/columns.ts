import { textWidth } from "#lib/domain/say/text-width.ts";

interface TableText {
  readonly head: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

const GAP = 9;

/**
 * Widths of a table's columns in percent of the whole: each column gets what its longest words ask
 * for where that fits; otherwise narrow columns keep theirs and wide ones share what is left.
 */
export function columnShares(
  { head, rows }: TableText,
  { width, size }: { width: number; size: number },
): number[] {
  const wanted = head.map((title, column) => {
    const texts = [title, ...rows.map((row) => row[column] ?? "")];
    return Math.max(...texts.map((text) => textWidth(text, size, false))) + GAP;
  });
  const least = head.map((title, column) => {
    const texts = [title, ...rows.map((row) => row[column] ?? "")];
    const longest = texts.flatMap((text) => text.split(/\s+/));
    return Math.max(...longest.map((text) => textWidth(text, size, false))) + GAP;
  });
  const total = wanted.reduce((sum, each) => sum + each, 0);
  const facts = head.every((title) => title === "");
  const widths = total <= width ? spread(wanted, width, facts) : squeeze(wanted, least, width);
  return widths.map((each) => (each / width) * 100);
}

/** Names and values stand close together; columns of a real table share the room to spare. */
function spread(wanted: readonly number[], width: number, facts: boolean): number[] {
  const total = wanted.reduce((sum, each) => sum + each, 0);
  const spare = width - total;
  if (facts) return wanted.map((each, column) => factWidth(each, column, { wanted, spare }));
  return wanted.map((each) => each + (spare * each) / total);
}

const NAMES = 120;

function factWidth(
  each: number,
  column: number,
  { wanted, spare }: { wanted: readonly number[]; spare: number },
): number {
  const grown = Math.min(Math.max(NAMES - (wanted[0] ?? 0), 0), spare);
  if (column === 0) return each + grown;
  return column === wanted.length - 1 ? each + spare - grown : each;
}

function squeeze(wanted: readonly number[], least: readonly number[], width: number): number[] {
  const smallest = least.reduce((sum, each) => sum + each, 0);
  if (smallest >= width) return least.map((each) => (each * width) / smallest);
  const ask = wanted.map((each, column) => each - (least[column] ?? 0));
  const asked = ask.reduce((sum, each) => sum + each, 0);
  const room = width - smallest;
  return least.map((each, column) => each + (room * (ask[column] ?? 0)) / Math.max(asked, 1));
}
