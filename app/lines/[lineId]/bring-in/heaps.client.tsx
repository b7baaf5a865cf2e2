"use client";

import { useState } from "react";
import { formatCell, parseCell } from "#app/_components/grid/cell.ts";
import { type GridColumn, UNIT_WORDS } from "#app/_components/grid/column.ts";
import { Scroll } from "#app/_components/scroll.tsx";
import type { CellChange } from "#app/_components/typed-cell.ts";
import { TypedTable } from "#app/_components/typed-table.client.tsx";
import { counted } from "../names.ts";
import { isWrong, type SheetRow } from "./sort-rows.ts";

interface HeapProps {
  readonly rows: readonly SheetRow[];
  readonly columns: readonly GridColumn[];
}

/** Rows with a cell that could not be read: mended in place. */
export function MendRows({
  rows,
  columns,
  onType,
  onUndo,
  onRedo,
  onLeaveOut,
}: HeapProps & {
  readonly onType: (changes: readonly CellChange[]) => void;
  readonly onUndo: () => void;
  readonly onRedo: () => void;
  readonly onLeaveOut: (number: number) => void;
}) {
  if (rows.length === 0) return null;
  const left = rows.filter(isWrong).length;
  return (
    <div className="stack-tight">
      <h3>To fix</h3>
      <p className="muted">
        {left === 0
          ? "All are fixed: they are imported with the others."
          : "Correct what could not be read. The others can be imported before that."}
      </p>
      <TypedTable
        label="Rows to fix"
        columns={columns}
        onType={onType}
        onUndo={onUndo}
        onRedo={onRedo}
        hasEnd
        rows={rows.map((row) => ({
          key: String(row.number),
          name: `row ${row.number}`,
          texts: row.texts,
          problems: row.problems,
          mark: row.number,
          end: (
            <button
              type="button"
              className="link-button"
              aria-label={`Skip row ${row.number}`}
              onClick={() => onLeaveOut(row.number)}
            >
              leave out
            </button>
          ),
        }))}
      />
    </div>
  );
}

/** Rows whose place is taken by the same: left out unless asked. */
export function DoubleRows({
  rows,
  columns,
  wanted,
  onWanted,
}: HeapProps & { readonly wanted: boolean; readonly onWanted: (wanted: boolean) => void }) {
  if (rows.length === 0) return null;
  return (
    <div className="stack-tight">
      <h3>Already there</h3>
      <p className="muted">
        The same thing is already at the same place, in the file or in an earlier row. They are
        skipped unless you want them too.
      </p>
      <ReadTable rows={rows} columns={columns} label="Rows already there" />
      <label className="check">
        <input
          type="checkbox"
          checked={wanted}
          onChange={(event) => onWanted(event.target.checked)}
        />
        <span>Import {rows.length === 1 ? "this one" : `these ${rows.length}`} too</span>
      </label>
    </div>
  );
}

const SHOWN = 12;

/** Rows that are ready, as they will stand; the first of many. */
export function ReadyRows({ rows, columns }: HeapProps) {
  const [all, setAll] = useState(false);
  if (rows.length === 0) return null;
  const hidden = rows.length - SHOWN;
  return (
    <div className="stack-tight">
      <h3>Ready</h3>
      <ReadTable
        rows={all ? rows : rows.slice(0, SHOWN)}
        columns={columns}
        label="Rows ready to import"
      />
      {hidden > 0 && !all ? (
        <div>
          <button type="button" className="link-button" onClick={() => setAll(true)}>
            Show {counted(hidden, "more row")}
          </button>
        </div>
      ) : null}
    </div>
  );
}

function ReadTable({ rows, columns, label }: HeapProps & { readonly label: string }) {
  return (
    <Scroll>
      <table className="plain" aria-label={label}>
        <thead>
          <tr>
            <th scope="col">Row</th>
            {columns.map((column) => (
              <th key={column.key} scope="col" className={numeric(column)}>
                {column.title}
                {UNIT_WORDS[column.kind] === "" ? "" : `, ${UNIT_WORDS[column.kind]}`}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={row.number}>
              <th scope="row">{row.number}</th>
              {columns.map((column) => (
                <td key={column.key} className={numeric(column)}>
                  {cellWords(column, row)}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </Scroll>
  );
}

/** As the table will show it, not as the file writes it. */
function cellWords(column: GridColumn, { fields }: SheetRow): string {
  if (column.key in fields) return formatCell(column, fields[column.key]);
  const usual = parseCell(column, "");
  return usual.ok ? formatCell(column, usual.value) : "";
}

const NUMBERS: ReadonlySet<string> = new Set(["feet", "inches", "clock", "video"]);

function numeric({ kind }: GridColumn): string | undefined {
  return NUMBERS.has(kind) ? "num" : undefined;
}
