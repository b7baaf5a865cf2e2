import { parseCell, unsureIn } from "./cell.ts";
import type { GridColumn, GridRow } from "./column.ts";
import { valueAt, withValueAt } from "./field-path.ts";
import { idOf, isSame, mergeRows, withTheirs } from "./merge.ts";
import { type Pasted, readPasted } from "./paste.ts";

/** What a table of rows is made of. */
export interface GridSpec {
  readonly columns: readonly GridColumn[];
  /** Fields of a new row that no column shows, or that do not start empty. */
  readonly blank: GridRow;
  /** Shows and adds only rows with these values; the others are kept and saved along. */
  readonly where: Readonly<Record<string, unknown>>;
}

export interface GridLine {
  /** Stays the same while the line is on the screen, also when the blank line becomes a row. */
  readonly key: string;
  readonly id: string;
  readonly values: GridRow;
  /** What was typed and could not be read, by column. */
  readonly raw: Readonly<Record<string, string>>;
  /** What saving found wrong, by column. */
  readonly problems: Readonly<Record<string, string>>;
}

interface CellState {
  readonly value: unknown;
  readonly raw: string | undefined;
}

type Patch =
  | {
      readonly kind: "cell";
      readonly id: string;
      readonly column: string;
      readonly before: CellState;
      readonly after: CellState;
    }
  | { readonly kind: "add"; readonly at: number; readonly line: GridLine }
  | { readonly kind: "remove"; readonly at: number; readonly line: GridLine };

interface Step {
  readonly patches: readonly Patch[];
  /** The cell still being typed in; more letters join the same step. */
  readonly typingIn: string | null;
}

/** Pasted rows that wait for a word on where some of their columns go. */
interface AskedPaste {
  readonly at: number;
  readonly column: number;
  readonly cells: readonly (readonly string[])[];
  readonly newIds: readonly string[];
  readonly pasted: Pasted;
}

interface Conflict {
  readonly by: string;
  readonly at: string;
  readonly base: number;
  readonly rows: readonly GridRow[];
}

export interface GridState {
  readonly lines: readonly GridLine[];
  /** Rows of the table that this grid does not show. */
  readonly hidden: readonly GridRow[];
  /** The whole table as it was last known to be saved, and its revision. */
  readonly baseRows: readonly GridRow[];
  readonly base: number;
  readonly past: readonly Step[];
  readonly future: readonly Step[];
  readonly edits: number;
  readonly savedEdits: number;
  /** Numbers the blank lines, so that each has its own key. */
  readonly blanks: number;
  readonly conflict: Conflict | null;
  readonly asked: AskedPaste | null;
  readonly note: string;
}

/** Rows typed and not saved, as kept in the browser. */
export interface Draft {
  readonly base: number;
  readonly baseRows: readonly GridRow[];
  readonly rows: readonly GridRow[];
  readonly raw: Readonly<Record<string, Readonly<Record<string, string>>>>;
}

export type GridAction =
  | {
      readonly do: "type";
      readonly key: string;
      readonly column: GridColumn;
      readonly text: string;
      readonly newId: string;
    }
  | { readonly do: "leave" }
  | {
      readonly do: "paste";
      readonly at: number;
      readonly column: number;
      readonly cells: readonly (readonly string[])[];
      readonly newIds: readonly string[];
    }
  /** The first of the pasted rows is one of headings, or it is not. */
  | { readonly do: "read-paste"; readonly heads: boolean }
  /** For each pasted column that was open: the key of its column, or null to leave it out. */
  | { readonly do: "place-paste"; readonly into: Readonly<Record<number, string | null>> }
  | { readonly do: "drop-paste" }
  | { readonly do: "remove"; readonly key: string }
  /** A row that comes from elsewhere on the page, with what is known of it. */
  | { readonly do: "add"; readonly newId: string; readonly values: GridRow }
  | {
      readonly do: "set";
      readonly id: string;
      readonly field: string;
      readonly value: unknown;
    }
  | { readonly do: "undo" }
  | { readonly do: "redo" }
  | {
      readonly do: "saved";
      readonly rows: readonly GridRow[];
      readonly base: number;
      readonly edits: number;
    }
  | {
      readonly do: "refused";
      /** The table as it was sent. */
      readonly rows: readonly GridRow[];
      readonly cells: readonly {
        readonly id: string;
        readonly column: string;
        readonly message: string;
      }[];
    }
  | {
      readonly do: "theirs";
      readonly rows: readonly GridRow[];
      readonly base: number;
      readonly by: string;
      readonly at: string;
    }
  | { readonly do: "keep-mine" }
  | { readonly do: "take-theirs" }
  | { readonly do: "restore"; readonly draft: Draft };

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

