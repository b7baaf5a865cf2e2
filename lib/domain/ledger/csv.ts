import type { LedgerEntry } from "../facts/ledger-entry.ts";
import type { LineFile } from "../facts/line-file.ts";
import type { Cents } from "../money/cents.ts";
import { propertyLabel } from "../sharing/sharers.ts";
import { effectOf, inNumberOrder } from "./balance.ts";

/** Names of the columns, in their order. */
export const CSV_HEAD = [
  "Number",
  "Date",
  "Kind",
  "Property",
  "Billed to",
  "Charged",
  "Paid or credited",
  "Due",
  "Split version",
  "Reverses number",
  "Paid by",
  "Reference",
  "Note",
  "Entered by",
  "Entered at",
] as const;

/** Numbers stay numbers, so that a spreadsheet adds them up; what is not there is empty. */
export type CsvCell = string | number;

type Books = Pick<LineFile, "ledger" | "properties" | "parties" | "splits">;

/**
 * The money book for a bookkeeper, an entry a row: dollars with two decimals in one of two columns,
 * never below zero; days as `yyyy-mm-dd`. A reversal stands in the column opposite to its entry.
 */
export function csvRows(file: Books): CsvCell[][] {
  return inNumberOrder(file.ledger).map((entry) => {
    const effect = effectOf(file.ledger, entry);
    return [
      entry.number,
      entry.on,
      entry.kind,
      labelOf(file, entry),
      file.parties.find(({ id }) => id === entry.partyId)?.name ?? "",
      effect > 0 ? decimal(effect) : "",
      effect < 0 ? decimal(-effect) : "",
      entry.dueOn ?? "",
      file.splits.find(({ id }) => id === entry.splitId)?.number ?? "",
      file.ledger.find(({ id }) => id === entry.reversesId)?.number ?? "",
      entry.method ?? "",
      entry.reference,
      entry.note,
      entry.enteredBy,
      entry.enteredAt,
    ];
  });
}

function labelOf(file: Books, { propertyId }: LedgerEntry): string {
  const property = file.properties.find(({ id }) => id === propertyId);
  return property === undefined ? "" : propertyLabel(property);
}

/** `1864000` → `18640.00`, as text of digits and a point alone. */
function decimal(amount: Cents): string {
  return `${Math.floor(amount / 100)}.${String(amount % 100).padStart(2, "0")}`;
}
