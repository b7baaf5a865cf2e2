import type { GridRow } from "./column.ts";

/** A row that two people changed differently; null: removed. */
export interface Clash {
  readonly id: string;
  readonly mine: GridRow | null;
  readonly theirs: GridRow | null;
}

export interface Merged {
  /** Both changes together; where they clash, mine. */
  readonly rows: readonly GridRow[];
  readonly clashes: readonly Clash[];
}

/**
 * Puts two people's changes to the same rows together, field by field. A clash is a field that both
 * changed to different values, or a row that one changed and the other removed.
 */
export function mergeRows(
  base: readonly GridRow[],
  mine: readonly GridRow[],
  theirs: readonly GridRow[],
): Merged {
  const was = byId(base);
  const here = byId(mine);
  const there = byId(theirs);
  const clashes: Clash[] = [];
  const rows: GridRow[] = [];
  const ids = [...new Set([...theirs.map(idOf), ...mine.map(idOf)])];
  for (const id of inOrder(ids, mine)) {
    const one = mergeRow(was.get(id) ?? null, here.get(id) ?? null, there.get(id) ?? null);
    if (one.clash) clashes.push({ id, mine: here.get(id) ?? null, theirs: there.get(id) ?? null });
    if (one.row !== null) rows.push(one.row);
  }
  return { rows, clashes };
}

/** The merged rows with the clashing ones as the other person has them. */
export function withTheirs(merged: Merged): readonly GridRow[] {
  const clashing = byId(
    merged.clashes.flatMap((clash) => (clash.theirs === null ? [] : [clash.theirs])),
  );
  const gone = new Set(
    merged.clashes.filter((clash) => clash.theirs === null).map((clash) => clash.id),
  );
  const kept = merged.rows
    .filter((row) => !gone.has(idOf(row)))
    .map((row) => clashing.get(idOf(row)) ?? row);
  const there = new Set(kept.map(idOf));
  const back = [...clashing.values()].filter((row) => !there.has(idOf(row)));
  return [...kept, ...back];
}

/** Of `rows` those that `known` lacks or has otherwise. */
export function changedRows(known: readonly GridRow[], rows: readonly GridRow[]): GridRow[] {
  const before = byId(known);
  return rows.filter((row) => {
    const was = before.get(idOf(row));
    return was === undefined || !isSame(was, row);
  });
}

export function idOf(row: GridRow): string {
  return String(row["id"]);
}

/** Whether two values are the same by content, whatever the order of their fields. */
export function isSame(one: unknown, other: unknown): boolean {
  return one === other || JSON.stringify(sorted(one)) === JSON.stringify(sorted(other));
}

function mergeRow(
  was: GridRow | null,
  here: GridRow | null,
  there: GridRow | null,
): { row: GridRow | null; clash: boolean } {
  if (here === null && there === null) return { row: null, clash: false };
  if (here === null || there === null) return mergeRemoved(was, here, there);
  let clash = false;
  const row: Record<string, unknown> = {};
  for (const name of new Set([...Object.keys(there), ...Object.keys(here)])) {
    const mineChanged = was === null || !isSame(here[name], was[name]);
    const theirsChanged = was === null || !isSame(there[name], was[name]);
    if (mineChanged && theirsChanged && !isSame(here[name], there[name])) clash = true;
    row[name] = mineChanged ? here[name] : there[name];
  }
  return { row, clash };
}

function mergeRemoved(
  was: GridRow | null,
  here: GridRow | null,
  there: GridRow | null,
): { row: GridRow | null; clash: boolean } {
  const left = here ?? there;
  if (was === null) return { row: left, clash: false };
  if (isSame(left, was)) return { row: null, clash: false };
  return { row: here, clash: true };
}

function byId(rows: readonly GridRow[]): Map<string, GridRow> {
  return new Map(rows.map((row) => [idOf(row), row]));
}

/** My order for the rows that I have; rows that only they have go where they have them, at the end. */
function inOrder(ids: readonly string[], mine: readonly GridRow[]): string[] {
  const order = mine.map(idOf);
  const have = new Set(order);
  return [...order, ...ids.filter((id) => !have.has(id))];
}

function sorted(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(sorted);
  if (typeof value !== "object" || value === null) return value;
  const entries = Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1));
  return Object.fromEntries(entries.map(([name, one]) => [name, sorted(one)]));
}
