import type { GridColumn, GridRow } from "./column.ts";
import type {
  Draft,
  GridAction,
  GridLine,
  GridSpec,
  GridState,
  Patch,
  Step,
} from "./grid-state.ts";
import { idOf, mergeRows, withTheirs } from "./merge.ts";
import { blankKey, changed, left, pasted, placedPaste, readAgain } from "./paste-rows.ts";
import {
  applied,
  cellPatch,
  fieldPatch,
  freshLine,
  joined,
  newRow,
  turned,
  unsureBefore,
  unsurePatches,
} from "./patches.ts";
import { withProblems } from "./problems.ts";

export function startGrid(rows: readonly GridRow[], base: number, spec: GridSpec): GridState {
  return {
    ...placed(rows, [], spec),
    baseRows: rows,
    base,
    past: [],
    future: [],
    edits: 0,
    savedEdits: 0,
    blanks: 0,
    conflict: null,
    asked: null,
    note: "",
  };
}

/** The whole table as it would be saved. */
export function allRows(state: GridState): GridRow[] {
  return [...state.hidden, ...state.lines.map((line) => line.values)];
}

export function isDirty(state: GridState): boolean {
  return state.edits !== state.savedEdits;
}

/** One change of the table. Pure: ids of new rows come with the action. */
export function reduceGrid(state: GridState, action: GridAction, spec: GridSpec): GridState {
  switch (action.do) {
    case "type":
      return typed(state, action, spec);
    case "leave":
      return left(state);
    case "paste":
      return pasted(state, action, spec);
    case "read-paste":
      return readAgain(state, action.heads, spec);
    case "place-paste":
      return placedPaste(state, action, spec);
    case "drop-paste":
      return { ...state, asked: null, note: "Nothing was pasted." };
    case "remove":
      return removed(state, action.key);
    case "add":
      return added(state, action, spec);
    case "set":
      return fieldSet(state, action);
    case "undo":
      return undone(state);
    case "redo":
      return redone(state);
    case "saved":
      return { ...state, baseRows: action.rows, base: action.base, savedEdits: action.edits };
    case "refused":
      return { ...state, lines: withProblems(state.lines, action) };
    case "theirs":
      return met(state, action, spec);
    case "keep-mine":
      return decided(state, "mine", spec);
    case "take-theirs":
      return decided(state, "theirs", spec);
    case "restore":
      return restored(state, action.draft, spec);
  }
}

function typed(
  state: GridState,
  { key, column, text, newId }: Extract<GridAction, { do: "type" }>,
  spec: GridSpec,
): GridState {
  const at = state.lines.findIndex((line) => line.key === key);
  const existing = state.lines[at];
  if (existing === undefined) return typedInBlank(state, { column, text, newId }, spec);
  const patch = cellPatch(existing, { column, text }, spec);
  const place = `${existing.id}:${column.key}`;
  const last = state.past.at(-1);
  if (last !== undefined && last.typingIn === place) {
    const aside = unsurePatches(existing, { column, text, before: unsureBefore(last, column) });
    const past = [...state.past.slice(0, -1), joined(last, aside, patch)];
    return changed({ ...applied(state, [...aside, patch]), past, future: [] });
  }
  const settled = Object.entries(column.settles ?? {}).map(([field, value]) =>
    fieldPatch(existing, { field, value }),
  );
  const patches = [...settled, ...unsurePatches(existing, { column, text }), patch];
  const step = { patches, typingIn: place };
  return changed({ ...applied(state, patches), past: [...state.past, step], future: [] });
}

function added(
  state: GridState,
  { newId, values }: Extract<GridAction, { do: "add" }>,
  spec: GridSpec,
): GridState {
  const line = freshLine(newId, { ...newRow(spec, newId), ...values, ...spec.where, id: newId });
  const step: Step = {
    patches: [{ kind: "add", at: state.lines.length, line }],
    typingIn: null,
  };
  const past = [...left(state).past, step];
  return changed({ ...applied(state, step.patches), past, future: [] });
}

function fieldSet(
  state: GridState,
  { id, field, value }: Extract<GridAction, { do: "set" }>,
): GridState {
  const line = state.lines.find((each) => each.id === id);
  if (line === undefined) return state;
  const patch = fieldPatch(line, { field, value });
  const past = [...left(state).past, { patches: [patch], typingIn: null }];
  return changed({ ...applied(state, [patch]), past, future: [] });
}

