"use client";

import { useEffect, useId, useRef, useState } from "react";
import { Heads } from "../heads.tsx";
import { Scroll } from "../scroll.tsx";
import type { GridColumn } from "./column.ts";
import styles from "./grid.module.css";
import type { GridSpec } from "./grid-state.ts";
import { firstValues, letterOf, type Pasted } from "./paste.ts";
import type { Rows } from "./use-rows.ts";

/** What a select says before somebody has chosen, and for a column that is left out on purpose. */
const UNSAID = "";
const OUT = "leave-out";

/**
 * Pasted columns whose heading no column of the table has: each is shown with what stands in it, and
 * goes where a person says, or stays out because a person says so.
 */
export function PastePanel({ grid, spec }: { readonly grid: Rows; readonly spec: GridSpec }) {
  const { asked } = grid.state;
  if (asked === null) return null;
  const { pasted } = asked;
  return (
    <Panel
      key={pasted.headings === null ? "values" : "headings"}
      pasted={pasted}
      columns={spec.columns}
      dispatch={grid.dispatch}
    />
  );
}

function Panel({
  pasted,
  columns,
  dispatch,
}: {
  readonly pasted: Pasted;
  readonly columns: readonly GridColumn[];
  readonly dispatch: Rows["dispatch"];
}) {
  const id = useId();
  const box = useRef<HTMLElement>(null);
  const [said, setSaid] = useState<Readonly<Record<number, string>>>({});
  const unsaid = pasted.open.filter((place) => (said[place] ?? UNSAID) === UNSAID);

  useEffect(() => {
    box.current?.querySelector("select")?.focus();
    box.current?.scrollIntoView({ block: "nearest" });
  }, []);

  function paste() {
    if (unsaid.length > 0) {
      box.current?.querySelector<HTMLElement>(`[data-column="${unsaid[0]}"]`)?.focus();
      return;
    }
    const into = pasted.open.map((place) => [place, said[place] === OUT ? null : said[place]]);
    dispatch({ do: "place-paste", into: Object.fromEntries(into) });
  }

  return (
    <section
      ref={box}
      aria-labelledby={`${id}-title`}
      className={`box stack-tight ${styles["conflict"]}`}
    >
      <p id={`${id}-title`} className="box-title">
        {pasted.open.length === 1
          ? "One of the pasted columns is not in this table."
          : `${pasted.open.length} of the pasted columns are not in this table.`}
      </p>
      <p>Choose where each one goes. Nothing is pasted until then.</p>
      <Scroll>
        <table className="plain">
          <Heads of={["Pasted", "Sample values", "Goes into"]} />
          <tbody>
            {pasted.open.map((place) => (
              <OpenColumn
                key={place}
                pasted={pasted}
                place={place}
                columns={columns}
                said={said}
                onSay={(key) => setSaid({ ...said, [place]: key })}
              />
            ))}
          </tbody>
        </table>
      </Scroll>
      <Turn pasted={pasted} dispatch={dispatch} />
      <div className="cluster">
        <button type="button" className="button button-main" onClick={paste}>
          Paste {pasted.body.length === 1 ? "1 row" : `${pasted.body.length} rows`}
        </button>
        {unsaid.length > 1 ? (
          <button
            type="button"
            className="button"
            onClick={() =>
              setSaid({ ...said, ...Object.fromEntries(unsaid.map((place) => [place, OUT])) })
            }
          >
            Skip {unsaid.length === pasted.open.length ? "all" : "the other"} {unsaid.length}
          </button>
        ) : null}
        <button
          type="button"
          className="link-button"
          onClick={() => dispatch({ do: "drop-paste" })}
        >
          Paste nothing
        </button>
      </div>
    </section>
  );
}

function OpenColumn({
  pasted: { body, headings, into },
  place,
  columns,
  said,
  onSay,
}: {
  readonly pasted: Pasted;
  readonly place: number;
  readonly columns: readonly GridColumn[];
  readonly said: Readonly<Record<number, string>>;
  readonly onSay: (key: string) => void;
}) {
  const name = headings?.[place] || letterOf(place);
  const taken = new Set([
    ...into.map((column) => column?.key),
    ...Object.entries(said).flatMap(([at, key]) => (Number(at) === place ? [] : [key])),
  ]);
  const free = columns.filter(
    ({ key, readOnly, computed }) => !taken.has(key) && readOnly !== true && computed === undefined,
  );
  return (
    <tr>
      <th scope="row">{name}</th>
      <td className="muted">{firstValues(body, place)}</td>
      <td>
        <select
          className="input"
          data-column={place}
          aria-label={`${name} goes into`}
          value={said[place] ?? UNSAID}
          onChange={(event) => onSay(event.target.value)}
        >
          <option value={UNSAID}>choose</option>
          {free.map(({ key, title }) => (
            <option key={key} value={key}>
              {title}
            </option>
          ))}
          <option value={OUT}>skip this column</option>
        </select>
      </td>
    </tr>
  );
}

/** Where the first row was taken for the wrong thing. */
function Turn({
  pasted: { headings },
  dispatch,
}: {
  readonly pasted: Pasted;
  readonly dispatch: Rows["dispatch"];
}) {
  return (
    <label className="check">
      <input
        type="checkbox"
        checked={headings !== null}
        onChange={(event) => dispatch({ do: "read-paste", heads: event.target.checked })}
      />
      <span>The first row has headings</span>
    </label>
  );
}
