"use client";

import { Fragment, type ReactNode, useRef, useState } from "react";
import { Cell } from "./grid/cell.client.tsx";
import type { CellCommand } from "./grid/cell-keys.ts";
import { readClipboard } from "./grid/clipboard.ts";
import { type GridColumn, UNIT_WORDS } from "./grid/column.ts";
import { Frame } from "./grid/frame.client.tsx";
import grid from "./grid/grid.module.css";
import { ThumbCell } from "./grid/thumb-cell.client.tsx";
import { type CellChange, rowId } from "./typed-cell.ts";
import styles from "./typed-table.module.css";
import { useLive } from "./use-live.ts";
import { useNarrow } from "./use-narrow.ts";

/** A row as typed: nothing of it is in the file yet. */
export interface TypedRow {
  readonly key: string;
  /** By column. */
  readonly texts: Readonly<Record<string, string>>;
  /** What is to be mended, by column. */
  readonly problems: Readonly<Record<string, string>>;
  /** Stands in the row's first cell: its number, a box to tick. */
  readonly mark: ReactNode;
  /** Over the row, in its whole width; such a row is folded on a phone. */
  readonly above?: ReactNode;
  /** What a folded row's cells say. */
  readonly brief?: string;
  /** In place of the cells: for a row that is not typed in any more. */
  readonly still?: ReactNode;
  readonly end?: ReactNode;
  /** Shown as chosen. */
  readonly lit?: boolean;
  /** As those who hear it are told which row it is. */
  readonly name: string;
}

interface TypedTableProps {
  readonly label: string;
  readonly columns: readonly GridColumn[];
  readonly rows: readonly TypedRow[];
  readonly onType: (changes: readonly CellChange[]) => void;
  readonly onUndo: () => void;
  readonly onRedo: () => void;
  /** Ctrl Enter in a row. */
  readonly onTick?: (key: string) => void;
  readonly hasEnd?: boolean;
}

/**
 * Rows to look over and mend before they are saved: moved in, typed in and pasted into like every
 * table, but nothing is saved until a button says so.
 */
export function TypedTable(props: TypedTableProps) {
  const { columns, rows, label, hasEnd = false } = props;
  const box = useRef<HTMLTableElement>(null);
  const narrow = useNarrow();
  const live = useLive();
  const [said, setSaid] = useState("");
  return (
    <>
      <Frame label={label} live={live}>
        {/* biome-ignore lint/a11y/noNoninteractiveElementToInteractiveRole: a table whose cells are typed in is a grid */}
        <table ref={box} role="grid" inert={!live} aria-label={label} className={grid["table"]}>
          <thead>
            <tr>
              <th scope="col" className={grid["number"]}>
                <span className="hidden">Row</span>
              </th>
              {columns.map((column) => (
                <th key={column.key} scope="col" className={grid[sideOf(column)]}>
                  {column.title}
                  {unitOf(column) === "" ? null : (
                    <span className={grid["unit"]}> {unitOf(column)}</span>
                  )}
                </th>
              ))}
              {hasEnd ? (
                <th scope="col" className={grid["end"]}>
                  <span className="hidden">Skip</span>
                </th>
              ) : null}
            </tr>
          </thead>
          <tbody>
            {rows.map((row, number) => (
              <TableRow
                key={row.key}
                {...props}
                row={row}
                number={number}
                box={box}
                narrow={narrow}
                hasEnd={hasEnd}
                onSay={setSaid}
              />
            ))}
          </tbody>
        </table>
      </Frame>
      <p role="status" className="muted">
        {said}
      </p>
    </>
  );
}

interface TableRowProps extends TypedTableProps {
  readonly row: TypedRow;
  readonly number: number;
  readonly box: { readonly current: HTMLElement | null };
  readonly narrow: boolean;
  readonly hasEnd: boolean;
  readonly onSay: (words: string) => void;
}