function typedInBlank(
  state: GridState,
  { column, text, newId }: { column: GridColumn; text: string; newId: string },
  spec: GridSpec,
): GridState {
  if (text.trim() === "") return state;
  const line = freshLine(blankKey(state), newRow(spec, newId));
  const patches: Patch[] = [
    { kind: "add", at: state.lines.length, line },
    ...unsurePatches(line, { column, text }),
    cellPatch(line, { column, text }, spec),
  ];
  const step = { patches, typingIn: `${newId}:${column.key}` };
  const grown = { ...state, blanks: state.blanks + 1 };
  return changed({ ...applied(grown, patches), past: [...state.past, step], future: [] });
}

function removed(state: GridState, key: string): GridState {
  const at = state.lines.findIndex((line) => line.key === key);
  const line = state.lines[at];
  if (line === undefined) return state;
  const step: Step = { patches: [{ kind: "remove", at, line }], typingIn: null };
  return changed({
    ...state,
    lines: state.lines.filter((one) => one.key !== key),
    past: [...left(state).past, step],
    future: [],
    note: "1 row removed. Ctrl+Z to undo.",
  });
}

function undone(state: GridState): GridState {
  const step = state.past.at(-1);
  if (step === undefined) return { ...state, note: "Nothing to undo." };
  const back = step.patches.toReversed().map(turned);
  return changed({
    ...applied(state, back),
    past: state.past.slice(0, -1),
    future: [{ ...step, typingIn: null }, ...state.future],
    note: "",
  });
}

function redone(state: GridState): GridState {
  const [step, ...future] = state.future;
  if (step === undefined) return { ...state, note: "Nothing to redo." };
  return changed({
    ...applied(state, step.patches),
    past: [...state.past, step],
    future,
    note: "",
  });
}

/** Other rows came from the file: ours are put together with them, or a person has to choose. */
function met(
  state: GridState,
  { rows, base, by, at }: Extract<GridAction, { do: "theirs" }>,
  spec: GridSpec,
): GridState {
  if (!isDirty(state)) {
    return { ...state, ...placed(rows, state.lines, spec), baseRows: rows, base, conflict: null };
  }
  const merged = mergeRows(state.baseRows, allRows(state), rows);
  if (merged.clashes.length > 0) return { ...state, conflict: { by, at, base, rows } };
  return {
    ...state,
    ...placed(merged.rows, state.lines, spec),
    baseRows: rows,
    base,
    conflict: null,
    note:
      by === ""
        ? state.note
        : `${by} saved other changes in the meantime. Both sets of changes are kept.`,
  };
}

function decided(state: GridState, whose: "mine" | "theirs", spec: GridSpec): GridState {
  const { conflict } = state;
  if (conflict === null) return state;
  const merged = mergeRows(state.baseRows, allRows(state), conflict.rows);
  const rows = whose === "mine" ? merged.rows : withTheirs(merged);
  return changed({
    ...state,
    ...placed(rows, whose === "mine" ? state.lines : [], spec),
    baseRows: conflict.rows,
    base: conflict.base,
    conflict: null,
    note: whose === "mine" ? "Your version was kept." : `${conflict.by}’s version was kept.`,
  });
}

function restored(state: GridState, draft: Draft, spec: GridSpec): GridState {
  const { lines, hidden } = placed(draft.rows, state.lines, spec);
  return changed({
    ...state,
    lines: lines.map((line) => ({ ...line, raw: draft.raw[line.id] ?? {} })),
    hidden,
    base: draft.base,
    baseRows: draft.baseRows,
    note: "Unsaved changes were restored.",
  });
}

/** Rows as lines; lines that are there already keep their key and what was typed in them. */
function placed(
  rows: readonly GridRow[],
  old: readonly GridLine[],
  spec: GridSpec,
): { lines: GridLine[]; hidden: GridRow[] } {
  const known = new Map(old.map((line) => [line.id, line]));
  const shown = rows.filter((row) => isShown(row, spec));
  return {
    lines: shown.map((row) => {
      const line = known.get(idOf(row));
      return line === undefined ? freshLine(idOf(row), row) : { ...line, values: row };
    }),
    hidden: rows.filter((row) => !isShown(row, spec)),
  };
}

function isShown(row: GridRow, spec: GridSpec): boolean {
  return Object.entries(spec.where).every(([name, value]) => row[name] === value);
}
