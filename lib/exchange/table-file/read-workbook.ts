import readSheets from "read-excel-file/universal";
import { err, ok, type Result } from "#lib/result.ts";
import type { Sheet } from "./sheet.ts";
import { unpackedSize } from "./unpacked-size.ts";
import { withinLimits } from "./within-limits.ts";

const MOST_UNPACKED = 60_000_000;

const DAMAGED =
  "This looks like a spreadsheet, but it can’t be opened: it may be damaged or locked with a password. Open it, save it again as XLSX without a password, and choose it again.";

/** The sheets of an XLSX workbook as they show: a formula as the value that was saved with it. */
export async function readWorkbook(bytes: Uint8Array): Promise<Result<Sheet[], string>> {
  const size = unpackedSize(bytes);
  if (size === null) return err(DAMAGED);
  if (size > MOST_UNPACKED)
    return err("This spreadsheet is too large when unpacked. Save the one sheet as CSV.");
  try {
    const within = withinLimits(bytes);
    if (!within.ok) return within;
    const sheets = await readSheets(new Uint8Array(within.value).buffer);
    return ok(
      sheets.map(({ sheet, data }) => ({
        name: sheet,
        rows: data.map((row) => row.map((cell) => textOf(cell))),
      })),
    );
  } catch {
    return err(DAMAGED);
  }
}

/** A cell's value as a person would type it. */
function textOf(value: unknown): string {
  if (value === null || value === undefined) return "";
  if (typeof value === "boolean") return value ? "yes" : "no";
  // A spreadsheet keeps 24.1 + 0.2 as 24.300000000000001.
  if (typeof value === "number") return String(Number(value.toPrecision(12)));
  return value instanceof Date ? dateText(value) : String(value).trim();
}

const BEFORE_DAYS = Date.UTC(1900, 0, 1);

/**
 * A day as yyyy-mm-dd. What lies before the first day that sheets count is a time: `2:58` typed into
 * a sheet is kept as hours and minutes, though a video time means minutes and seconds; so it comes
 * as it shows, `2:58`, and the column decides what it is.
 */
function dateText(date: Date): string {
  const seconds = Math.round(date.getTime() / 1_000);
  if (date.getTime() >= BEFORE_DAYS) return new Date(seconds * 1_000).toISOString().slice(0, 10);
  const ofDay = ((seconds % 86_400) + 86_400) % 86_400;
  const hours = Math.floor(ofDay / 3_600);
  const minutes = Math.floor((ofDay % 3_600) / 60);
  const rest = ofDay % 60;
  const two = (part: number) => String(part).padStart(2, "0");
  if (hours === 0) return `${minutes}:${two(rest)}`;
  return rest === 0 ? `${hours}:${two(minutes)}` : `${hours}:${two(minutes)}:${two(rest)}`;
}