function TableRow({ row, ...props }: TableRowProps) {
  if (row.still === undefined) return <OpenRow row={row} {...props} />;
  return (
    <tr
      id={rowId(row.key)}
      className={styles["still"]}
      data-row={row.key}
      data-lit={row.lit === true}
    >
      <td className={`${grid["number"]} ${styles["mark"]}`}>{row.mark}</td>
      <td colSpan={widthOf(props)} className={styles["words"]}>
        {row.still}
      </td>
    </tr>
  );
}

function OpenRow({ row, ...props }: TableRowProps) {
  const { narrow } = props;
  const [unfolded, setUnfolded] = useState(false);
  const above = row.above !== undefined;
  const wrong = Object.keys(row.problems).length > 0;
  const folded = narrow && above && !unfolded && !wrong;
  return (
    <Fragment>
      {above ? (
        <tr
          id={rowId(row.key)}
          className={styles["above"]}
          data-folded={folded}
          data-row={row.key}
          data-lit={row.lit === true}
        >
          <td rowSpan={narrow ? 1 : 2} className={`${grid["number"]} ${styles["mark"]}`}>
            {row.mark}
          </td>
          <td colSpan={widthOf(props)} className={styles["words"]}>
            {row.above}
            {narrow || !wrong ? null : <Problems row={row} columns={props.columns} />}
            {narrow ? <Fold row={row} folded={folded} onFold={() => setUnfolded(folded)} /> : null}
          </td>
        </tr>
      ) : null}
      {folded ? null : <CellsRow row={row} {...props} />}
    </Fragment>
  );
}

/**
 * What is to be mended in a row, in the row's whole width: said inside a cell it would make a narrow
 * column a tall one. Those who hear it are told in the cell itself.
 */
function Problems({
  row,
  columns,
}: {
  readonly row: TypedRow;
  readonly columns: TypedTableProps["columns"];
}) {
  return (
    <span className={styles["problems"]} aria-hidden="true">
      {columns.map((column) => {
        const problem = row.problems[column.key];
        return problem === undefined ? null : (
          <span key={column.key}>
            {column.title}: {problem}
          </span>
        );
      })}
    </span>
  );
}

/** On a phone: what the cells say, and the way to mend them. */
function Fold({
  row,
  folded,
  onFold,
}: {
  readonly row: TypedRow;
  readonly folded: boolean;
  readonly onFold: () => void;
}) {
  return (
    <span className={styles["brief"]}>
      <span>{folded ? row.brief : ""}</span>
      <button
        type="button"
        className="link-button"
        aria-expanded={!folded}
        aria-label={`${folded ? "Edit" : "Collapse"} ${row.name}`}
        onClick={onFold}
      >
        {folded ? "edit" : "collapse"}
      </button>
    </span>
  );
}

function CellsRow({ row, ...props }: TableRowProps) {
  const above = row.above !== undefined;
  return (
    <tr
      className={`${grid["row"]} ${above ? styles["beneath"] : ""}`}
      data-row={row.key}
      data-lit={row.lit === true}
      onKeyDown={(event) => {
        if (event.key !== "Enter" || !(event.ctrlKey || event.metaKey)) return;
        event.preventDefault();
        props.onTick?.(row.key);
      }}
    >
      {above ? null : <td className={grid["number"]}>{row.mark}</td>}
      <RowCells row={row} {...props} />
      {props.hasEnd ? <td className={grid["end"]}>{row.end}</td> : null}
    </tr>
  );
}

function widthOf({ columns, hasEnd }: Pick<TableRowProps, "columns" | "hasEnd">): number {
  return columns.length + (hasEnd ? 1 : 0);
}

function RowCells({ row, number, narrow, box, ...props }: TableRowProps) {
  const { columns, rows } = props;
  const Shape = narrow ? ThumbCell : Cell;
  return columns.map((column, at) => (
    <td
      key={column.key}
      data-title={titleOf(column)}
      className={`${grid[sideOf(column)]} ${styles["cell"]}`}
    >
      <Shape
        column={column}
        place={`${number}:${at}`}
        label={`${titleOf(column)}, ${row.name}`}
        text={row.texts[column.key] ?? ""}
        problem={row.problems[column.key] ?? null}
        placeholder={undefined}
        readOnly={false}
        width={column.width ?? 8}
        onType={(text) => props.onType([{ key: row.key, column: column.key, text }])}
        onLeave={() => undefined}
        onCommand={(command) => obey(command, { at, number, row, box: box.current, ...props })}
        onPasteMany={(text) => {
          const cells = readClipboard(text);
          props.onType(pasted(cells, { columns, rows, at, number }));
          props.onSay(overWords(cells, { columns, rows, at, number }));
        }}
      />
    </td>
  ));
}

