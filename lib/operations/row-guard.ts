import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { RowTable } from "#lib/domain/facts/row-table.ts";

/** Fields that a named person settles with a reason, and that no table saves in passing. */
const SETTLED: Partial<Record<RowTable, Readonly<Record<string, unknown>>>> = {
  tieIns: {
    kind: "unknown",
    propertyId: null,
    inactive: false,
    settledReason: "",
    settledBy: "",
    settledOn: null,
    ownerAccepted: false,
  },
  changeOrders: { state: "proposed" },
  entries: { explanation: "", explainedBy: "", explainedOn: null },
};

/** Cells that would settle something without saying who and why. */
export function settledElsewhere({
  table,
  before,
  after,
}: {
  table: RowTable;
  before: LineFile;
  after: LineFile;
}): { row: number; column: string; message: string }[] {
  const guarded = SETTLED[table];
  if (!guarded) return [];
  const old = new Map(before[table].map((row) => [row.id, row as unknown as Fields]));
  return after[table].flatMap((row, at) => {
    const was = old.get(row.id) ?? guarded;
    const is = row as unknown as Fields;
    return Object.keys(guarded)
      .filter((column) => was[column] !== is[column])
      .map((column) => ({
        row: at,
        column,
        message:
          table === "changeOrders"
            ? "A change order is agreed or refused with a name and a reason, under “Changes”"
            : "This is settled with a name and a reason; use “Settle” or “Explain” beside it",
      }));
  });
}

type Fields = Readonly<Record<string, unknown>>;
