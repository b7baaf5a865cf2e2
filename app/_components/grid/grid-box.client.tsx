"use client";

import { type Ref, useId, useImperativeHandle, useMemo, useRef, useState } from "react";
import { useSelection } from "../selection.client.tsx";
import { useLive } from "../use-live.ts";
import { useNarrow } from "../use-narrow.ts";
import { readClipboard } from "./clipboard.ts";
import type { GridColumn, GridLink, GridRow } from "./column.ts";
import { ConflictPanel } from "./conflict.client.tsx";
import { Foot, Head } from "./ends.tsx";
import { focusCell, stayNear, useBackToCell, useRevealed } from "./focus.ts";
import { Frame } from "./frame.client.tsx";
import styles from "./grid.module.css";
import type { GridLine, GridSpec, GridState } from "./grid-state.ts";
import { newRowId } from "./new-id.ts";
import { obey } from "./obey.ts";
import { PastePanel } from "./paste-panel.client.tsx";
import { blankKey } from "./paste-rows.ts";
import { Row, type RowHandlers } from "./row.client.tsx";
import { startGrid } from "./state.ts";
import { StatusLine } from "./status-line.client.tsx";
import { useRowWindow } from "./use-row-window.ts";
import { type Rows, type SaveRows, useRows } from "./use-rows.ts";
import { useStable } from "./use-stable.ts";

export interface GridProps {
  /** The revision that `rows` are; it only ever grows. */
  readonly base: number;
  /** The whole table, as the file holds it. */
  readonly rows: readonly object[];
  readonly columns: readonly GridColumn[];
  /** Fields of a new row that no column shows, or that do not start empty. */
  readonly blank?: Readonly<Record<string, unknown>>;
  /** Shows only the rows with these values and gives them to new rows: the entries of one record, say. */
  readonly where?: Readonly<Record<string, unknown>>;
  /** What a row is called, say `property`: the blank row is a `new property`. */
  readonly addWord?: string;
  /** Said while there are no rows: what to do first, with an example. */
  readonly emptyWords?: string;
  /** Says what the table is, for those who hear it; two tables on a page need two. */
  readonly label?: string | undefined;
  readonly readOnly?: boolean;
  /** So many rows follow those that are here; until then nothing is typed. */
  readonly unsent?: number | undefined;
  /** Whether all rows of the table are here, also those that are not shown. */
  readonly whole?: boolean | undefined;
  /** By row id: a page on that row. */
  readonly links?: Readonly<Record<string, GridLink>>;
  readonly remote?: Ref<GridRemote>;
}

/** What another part of the page may do with a table, as if it were typed. */
export interface GridRemote {
  /** The rows that are shown, as they are now, saved or not. */
  readonly rows: () => readonly GridRow[];
  /** Adds a row and puts the cursor into one of its cells; its id. */
  readonly add: (values: GridRow, column: string) => string;
  readonly set: (id: string, field: string, value: unknown) => void;
}

interface GridBoxProps extends GridProps {
  /** Names the rows that are kept in the browser until they are saved. */
  readonly draftName: string;
  readonly saveRows: SaveRows;
}

const NOTHING: Readonly<Record<string, unknown>> = {};

/**
 * A table to type in. Arrows, tab and enter move; typing overwrites, F2 edits; Ctrl+Z undoes; rows
 * copied from a sheet paste over many cells. It saves by itself when nothing is to be mended, keeps
 * what is not saved in the browser, and loses nobody's rows when two people type at once.
 */
export function GridBox(props: GridBoxProps) {
  return props.whole === false ? <FirstRows {...props} /> : <TypedRows {...props} />;
}

/** The first rows of a table whose others are on their way. */
function FirstRows(props: GridBoxProps) {
  const { base, columns, blank = NOTHING, where = NOTHING, readOnly = false } = props;
  const spec = { columns, blank, where };
  const [state] = useState(() => startGrid(props.rows as readonly GridRow[], base, spec));
  return <GridTable {...props} grid={{ ...AT_REST, state }} spec={spec} readOnly={readOnly} />;
}

const nothing = () => undefined;
const AT_REST: Omit<Rows, "state"> = {
  dispatch: nothing,
  saving: false,
  problems: [],
  unread: [],
  savedAt: null,
  failure: "",
  save: nothing,
};

function TypedRows(props: GridBoxProps) {
  const { base, columns, blank = NOTHING, where = NOTHING, readOnly = false } = props;
  const spec = useStable<GridSpec>({ columns, blank, where });
  const rows = useStable(props.rows as readonly GridRow[]);
  const { draftName, saveRows } = props;
  const grid = useRows({ rows, base, spec, draftName, saveRows });
  return <GridTable {...props} grid={grid} spec={spec} readOnly={readOnly} />;
}

