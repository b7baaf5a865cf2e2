import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";
import { err, ok, type Result } from "#lib/result.ts";
import { MOST_COLUMNS, MOST_ROWS, TOO_WIDE } from "./sheet.ts";

/** A part of a workbook with the cells of one sheet. */
const SHEET = /^xl\/worksheets\/[^/]+\.xml$/;
/** A cell: its tag with its attributes, then either its end or what is in it up to its end. */
const CELL = /<((?:\w+:)?c)\b([^>]*?)(?:\/>|>((?:(?!<\/\1>)[\s\S])*)<\/\1>)/g;
/** A row that says its number and has no cell. */
const EMPTY_ROW = /<((?:\w+:)?row)\b([^>]*?)(?:\/>|>\s*<\/\1>)/g;
const ROW_NUMBER = /\br\s*=\s*["'](\d+)["']/;
const PLACE = /\br\s*=\s*["']([A-Za-z]{1,3})(\d{1,7})["']/;
const ANY_PLACE = /\br\s*=\s*["']/;
/** What makes a cell more than a colored square. */
const FILLED = /<(?:\w+:)?(?:v|is|f)\b/;
const ROWS_TOLD = 9_999_999;

/**
 * The workbook with no cell beyond what comes in at once: whoever reads it makes room for every row
 * and column up to the farthest cell, however few cells there are. Cells without anything in them are
 * left out there; one with something in it is refused in words.
 */
export function withinLimits(bytes: Uint8Array): Result<Uint8Array, string> {
  const parts = unzipSync(bytes);
  let changed = false;
  for (const [name, part] of Object.entries(parts)) {
    if (!SHEET.test(name)) continue;
    const near = nearCells(strFromU8(part));
    if (!near.ok) return near;
    if (near.value === null) continue;
    parts[name] = strToU8(near.value);
    changed = true;
  }
  return ok(changed ? zipSync(parts, { level: 0 }) : bytes);
}

/** The sheet without far cells; null where there are none. */
function nearCells(xml: string): Result<string | null, string> {
  let rows = 0;
  let columns = 0;
  let dropped = false;
  const near = xml.replace(CELL, (cell, _tag, attributes: string, inside: string | undefined) => {
    const place = placeOf(attributes);
    if (place === null || (place.row <= MOST_ROWS + 1 && place.column <= MOST_COLUMNS + 1))
      return cell;
    if (FILLED.test(inside ?? "")) {
      rows = Math.max(rows, place.row);
      columns = Math.max(columns, place.column);
    }
    dropped = true;
    return "";
  });
  const short = near.replace(EMPTY_ROW, (row, _tag, attributes: string) => {
    if (Number(ROW_NUMBER.exec(attributes)?.[1] ?? 0) <= MOST_ROWS + 1) return row;
    dropped = true;
    return "";
  });
  if (rows > MOST_ROWS + 1)
    return err(
      `The file has a cell in row ${Math.min(rows, ROWS_TOLD).toLocaleString("en-US")}; at most 2,000 rows can be imported at once. Remove what is so far down, or split the table into parts.`,
    );
  if (columns > MOST_COLUMNS) return err(TOO_WIDE);
  return ok(dropped ? short : null);
}

/** Where a cell stands; null where it does not say, and so follows the one before it. */
function placeOf(attributes: string): { row: number; column: number } | null {
  const [, letters, digits] = PLACE.exec(attributes) ?? [];
  if (letters === undefined || digits === undefined)
    return ANY_PLACE.test(attributes)
      ? { row: Number.POSITIVE_INFINITY, column: Number.POSITIVE_INFINITY }
      : null;
  const column = [...letters.toUpperCase()].reduce(
    (sum, letter) => sum * 26 + letter.charCodeAt(0) - 64,
    0,
  );
  return { row: Number(digits), column };
}
