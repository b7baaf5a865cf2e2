import { parseCell, unsureIn } from "./cell.ts";
import type { GridColumn, GridRow } from "./column.ts";
import { withValueAt } from "./field-path.ts";
import type { CellState, GridLine, GridSpec, GridState, Patch, Step } from "./grid-state.ts";
import { idOf } from "./merge.ts";

/** A new row, before anything is typed into it. */
export function newRow(spec: GridSpec, id: string): GridRow {
  const row: Record<string, unknown> = {};
  for (const column of spec.columns) {
    if (column.computed !== undefined) continue;
    const [top = ""] = column.key.split(/[.[]/);
    if (top === column.key) row[top] = emptyValue(column);
    else if (column.key.startsWith(`${top}.`)) {
      row[top] = { ...(row[top] as object | undefined), [column.key.slice(top.length + 1)]: "" };
    } else row[top] ??= [];
  }
  return { ...row, ...spec.blank, ...spec.where, id };
}

function emptyValue(column: GridColumn): unknown {
  if (column.kind === "yesno") return false;
  return column.kind === "text" || column.kind === "time" ? "" : null;
}

/**
 * How unsure a reading was typed goes into a field of its own; what stood there `before` the typing
 * began comes back when the reading is made exact.
 */
export function unsurePatches(
  line: GridLine,
  { column, text, before }: { column: GridColumn; text: string; before?: CellState | undefined },
): Patch[] {
  const off = unsureIn(column, text);
  if (column.unsure === undefined || (off === null && before === undefined)) return [];
  const patch = fieldPatch(line, { field: column.unsure, value: off ?? before?.value });
  return before === undefined || patch.kind !== "cell" ? [patch] : [{ ...patch, before }];
}

export function unsureBefore(last: Step, { unsure }: GridColumn): CellState | undefined {
  const found = last.patches.find((patch) => patch.kind === "cell" && patch.column === unsure);
  return found?.kind === "cell" ? found.before : undefined;
}

/** A field of the row that no cell of its own shows. */
export function fieldPatch(
  line: GridLine,
  { field, value }: { readonly field: string; readonly value: unknown },
): Patch {
  const before = { value: topValue(line.values, field), raw: line.raw[field] };
  return { kind: "cell", id: line.id, column: field, before, after: { value, raw: undefined } };
}

export function turned(patch: Patch): Patch {
  if (patch.kind === "cell") return { ...patch, before: patch.after, after: patch.before };
  return { ...patch, kind: patch.kind === "add" ? "remove" : "add" };
}

export function freshLine(key: string, values: GridRow): GridLine {
  return { key, id: idOf(values), values, raw: {}, problems: {} };
}

export function cellPatch(
  line: GridLine,
  { column, text }: { column: GridColumn; text: string },
  spec: GridSpec,
): Patch {
  const before = {
    value: topValue(line.values, column.key),
    raw: line.raw[column.key],
  };
  const read = parseCell(column, text);
  if (!read.ok) {
    return {
      kind: "cell",
      id: line.id,
      column: column.key,
      before,
      after: { ...before, raw: text },
    };
  }
  const values = withValueAt(line.values, column.key, {
    value: read.value,
    siblings: spec.columns.map((one) => one.key),
    blank: spec.blank,
  });
  const after = { value: topValue(values, column.key), raw: undefined };
  return { kind: "cell", id: line.id, column: column.key, before, after };
}

/** Letters typed on in the same cell: one step from what was there first to what is there now. */
export function joined(last: Step, aside: readonly Patch[], patch: Patch): Step {
  const old = last.patches.at(-1);
  if (old?.kind !== "cell" || patch.kind !== "cell") return last;
  const isAgain = (one: Patch) =>
    one.kind === "cell" &&
    aside.some((other) => other.kind === "cell" && other.column === one.column);
  const kept = last.patches.slice(0, -1).filter((one) => !isAgain(one));
  return { ...last, patches: [...kept, ...aside, { ...patch, before: old.before }] };
}

export function applied(state: GridState, patches: readonly Patch[]): GridState {
  let { lines } = state;
  for (const patch of patches) lines = withPatch(lines, patch);
  return { ...state, lines };
}

function withPatch(lines: readonly GridLine[], patch: Patch): readonly GridLine[] {
  if (patch.kind === "add")
    return [...lines.slice(0, patch.at), patch.line, ...lines.slice(patch.at)];
  if (patch.kind === "remove") return lines.filter((line) => line.id !== patch.line.id);
  return lines.map((line) =>
    line.id === patch.id ? withCell(line, patch.column, patch.after) : line,
  );
}

function withCell(line: GridLine, column: string, { value, raw }: CellState): GridLine {
  const { [column]: _raw, ...otherRaw } = line.raw;
  return {
    ...line,
    values: { ...line.values, [topOf(column)]: value },
    raw: raw === undefined ? otherRaw : { ...otherRaw, [column]: raw },
    problems: {},
  };
}

/** A patch keeps the whole field that a path leads into, so that it can be put back as it was. */
function topValue(row: GridRow, path: string): unknown {
  return row[topOf(path)];
}

function topOf(path: string): string {
  return path.split(/[.[]/)[0] ?? path;
}