function GridTable({
  grid,
  spec,
  readOnly,
  ...props
}: GridProps & {
  readonly grid: Rows;
  readonly spec: GridSpec;
  readonly readOnly: boolean;
}) {
  const { state } = grid;
  const box = useRef<HTMLDivElement>(null);
  const hintId = useId();
  const [entered, setEntered] = useState<{ key: string; column: GridColumn } | null>(null);
  const narrow = useNarrow();
  const live = useLive() && props.whole !== false;
  const unsent = props.unsent ?? 0;
  const selection = useSelection();
  const handlers = useHandlers({ grid, spec, box, setEntered, select: selection.select });
  useRevealed(box, selection.selected, state.lines);
  useBackToCell(box, state.asked);
  useRemote(props.remote, { grid, spec, box });

  const label = props.label ?? `One ${props.addWord ?? "row"} a line`;
  const lines = readOnly ? state.lines : [...state.lines, blankLine(state)];
  const { spans, rowHeight } = useRowWindow(box, lines.length);
  if (readOnly && lines.length === 0 && unsent === 0)
    return <p className={styles["empty"]}>{nothingEntered(props.emptyWords)}</p>;
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: hears when the focus leaves the table
    <div
      ref={box}
      className={styles["grid"]}
      onBlur={(event) => {
        if (!event.currentTarget.contains(event.relatedTarget)) setEntered(null);
      }}
    >
      {state.lines.length === 0 && props.emptyWords !== undefined ? (
        <p className={styles["empty"]}>{props.emptyWords}</p>
      ) : null}
      <Frame label={label} live={live}>
        <table
          // biome-ignore lint/a11y/noNoninteractiveElementToInteractiveRole: a table whose cells are typed in is a grid
          role="grid"
          inert={!live}
          aria-label={label}
          aria-describedby={hintId}
          aria-rowcount={lines.length + 1}
          className={styles["table"]}
        >
          <Head columns={spec.columns} readOnly={readOnly} />
          <tbody>
            {spans.flatMap((span, at) => [
              <Gap
                key={`gap-${span.to === lines.length ? "last" : at}`}
                height={(span.from - (spans[at - 1]?.to ?? 0)) * rowHeight}
              />,
              ...lines
                .slice(span.from, span.to)
                .flatMap((line, from) => [
                  line.id === "" ? <Gap key="unsent" height={unsent * rowHeight} /> : null,
                  <Row
                    key={line.key}
                    line={line}
                    number={span.from + from}
                    columns={spec.columns}
                    blank={span.from + from === state.lines.length}
                    addWord={props.addWord ?? "row"}
                    readOnly={readOnly}
                    narrow={narrow}
                    selected={selection.selected === line.id}
                    unfinished={entered?.key === line.key}
                    link={props.links?.[line.id]}
                    handlers={handlers}
                  />,
                ]),
            ])}
            {readOnly ? <Gap height={unsent * rowHeight} /> : null}
          </tbody>
          <Foot columns={spec.columns} state={state} />
        </table>
      </Frame>
      {readOnly ? null : (
        <StatusLine
          grid={grid}
          hintId={hintId}
          column={entered?.column ?? null}
          onGo={(place) => focusCell(box.current, place)}
        />
      )}
      <PastePanel grid={grid} spec={spec} />
      {state.conflict === null ? null : <ConflictPanel grid={grid} spec={spec} />}
    </div>
  );
}

/** To somebody who only reads: that there is nothing yet, not how it is entered. */
function nothingEntered(emptyWords = "Nothing entered yet."): string {
  return emptyWords.split(/(?<=\.) /)[0] ?? emptyWords;
}

/** Stands for rows that are not drawn. */
function Gap({ height }: { readonly height: number }) {
  if (height === 0) return null;
  return (
    <tr>
      <td style={{ height, border: 0 }} />
    </tr>
  );
}

function useHandlers({
  grid,
  spec,
  box,
  setEntered,
  select,
}: {
  readonly grid: Rows;
  readonly spec: GridSpec;
  readonly box: { readonly current: HTMLElement | null };
  readonly setEntered: (entered: { key: string; column: GridColumn }) => void;
  readonly select: (id: string | null) => void;
}): RowHandlers {
  const now = useRef({ grid, spec });
  now.current = { grid, spec };
  const { dispatch } = grid;
  return useMemo(
    () => ({
      type: (key, column, text) => dispatch({ do: "type", key, column, text, newId: newRowId() }),
      leave: () => dispatch({ do: "leave" }),
      remove: (key, row) => {
        dispatch({ do: "remove", key });
        stayNear(box.current, { row, column: 0 });
      },
      paste: (at, column, text) => {
        const cells = readClipboard(text);
        dispatch({ do: "paste", at, column, cells, newIds: cells.map(() => newRowId()) });
      },
      enter: (line, column) => {
        setEntered({ key: line.key, column });
        const isBlank = line.key.startsWith("blank-") && line.id === "";
        select(isBlank ? null : line.id);
      },
      command: (row, column, command) =>
        obey(command, { row, column, box: box.current, ...now.current }),
    }),
    [dispatch, box, setEntered, select],
  );
}

function useRemote(
  remote: Ref<GridRemote> | undefined,
  {
    grid,
    spec,
    box,
  }: { grid: Rows; spec: GridSpec; box: { readonly current: HTMLElement | null } },
) {
  const now = useRef(grid.state);
  now.current = grid.state;
  const { dispatch } = grid;
  useImperativeHandle(
    remote,
    () => ({
      rows: () => now.current.lines.map((line) => line.values),
      add: (values, column) => {
        const newId = newRowId();
        dispatch({ do: "add", newId, values });
        const at = spec.columns.findIndex(({ key }) => key === column);
        focusCell(box.current, { row: now.current.lines.length, column: at });
        return newId;
      },
      set: (id, field, value) => dispatch({ do: "set", id, field, value }),
    }),
    [dispatch, spec, box],
  );
}

function blankLine(state: GridState): GridLine {
  return { key: blankKey(state), id: "", values: {}, raw: {}, problems: {} };
}