interface Here extends TypedTableProps {
  readonly row: TypedRow;
  readonly number: number;
  readonly at: number;
  readonly box: HTMLElement | null;
}

function obey(command: CellCommand, here: Here) {
  const { row, number, at, columns, rows } = here;
  const column = columns[at];
  if (typeof command === "object") move(command, here);
  else if (command === "undo") here.onUndo();
  else if (command === "redo") here.onRedo();
  else if (command === "fill-down" && column !== undefined) {
    const text = rows[number - 1]?.texts[column.key] ?? "";
    here.onType([{ key: row.key, column: column.key, text }]);
  }
}

function move(command: Extract<CellCommand, object>, { number, at, columns, rows, box }: Here) {
  const lastColumn = columns.length - 1;
  if ("edge" in command) {
    const row = { "row-start": number, "row-end": number, first: 0, last: rows.length - 1 };
    const column = { "row-start": 0, "row-end": lastColumn, first: 0, last: lastColumn };
    focusCell(box, { row: row[command.edge], column: column[command.edge] });
    return;
  }
  const column = Math.min(Math.max(at + command.columns, 0), lastColumn);
  let row = number + command.rows;
  // Rows that are not typed in any more are passed over.
  while (rows[row]?.still !== undefined) row += command.rows;
  if (rows[row] !== undefined) focusCell(box, { row, column });
}

function focusCell(box: HTMLElement | null, { row, column }: { row: number; column: number }) {
  const cell = box?.querySelector<HTMLElement>(`[data-place="${row}:${column}"]`);
  cell?.focus();
  cell?.scrollIntoView({ block: "nearest", inline: "nearest" });
}

type Place = Pick<TypedTableProps, "columns" | "rows"> & {
  readonly at: number;
  readonly number: number;
};

/** Says what of pasted rows reaches beyond the table: these rows are here already, none are added. */
function overWords(cells: readonly (readonly string[])[], { columns, rows, at, number }: Place) {
  const height = rows.length - number;
  const width = columns.length - at;
  const tooLow = cells.slice(height).filter((row) => row.some((cell) => cell !== "")).length;
  const tooWide = cells.some((row) => row.slice(width).some((cell) => cell !== ""));
  const parts = [
    tooLow === 0 ? "" : `${tooLow === 1 ? "1 row" : `${tooLow} rows`} below the last one`,
    tooWide ? "what was right of the last column" : "",
  ].filter((part) => part !== "");
  return parts.length === 0 ? "" : `Not pasted: ${parts.join(", and ")}.`;
}

function pasted(
  pastedCells: readonly (readonly string[])[],
  { columns, rows, at, number }: Place,
): CellChange[] {
  return pastedCells.flatMap((cells, down) =>
    cells.flatMap((cell, right) => {
      const row = rows[number + down];
      const column = columns[at + right];
      if (row === undefined || row.still !== undefined || column === undefined) return [];
      return [{ key: row.key, column: column.key, text: cell }];
    }),
  );
}

const NUMBERS: ReadonlySet<string> = new Set(["feet", "inches", "clock", "video"]);

function sideOf(column: GridColumn): "numeric" | "plain" {
  return NUMBERS.has(column.kind) ? "numeric" : "plain";
}

function unitOf(column: GridColumn): string {
  return column.kind === "day" ? "" : UNIT_WORDS[column.kind];
}

function titleOf(column: GridColumn): string {
  const unit = unitOf(column);
  return unit === "" ? column.title : `${column.title}, ${unit}`;
}
