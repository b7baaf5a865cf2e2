import type { GridColumn } from "./column.ts";

/** How sheets shorten the words of their headings, and words that mean the same everywhere. */
const LONG_WORDS: Readonly<Record<string, string>> = {
  addr: "address",
  amt: "amount",
  comment: "note",
  comments: "note",
  conn: "connection",
  desc: "description",
  dia: "diameter",
  diam: "diameter",
  dir: "direction",
  dist: "distance",
  elev: "elevation",
  ftg: "footage",
  lat: "lateral",
  mat: "material",
  matl: "material",
  mtl: "material",
  no: "number",
  notes: "note",
  num: "number",
  obs: "observation",
  pos: "position",
  prop: "property",
  qty: "quantity",
  remark: "note",
  remarks: "note",
  sta: "station",
  tel: "phone",
  telephone: "phone",
};

const UNITS: ReadonlySet<string> = new Set([
  "ft",
  "feet",
  "foot",
  "in",
  "inch",
  "inches",
  "oclock",
]);

/** The column that a heading names, by title, by key or by another name that sheets give it. */
export function columnNamed(heading: string, columns: readonly GridColumn[]): GridColumn | null {
  const wanted = folded(heading);
  if (wanted === "") return null;
  return columns.find((column) => namesOf(column).includes(wanted)) ?? null;
}

function namesOf(column: GridColumn): string[] {
  return [column.title, column.key, ...(column.pasteHeadings ?? [])].map(folded);
}

/** Lower case and written out, without units, spaces and signs: `Dist. (ft)` is `distance`. */
function folded(text: string): string {
  const words = text
    .toLowerCase()
    .replace(/\([^)]*\)/g, " ")
    .replace(/['’]/g, "")
    .split(/[^\p{L}\p{N}]+/u)
    .filter((word) => word !== "");
  const last = words.at(-1);
  const named =
    words.length > 1 && last !== undefined && UNITS.has(last) ? words.slice(0, -1) : words;
  return named.map((word) => LONG_WORDS[word] ?? word).join("");
}

/**
 * Whether the first of some rows is a row of headings: at least two of its cells, and more than half
 * of the filled ones, are names of columns; or one is, no cell of it holds a number, and the rows
 * beneath hold some.
 */
export function areHeadings(
  [first = [], ...rest]: readonly (readonly string[])[],
  columns: readonly GridColumn[],
): boolean {
  const filled = first.filter((cell) => cell !== "");
  const known = filled.filter((cell) => columnNamed(cell, columns) !== null).length;
  if (known >= Math.min(2, first.length) && known * 2 > filled.length) return true;
  const worded = first.length > 1 && !filled.some((cell) => /\d/.test(cell));
  return known > 0 && worded && rest.some((row) => row.some((cell) => /^[-+.\d]/.test(cell)));
}

/** Which column each heading names; each column once, the first that names it. */
export function matchHeadings(
  headings: readonly string[],
  columns: readonly GridColumn[],
): (GridColumn | null)[] {
  const taken = new Set<string>();
  return headings.map((heading) => {
    const column = columnNamed(heading, columns);
    if (column === null || taken.has(column.key)) return null;
    taken.add(column.key);
    return column;
  });
}
