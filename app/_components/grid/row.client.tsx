"use client";

import Link from "next/link";
import { memo, useState } from "react";
import { capital } from "#lib/domain/say/capital.ts";
import { Cell } from "./cell.client.tsx";
import { formatCell } from "./cell.ts";
import type { CellCommand } from "./cell-keys.ts";
import { choicesOf } from "./choices.ts";
import { type GridColumn, type GridLink, type GridPicture, UNIT_WORDS } from "./column.ts";
import { computedText } from "./computed.ts";
import { valueAt } from "./field-path.ts";
import styles from "./grid.module.css";
import type { GridLine } from "./grid-state.ts";
import { problemIn } from "./problems.ts";
import { ThumbCell } from "./thumb-cell.client.tsx";

/** What a row can ask of its table; stays the same object while the table is on the screen. */
export interface RowHandlers {
  readonly type: (key: string, column: GridColumn, text: string) => void;
  readonly leave: () => void;
  readonly command: (row: number, column: number, command: CellCommand) => void;
  readonly paste: (row: number, column: number, text: string) => void;
  readonly remove: (key: string, row: number) => void;
  readonly enter: (line: GridLine, column: GridColumn) => void;
}

interface RowProps {
  readonly line: GridLine;
  readonly number: number;
  readonly columns: readonly GridColumn[];
  readonly blank: boolean;
  readonly readOnly: boolean;
  readonly narrow: boolean;
  readonly selected: boolean;
  /** Cells that are still empty are not complained of while the row is being typed. */
  readonly unfinished: boolean;
  /** What a row is called. */
  readonly addWord: string;
  readonly link: GridLink | undefined;
  readonly handlers: RowHandlers;
}

/** One row of a table. On a phone it is one line that unfolds, so that a long table stays short. */
export const Row = memo(function Row(props: RowProps) {
  const { line, columns, narrow, readOnly, blank } = props;
  const [unfolded, setUnfolded] = useState(false);
  const wrong = !blank && columns.some((column) => problemIn(line, column) !== null);
  const folded = narrow && !unfolded && !wrong;
  return (
    <tr
      className={styles["row"]}
      data-row-id={blank ? undefined : line.id}
      data-number={props.number}
      aria-rowindex={props.number + 2}
      data-blank={blank}
      data-folded={folded}
      data-selected={props.selected}
    >
      {narrow ? (
        <td className={styles["fold"]}>
          <button
            type="button"
            className={styles["unfold"]}
            data-new={blank}
            aria-expanded={!folded}
            onClick={() => setUnfolded(folded)}
          >
            {folded ? summaryOf(props) : nameOf(props)}
            {folded ? null : <span className="muted small">collapse</span>}
          </button>
        </td>
      ) : (
        <th scope="row" className={styles["number"]}>
          {blank ? <span className={styles["new"]}>new</span> : props.number + 1}
        </th>
      )}
      {folded ? null : <RowCells {...props} />}
      {folded || readOnly ? null : <RowEnd {...props} />}
    </tr>
  );
});

function nameOf({ blank, addWord, number }: RowProps): string {
  return blank ? `New ${addWord}` : `${capital(addWord)} ${number + 1}`;
}

/** The first things that a row says, on one line. */
function summaryOf(props: RowProps): string {
  const { line, columns, blank } = props;
  if (blank) return nameOf(props);
  const texts = columns.map((column) =>
    column.computed === undefined
      ? formatCell(column, valueAt(line.values, column.key))
      : computedText(column.computed, line.values),
  );
  const said = texts.filter((text) => text !== "" && text !== "unknown").slice(0, 6);
  return said.length === 0 ? nameOf(props) : said.join(" · ");
}

function RowCells(props: RowProps) {
  const { line, columns, handlers } = props;
  return columns.map((column, index) => (
    <td
      key={column.key}
      data-title={titleOf(column)}
      data-print={printed(line, column)}
      className={styles[NUMERIC.has(column.kind) ? "numeric" : "plain"]}
      onFocus={() => handlers.enter(line, column)}
    >
      <RowCell {...props} column={column} index={index} />
    </td>
  ));
}

