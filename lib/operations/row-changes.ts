import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { LISTS } from "#lib/domain/facts/lists.ts";
import { nameRow } from "#lib/domain/facts/references.ts";
import type { RowTable } from "#lib/domain/facts/row-table.ts";

interface Row {
  readonly id: string;
}

/** How a table gets from one state to another. */
export interface RowChanges {
  readonly any: boolean;
  readonly added: readonly Row[];
  readonly removed: readonly Row[];
  readonly changed: readonly { readonly before: Row; readonly after: Row }[];
  /** Rows to write, each at its place. */
  readonly placed: readonly { readonly row: Row; readonly position: number; isNew: boolean }[];
}

/** What differs between two states of a table, row by row by id. */
export function rowChanges(before: readonly Row[], after: readonly Row[]): RowChanges {
  const old = new Map(before.map((row) => [row.id, row]));
  const left = new Set(after.map(({ id }) => id));
  const moved = before.map(({ id }) => id).join("\n") !== after.map(({ id }) => id).join("\n");
  const added = after.filter(({ id }) => !old.has(id));
  const removed = before.filter(({ id }) => !left.has(id));
  const changed = after.flatMap((row) => {
    const was = old.get(row.id);
    return was && changedFields(was, row).length > 0 ? [{ before: was, after: row }] : [];
  });
  const touched = new Set([...added, ...changed.map((each) => each.after)].map(({ id }) => id));
  const placed = after
    .map((row, position) => ({ row, position, isNew: !old.has(row.id) }))
    .filter(({ row }) => moved || touched.has(row.id));
  return { any: moved || placed.length > 0, added, removed, changed, placed };
}

function changedFields(before: Row, after: Row): string[] {
  const a = before as unknown as Record<string, unknown>;
  const b = after as unknown as Record<string, unknown>;
  return Object.keys(b).filter((field) => JSON.stringify(a[field]) !== JSON.stringify(b[field]));
}

/** The changes of one or more tables as a sentence and as a record of before and after. */
export function tellChanges(
  { before, after }: { before: LineFile; after: LineFile },
  changes: readonly (RowChanges & { readonly table: RowTable })[],
): { sentence: string; detail: unknown } {
  const sentences = changes.map(({ table, added, removed, changed }) =>
    [
      phrase("Added", added, (id) => nameRow(after, table, id), LISTS[table].one),
      phrase(
        "Changed",
        changed.map((each) => each.after),
        (id) => nameRow(after, table, id),
        LISTS[table].one,
      ),
      phrase("Removed", removed, (id) => nameRow(before, table, id), LISTS[table].one),
    ]
      .filter((words) => words !== "")
      .join(" "),
  );
  const detail = Object.fromEntries(
    changes.map(({ table, added, removed, changed, placed }) => [
      table,
      {
        added,
        removed,
        changed: changed.map((pair) => differing(pair.before, pair.after)),
        ...(added.length + removed.length + changed.length === 0
          ? { order: placed.map(({ row }) => row.id) }
          : {}),
      },
    ]),
  );
  const told = sentences.filter((words) => words !== "").join(" ");
  return { sentence: told === "" ? "Changed the order of rows." : told, detail };
}

function phrase(
  verb: string,
  rows: readonly Row[],
  name: (id: string) => string,
  word: string,
): string {
  if (rows.length === 0) return "";
  const names = rows.slice(0, 3).map(({ id }) => name(id).replace(`${word} `, ""));
  const rest = rows.length - names.length;
  const kind = rows.length === 1 ? word : `${rows.length} × ${word}`;
  const list = names.filter((each) => each !== "" && each !== word).join(", ");
  const more = rest > 0 ? ` and ${rest} more` : "";
  return `${verb} ${kind}${list === "" ? "" : `: ${list}${more}`}.`;
}

/** Only what differs, before and after. */
function differing(before: Row, after: Row): unknown {
  const fields = changedFields(before, after);
  const pick = (row: Row) =>
    Object.fromEntries(
      fields.map((field) => [field, (row as unknown as Record<string, unknown>)[field]]),
    );
  return { id: after.id, before: pick(before), after: pick(after) };
}
