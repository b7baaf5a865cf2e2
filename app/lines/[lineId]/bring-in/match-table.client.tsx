"use client";

import type { GridColumn } from "#app/_components/grid/column.ts";
import { firstValues, letterOf } from "#app/_components/grid/paste.ts";
import { Heads } from "#app/_components/heads.tsx";
import { Scroll } from "#app/_components/scroll.tsx";
import styles from "./bring-in.module.css";
import { type Match, type Reading, UNSAID, unsaidIn, widthOf, withMeaning } from "./sort-rows.ts";

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
          <Heads of={["In the file", "Sample values", "Import as"]} />
          <tbody>
            {Array.from({ length: widthOf(rows) }, (_none, at) => {
              const heading = (head === null ? "" : (rows[head]?.[at] ?? "")) || letterOf(at);
              return (
                // biome-ignore lint/suspicious/noArrayIndexKey: a column of the file is its place
                <tr key={at} data-unsaid={match[at] === UNSAID}>
                  <th scope="row">{heading}</th>
                  <td className="muted">{firstValues(body, at)}</td>
                  <td>
                    <select
                      className="input"
                      aria-label={`${heading} import as`}
                      aria-invalid={match[at] === UNSAID ? true : undefined}
                      value={match[at] ?? ""}
                      onChange={(event) =>
                        onMatch(withMeaning(match, at, event.target.value || null))
                      }
                    >
                      {match[at] === UNSAID ? <option value={UNSAID}>select</option> : null}
                      <option value="">skip this column</option>
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
      <LeaveOut match={match} onMatch={onMatch} />
      <Missing reading={reading} columns={columns} onEverywhere={onEverywhere} />
    </>
  );
}

/** Many columns that nobody needs are left out with one press, knowingly. */
function LeaveOut({
  match,
  onMatch,
}: {
  readonly match: Match;
  readonly onMatch: (match: Match) => void;
}) {
  const { length } = unsaidIn(match);
  if (length < 2) return null;
  return (
    <div>
      <button
        type="button"
        className="button"
        onClick={() => onMatch(match.map((key) => (key === UNSAID ? null : key)))}
      >
        Skip the {length} columns not mapped yet
      </button>
    </div>
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
          <option value="">Enter it row by row below</option>
          {column.choices.map(({ value, label }) => (
            <option key={value} value={label}>
              {label} in every row
            </option>
          ))}
        </select>
      )}
    </div>
  ));
}