/** A field cuts long words off; paper shows them whole. */
function printed(line: GridLine, column: GridColumn): string {
  if (column.computed !== undefined) return "";
  return line.raw[column.key] ?? formatCell(column, valueAt(line.values, column.key));
}

function RowEnd({ line, number, blank, narrow, link, handlers }: RowProps) {
  return (
    <td className={styles["end"]}>
      {link === undefined ? null : <Link href={link.href}>{link.words}</Link>}
      {blank ? null : (
        <button
          type="button"
          className="link-button"
          tabIndex={narrow ? 0 : -1}
          aria-label={`Remove row ${number + 1}`}
          onClick={() => handlers.remove(line.key, number)}
        >
          remove
        </button>
      )}
    </td>
  );
}

interface RowCellProps extends RowProps {
  readonly column: GridColumn;
  readonly index: number;
}

function RowCell(props: RowCellProps) {
  const { line, column, blank } = props;
  if (column.picture !== undefined) {
    const picture = blank ? null : column.picture(line.values);
    return picture === null ? null : <Thumb {...picture} />;
  }
  if (column.computed === undefined) return <TypedCell {...props} />;
  return (
    <output className={styles["computed"]}>
      {blank ? "" : computedText(column.computed, line.values)}
    </output>
  );
}

function TypedCell({ line, number, column, index, blank, handlers, ...props }: RowCellProps) {
  const problem = blank ? null : problemIn(line, column);
  const quiet = problem !== null && props.unfinished && line.raw[column.key] === undefined;
  const Shape = props.narrow ? ThumbCell : Cell;
  return (
    <Shape
      column={column}
      place={`${number}:${index}`}
      label={`${titleOf(column)}, ${blank ? `new ${props.addWord}` : `row ${number + 1}`}`}
      text={
        line.raw[column.key] ?? (blank ? "" : formatCell(column, valueAt(line.values, column.key)))
      }
      problem={quiet ? null : problem}
      placeholder={blank ? column.example : undefined}
      readOnly={props.readOnly || column.readOnly === true}
      width={widthOf(column)}
      onType={(text) => handlers.type(line.key, column, text)}
      onLeave={handlers.leave}
      onCommand={(command) => handlers.command(number, index, command)}
      onPasteMany={(text) => handlers.paste(number, index, text)}
    />
  );
}

function Thumb({ href, words }: GridPicture) {
  return (
    <a href={href} target="_blank" rel="noreferrer" className={styles["thumb"]} title={words}>
      {/* biome-ignore lint/performance/noImgElement: a stored file of the office, behind its sign-in */}
      <img src={href} alt={words} loading="lazy" decoding="async" />
    </a>
  );
}

function titleOf(column: GridColumn): string {
  const unit = UNIT_WORDS[column.kind];
  return unit === "" || column.kind === "day" ? column.title : `${column.title}, ${unit}`;
}

export const NUMERIC: ReadonlySet<string> = new Set([
  "feet",
  "inches",
  "degrees",
  "cents",
  "whole",
  "hundredths",
  "percent",
  "clock",
  "video",
]);

const WIDTHS: Record<GridColumn["kind"], number> = {
  text: 16,
  feet: 7,
  inches: 6,
  degrees: 7,
  cents: 10,
  whole: 6,
  hundredths: 8,
  percent: 6,
  day: 12,
  time: 9,
  clock: 7,
  video: 7,
  choice: 10,
  yesno: 5,
};

function widthOf(column: GridColumn): number {
  if (column.width !== undefined) return column.width;
  const longest = Math.max(0, ...choicesOf(column).map((choice) => choice.label.length));
  return Math.max(WIDTHS[column.kind], Math.min(longest, 24));
}