export function blankKey(state: GridState): string {
  return `blank-${state.blanks}`;
}

/** What is to be mended in a cell, in words; null where nothing is. */
export function problemIn(line: GridLine, column: GridColumn): string | null {
  if (column.computed !== undefined) return null;
  const typed = line.raw[column.key];
  if (typed !== undefined) {
    const read = parseCell(column, typed);
    return read.ok ? null : read.error;
  }
  const found = line.problems[column.key];
  if (found !== undefined) return found;
  const value = valueAt(line.values, column.key);
  const empty = value === null || value === undefined || value === "";
  return empty && column.readOnly !== true ? emptyProblem(column) : null;
}

export interface Place {
  readonly row: number;
  readonly column: number;
}

/** Where something is to be mended, row by row. */
export function problemPlaces(
  { lines }: Pick<GridState, "lines">,
  columns: readonly GridColumn[],
): Place[] {
  return lines.flatMap((line, row) =>
    columns.flatMap((column, at) =>
      problemIn(line, column) === null ? [] : [{ row, column: at }],
    ),
  );
}

/** The next place after one, the first again after the last; null where there is none. */
export function placeAfter(places: readonly Place[], last: Place | null): Place | null {
  const next = places.find(
    ({ row, column }) =>
      last === null || row > last.row || (row === last.row && column > last.column),
  );
  return next ?? places[0] ?? null;
}

