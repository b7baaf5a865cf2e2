"use client";

import type { GridColumn } from "#app/_components/grid/column.ts";
import { Scroll } from "#app/_components/scroll.tsx";
import { type Match, type Reading, widthOf, withMeaning } from "./_sort-rows.ts";
import styles from "./bring-in.module.css";

/** Which column of the file is which of ours; a person can say otherwise. */
export function MatchTable({
  rows,
  reading,
  columns,
  onMatch,
  onEverywhere,
}: {
  readonly rows: readonly (readonly string[])[];
  readonly reading: Reading;
  readonly columns: readonly GridColumn[];
  readonly onMatch: (match: Match) => void;
  readonly onEverywhere: (key: string, text: string) => void;
}) {
  const { head, match } = reading;
  const body = rows.slice(head === null ? 0 : head + 1);
  return (
    <>
      <Scroll>
        <table className={`plain ${styles["match"]}`}>
          <thead>
            <tr>
              <th scope="col">In the file</th>
              <th scope="col">First values</th>
              <th scope="col">Comes in as</th>
            </tr>
          </thead>
          <tbody>
            {Array.from({ length: widthOf(rows) }, (_none, at) => {
              const heading = (head === null ? "" : (rows[head]?.[at] ?? "")) || letterOf(at);
              return (
                // biome-ignore lint/suspicious/noArrayIndexKey: a column of the file is its place
                <tr key={at}>
                  <th scope="row">{heading}</th>
                  <td className="muted">{firstValues(body, at)}</td>
                  <td>
                    <select
                      className="input"
                      aria-label={`${heading} comes in as`}
                      value={match[at] ?? ""}
                      onChange={(event) =>
                        onMatch(withMeaning(match, at, event.target.value || null))
                      }
                    >
                      <option value="">stays outside</option>
                      {columns.map(({ key, title }) => (
                        <option key={key} value={key}>
                          {title}
                        </option>
                      ))}
                    </select>
                  </td>
                </tr>
              );
            })}
          </tbody>
        </table>
      </Scroll>
      <Missing reading={reading} columns={columns} onEverywhere={onEverywhere} />
    </>
  );
}

/** Columns that every row needs and that no column of the file is. */
function Missing({
  reading,
  columns,
  onEverywhere,
}: {
  readonly reading: Reading;
  readonly columns: readonly GridColumn[];
  readonly onEverywhere: (key: string, text: string) => void;
}) {
  const missing = columns.filter(
    ({ key, required }) => required === true && !reading.match.includes(key),
  );
  return missing.map((column) => (
    <div key={column.key} className="field">
      <label htmlFor={`every-${column.key}`}>
        No column is “{column.title}”, which every row needs.
      </label>
      {column.choices === undefined ? (
        <span id={`every-${column.key}`} className="hint">
          Choose above which column it is, or write it row by row below.
        </span>
      ) : (
        <select
          id={`every-${column.key}`}
          className="input"
          value={reading.everywhere[column.key] ?? ""}
          onChange={(event) => onEverywhere(column.key, event.target.value)}
        >
          <option value="">Write it row by row below</option>
          {column.choices.map(({ value, label }) => (
            <option key={value} value={label}>
              Every row is: {label}
            </option>
          ))}
        </select>
      )}
    </div>
  ));
}

function firstValues(body: readonly (readonly string[])[], at: number): string {
  const values = body.map((row) => row[at] ?? "").filter((text) => text !== "");
  return values.length === 0 ? "nothing" : values.slice(0, 3).join(" · ");
}

/** 0 → `Column A`, as spreadsheets name them. */
function letterOf(at: number): string {
  const letter = String.fromCharCode(65 + (at % 26));
  return `Column ${at < 26 ? letter : String.fromCharCode(64 + Math.floor(at / 26)) + letter}`;
}
