import type { GridColumn } from "./column.ts";
import type { AskedPaste, GridAction, GridLine, GridSpec, GridState, Patch } from "./grid-state.ts";
import { type Pasted, readPasted } from "./paste.ts";
import { applied, cellPatch, freshLine, newRow, unsurePatches } from "./patches.ts";

export function blankKey(state: GridState): string {
  return `blank-${state.blanks}`;
}

/** Nothing joins the last step any more. */
export function left(state: GridState): GridState {
  const last = state.past.at(-1);
  if (last === undefined || last.typingIn === null) return state;
  return { ...state, past: [...state.past.slice(0, -1), { ...last, typingIn: null }] };
}

/** Rows go in where their columns are known; else a person is asked, and nothing goes in before. */
export function pasted(
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
export function readAgain(state: GridState, heads: boolean, spec: GridSpec): GridState {
  const { asked } = state;
  if (asked === null) return state;
  const read = readPasted(asked.cells, spec.columns, { from: asked.column, heads });
  return { ...state, asked: { ...asked, pasted: read } };
}

/** A person said where the open columns go; null: nowhere. */
export function placedPaste(
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
  const said = `${words}${headings === null ? inOrder(body.length, into.length) : "; the first row was treated as headings."}`;
  const note = [said, ...fixedWords(read)].join(" ");
  return changed({ ...grown, past: [...left(state).past, step], future: [], note });
}

/** How rows without headings went in; of several columns, one may have slipped. */
function inOrder(rows: number, columns: number): string {
  return rows < 2 || columns < 3
    ? "."
    : " in the order of the columns here. With headings in the first row, each goes where it belongs.";
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

export function changed(state: GridState): GridState {
  return { ...state, edits: state.edits + 1 };
}