function emptyProblem(column: GridColumn): string | null {
  const read = parseCell(column, "");
  return read.ok ? null : read.error;
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

/** A new row, before anything is typed into it. */
function newRow(spec: GridSpec, id: string): GridRow {
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

/**
 * How unsure a reading was typed goes into a field of its own; what stood there `before` the typing
 * began comes back when the reading is made exact.
 */
function unsurePatches(
  line: GridLine,
  { column, text, before }: { column: GridColumn; text: string; before?: CellState | undefined },
): Patch[] {
  const off = unsureIn(column, text);
  if (column.unsure === undefined || (off === null && before === undefined)) return [];
  const patch = fieldPatch(line, { field: column.unsure, value: off ?? before?.value });
  return before === undefined || patch.kind !== "cell" ? [patch] : [{ ...patch, before }];
}

function unsureBefore(last: Step, { unsure }: GridColumn): CellState | undefined {
  const found = last.patches.find((patch) => patch.kind === "cell" && patch.column === unsure);
  return found?.kind === "cell" ? found.before : undefined;
}

/** A field of the row that no cell of its own shows. */
function fieldPatch(
  line: GridLine,
  { field, value }: { readonly field: string; readonly value: unknown },
): Patch {
  const before = { value: topValue(line.values, field), raw: line.raw[field] };
  return { kind: "cell", id: line.id, column: field, before, after: { value, raw: undefined } };
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

/** Nothing joins the last step any more. */
function left(state: GridState): GridState {
  const last = state.past.at(-1);
  if (last === undefined || last.typingIn === null) return state;
  return { ...state, past: [...state.past.slice(0, -1), { ...last, typingIn: null }] };
}

/** Rows go in where their columns are known; else a person is asked, and nothing goes in before. */
function pasted(
  state: GridState,
  { at, column, cells, newIds }: Extract<GridAction, { do: "paste" }>,
  spec: GridSpec,
): GridState {
  if (state.asked !== null)
    return { ...state, note: "First choose below where the columns of the last paste go." };
  const read = readPasted(cells, spec.columns, { from: column });
  const asked = { at, column, cells, newIds, pasted: read };
  return read.open.length > 0 ? { ...state, asked, note: "" } : put(state, asked, spec);
}

/** The same rows, with the first one taken as headings or as values. */
function readAgain(state: GridState, heads: boolean, spec: GridSpec): GridState {
  const { asked } = state;
  if (asked === null) return state;
  const read = readPasted(asked.cells, spec.columns, { from: asked.column, heads });
  return { ...state, asked: { ...asked, pasted: read } };
}

/** A person said where the open columns go; null: nowhere. */
function placedPaste(
  state: GridState,
  { into }: Extract<GridAction, { do: "place-paste" }>,
  spec: GridSpec,
): GridState {
  const { asked } = state;
  if (asked === null) return state;
  const said = asked.pasted.into.map((known, place) => {
    const key = into[place];
    return known ?? spec.columns.find((column) => column.key === key) ?? null;
  });
  return put(
    { ...state, asked: null },
    { ...asked, pasted: { ...asked.pasted, into: said } },
    spec,
  );
}

function put(
  state: GridState,
  { at, newIds, pasted: read }: AskedPaste,
  spec: GridSpec,
): GridState {
  const { body, headings, into } = read;
  let grown = state;
  const patches: Patch[] = [];
  body.forEach((row, index) => {
    const target = lineFor(grown, at + index, newIds[index] ?? "", spec);
    let line = target.line;
    if (target.patch !== null) patches.push(target.patch);
    grown = target.patch === null ? grown : addedBlank(grown, target.patch);
    for (const [place, text] of row.entries()) {
      const column = into[place];
      // On a new row an empty cell of the sheet leaves the usual value.
      if (!column || isFixed(column) || (target.patch !== null && text === "")) continue;
      const told = row[into.findIndex((each) => each?.key === column.unsure)] ?? "";
      const cell = pastedCell(line, { column, text, told }, spec);
      patches.push(...cell);
      grown = applied(grown, cell);
      line = grown.lines.find((one) => one.id === line.id) ?? line;
    }
  });
  const step = { patches, typingIn: null };
  const words = body.length === 1 ? "1 row pasted" : `${body.length} rows pasted`;
  const said = headings === null ? `${words}.` : `${words}; the first row was treated as headings.`;
  const note = [said, ...fixedWords(read)].join(" ");
  return changed({ ...grown, past: [...left(state).past, step], future: [], note });
}

/** A pasted cell; `told` is how unsure the sheet itself says that its reading is. */
function pastedCell(
  line: GridLine,
  { column, text, told }: { column: GridColumn; text: string; told: string },
  spec: GridSpec,
): Patch[] {
  const aside = told === "" ? unsurePatches(line, { column, text }) : [];
  return [...aside, cellPatch(line, { column, text }, spec)];
}

/** Says which pasted columns were passed over because the program works them out. */
function fixedWords({ body, into }: Pasted): string[] {
  return into.flatMap((column, place) =>
    column !== null && isFixed(column) && body.some((row) => (row[place] ?? "") !== "")
      ? [`${column.title} is calculated here and was not pasted.`]
      : [],
  );
}

/** Nobody types in it. */
function isFixed(column: GridColumn): boolean {
  return column.readOnly === true || column.computed !== undefined;
}

function lineFor(
  state: GridState,
  at: number,
  newId: string,
  spec: GridSpec,
): { line: GridLine; patch: Patch | null } {
  const existing = state.lines[at];
  if (existing !== undefined) return { line: existing, patch: null };
  const line = freshLine(blankKey(state), newRow(spec, newId));
  return { line, patch: { kind: "add", at: state.lines.length, line } };
}

function addedBlank(state: GridState, patch: Patch): GridState {
  return applied({ ...state, blanks: state.blanks + 1 }, [patch]);
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

function turned(patch: Patch): Patch {
  if (patch.kind === "cell") return { ...patch, before: patch.after, after: patch.before };
  return { ...patch, kind: patch.kind === "add" ? "remove" : "add" };
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

function freshLine(key: string, values: GridRow): GridLine {
  return { key, id: idOf(values), values, raw: {}, problems: {} };
}

function changed(state: GridState): GridState {
  return { ...state, edits: state.edits + 1 };
}

function cellPatch(
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
function joined(last: Step, aside: readonly Patch[], patch: Patch): Step {
  const old = last.patches.at(-1);
  if (old?.kind !== "cell" || patch.kind !== "cell") return last;
  const isAgain = (one: Patch) =>
    one.kind === "cell" &&
    aside.some((other) => other.kind === "cell" && other.column === one.column);
  const kept = last.patches.slice(0, -1).filter((one) => !isAgain(one));
  return { ...last, patches: [...kept, ...aside, { ...patch, before: old.before }] };
}

function applied(state: GridState, patches: readonly Patch[]): GridState {
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

function withProblems(
  lines: readonly GridLine[],
  { rows, cells }: Extract<GridAction, { readonly do: "refused" }>,
): readonly GridLine[] {
  const sent = new Map(rows.map((row) => [idOf(row), row]));
  return lines.map((line) => {
    const mine = cells.filter((cell) => cell.id === line.id);
    if (mine.length === 0 || !isSame(line.values, sent.get(line.id))) return line;
    return {
      ...line,
      problems: Object.fromEntries(mine.map((cell) => [cell.column, cell.message])),
    };
  });
}
