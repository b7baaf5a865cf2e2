import type { ScopeItem } from "#lib/domain/facts/scope.ts";
import { itemAmount } from "#lib/domain/sharing/item-amount.ts";
import { formatCell } from "./cell.ts";
import type { ComputedColumn, GridRow } from "./column.ts";

const AMOUNT = { key: "", title: "", kind: "cents" } as const;

/** What a column that nobody types says of a row. */
export function computedText(computed: ComputedColumn, row: GridRow): string {
  if (typeof computed === "function") return computed(row);
  if (typeof computed === "object")
    return computed.words[String(row["id"])]?.[String(row[computed.field])] ?? "";
  const cents = itemCents(row);
  return cents === null ? "" : formatCell(AMOUNT, cents);
}

/** The sum of such a column, in its own unit; empty where it has none. */
export function computedSum(computed: ComputedColumn, rows: readonly GridRow[]): string {
  if (computed !== "item-amount") return "";
  const sum = rows.reduce((total, row) => total + (itemCents(row) ?? 0), 0);
  return formatCell(AMOUNT, sum);
}

/** Cents of a scope item, or null while its numbers are not all there. */
function itemCents(row: GridRow): number | null {
  const numbers = ["quantity", "rate", "markup", "tax"].map((name) => row[name]);
  if (!numbers.every((value) => Number.isSafeInteger(value))) return null;
  return itemAmount(row as unknown as ScopeItem);
}
