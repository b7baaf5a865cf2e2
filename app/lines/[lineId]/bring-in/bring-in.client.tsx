"use client";

import Link from "next/link";
import { useMemo, useState, useTransition } from "react";
import type { GridColumn } from "#app/_components/grid/column.ts";
import { NoticeBox } from "#app/_components/notice-box.tsx";
import { Section } from "#app/_components/section.tsx";
import { cellOf } from "#app/_components/typed-cell.ts";
import { unanswered } from "#app/_components/unanswered.ts";
import type { Property } from "#lib/domain/facts/party.ts";
import type { Run } from "#lib/domain/facts/run.ts";
import type { ListPlace } from "#lib/domain/party/listed-row.ts";
import { err } from "#lib/result.ts";
import { RUN_COLUMNS, runColumn } from "../camera/columns.ts";
import { OBSERVATION_COLUMNS } from "../camera/observation-columns.ts";
import { counted } from "../names.ts";
import { entryColumns } from "../record/columns.ts";
import { bringInAction, bringInPeopleAction, readTableAction } from "./actions.ts";
import styles from "./bring-in.module.css";
import { FileChoice } from "./file-choice.client.tsx";
import { DoubleRows, MendRows, ReadyRows } from "./heaps.client.tsx";
import type { Work } from "./kept.ts";
import { LISTED_COLUMNS } from "./listed-columns.ts";
import { ListedRows } from "./listed-rows.client.tsx";
import { MatchTable } from "./match-table.client.tsx";
import { type Heaps, isWrong, readingAt, unsaidIn } from "./sort-rows.ts";
import { useWork } from "./use-work.ts";
import { heapsOf, onSheet, type Table, typedIn, withReading } from "./work.ts";

interface BringInProps {
  readonly lineId: string;
  readonly table: Table;
  /** Id and name of the record or run. */
  readonly to: string;
  readonly name: string;
  readonly back: string;
  /** The rows that the record or run has. */
  readonly there: readonly object[];
  readonly properties: readonly Property[];
  readonly runs: readonly Run[];
  /** What is on the line, where the rows are people. */
  readonly place: ListPlace | null;
}

/** A file of rows, from choosing it to the last row that is mended and brought in. */
export function BringIn(props: BringInProps) {
  const { lineId, table, to, properties, runs } = props;
  const columns = useMemo(() => {
    if (table === "entries") return entryColumns({ properties });
    if (table === "runs") return RUN_COLUMNS;
    if (table === "people") return LISTED_COLUMNS;
    return to === "" ? [runColumn(runs), ...OBSERVATION_COLUMNS] : OBSERVATION_COLUMNS;
  }, [table, to, properties, runs]);
  const { work, start, change, undo, redo } = useWork(`wyebook:bring-in:${lineId}:${table}:${to}`);
  const [said, setSaid] = useState("");
  const [refusal, setRefusal] = useState("");
  const [reading, beginReading] = useTransition();

  function read(file: File) {
    setSaid("");
    setRefusal("");
    const form = new FormData();
    form.set("file", file);
    beginReading(async () => {
      const answer = await readTableAction(form).catch((error) => err(unanswered(error)));
      if (answer.ok) start(answer.value, file.name, columns);
      else setRefusal(answer.error);
    });
  }

  return (
    <>
      <Section title="File">
        <FileChoice
          name={work?.fileName ?? null}
          reading={reading}
          refusal={refusal}
          onFile={read}
        />
        {work === null ? null : <SheetChoice work={work} columns={columns} onChange={change} />}
      </Section>
      {work === null ? null : (
        <WorkOnRows
          {...props}
          columns={columns}
          work={work}
          said={said}
          onSaid={setSaid}
          onChange={change}
          onUndo={undo}
          onRedo={redo}
        />
      )}
    </>
  );
}

/** Which sheet, and which of its rows names the columns. */
function SheetChoice({
  work,
  columns,
  onChange,
}: {
  readonly work: Work;
  readonly columns: readonly GridColumn[];
  readonly onChange: (change: (work: Work) => Work) => void;
}) {
  const rows = work.sheets[work.sheet]?.rows ?? [];
  const heads = rows.slice(0, 15).map((row, at) => ({
    at,
    words: row
      .filter((cell) => cell !== "")
      .slice(0, 4)
      .join(", "),
  }));
  return (
    <div className="form-grid">
      {work.sheets.length < 2 ? null : (
        <label className="field">
          <span className="label">Sheet</span>
          <select
            className="input"
            value={work.sheet}
            onChange={(event) => {
              const sheet = Number(event.target.value);
              onChange((now) => onSheet(now, sheet, columns));
            }}
          >
            {work.sheets.map(({ name }, at) => (
              <option key={name} value={at}>
                {name}
              </option>
            ))}
          </select>
        </label>
      )}
      <label className="field">
        <span className="label">Headings are in</span>
        <select
          className="input"
          value={work.reading.head ?? ""}
          onChange={(event) => {
            const head = event.target.value === "" ? null : Number(event.target.value);
            onChange((now) => withReading(now, readingAt(rows, columns, head), columns));
          }}
        >
          <option value="">no row (the first row is data)</option>
          {heads
            .filter(({ words }) => words !== "")
            .map(({ at, words }) => (
              <option key={at} value={at}>
                row {at + 1}: {words}
              </option>
            ))}
        </select>
      </label>
      {work.guessed ? (
        <p className="muted">
          The file does not state its text encoding; Windows encoding was assumed. Check names with
          accents.
        </p>
      ) : null}
    </div>
  );
}

interface WorkProps extends BringInProps {
  readonly columns: readonly GridColumn[];
  readonly work: Work;
  readonly said: string;
  readonly onSaid: (words: string) => void;
  readonly onChange: (change: (work: Work) => Work, typingIn?: string | null) => void;
  readonly onUndo: () => void;
  readonly onRedo: () => void;
}

function WorkOnRows(props: WorkProps) {
  const { work, columns, onChange } = props;
  const { table, to, there, place } = props;
  const heaps = useMemo(
    () => heapsOf(work, columns, { table, to, there, place }),
    [work, columns, table, to, there, place],
  );
  const rows = work.sheets[work.sheet]?.rows ?? [];
  const shown = columns.filter(
    ({ key, required }) =>
      required === true || key in work.reading.everywhere || work.reading.match.includes(key),
  );
  const leaveOut = (number: number) => onChange((now) => ({ ...now, gone: [...now.gone, number] }));
  return (
    <>
      <Section
        title="Match columns"
        note="Matched by heading. Choose where the others go or skip them; skipped columns stay in your file."
      >
        <MatchTable
          rows={rows}
          reading={work.reading}
          columns={columns}
          onMatch={(match) =>
            onChange((now) => withReading(now, { ...now.reading, match }, columns))
          }
          onEverywhere={(key, text) =>
            onChange((now) => {
              const { [key]: _old, ...others } = now.reading.everywhere;
              const everywhere = text === "" ? others : { ...others, [key]: text };
              return withReading(now, { ...now.reading, everywhere }, columns);
            })
          }
        />
      </Section>
      <Section title="Rows" note={countWords(heaps)}>
        <MendRows
          rows={heaps.mend}
          columns={shown}
          onType={(changes) => onChange((now) => typedIn(now, changes), cellOf(changes))}
          onUndo={props.onUndo}
          onRedo={props.onRedo}
          onLeaveOut={leaveOut}
        />
        <BringBar {...props} heaps={heaps} shown={shown} />
      </Section>
    </>
  );
}

/** What is ready and what is doubled, with the button that brings it in. */
function BringBar({
  lineId,
  table,
  to,
  name,
  back,
  work,
  heaps,
  shown,
  said,
  onSaid,
  onChange,
}: WorkProps & { readonly heaps: Heaps; readonly shown: readonly GridColumn[] }) {
  const [doubles, setDoubles] = useState(false);
  const [bringing, begin] = useTransition();
  const [refusal, setRefusal] = useState("");
  const unsaid = unsaidIn(work.reading.match).length;
  const mended = heaps.mend.filter((row) => !isWrong(row));
  const coming = [...heaps.ready, ...mended, ...(doubles ? heaps.doubles : [])].sort(
    (a, b) => a.number - b.number,
  );

  function bring() {
    if (bringing || coming.length === 0 || unsaid > 0) return;
    setRefusal("");
    begin(async () => {
      const rows = coming.map(({ fields }) => fields);
      const asked =
        table === "people"
          ? bringInPeopleAction(lineId, rows)
          : bringInAction(lineId, { table, to, rows, doubles });
      const answer = await asked.catch((error) => err(unanswered(error)));
      if (!answer.ok) return setRefusal(answer.error);
      const numberOf = (at: number) => coming[at]?.number ?? 0;
      const { added, left } = answer.value;
      onChange((now) => {
        const found = { ...now.found };
        for (const { row, column, message } of left)
          found[numberOf(row)] = { ...found[numberOf(row)], [column]: message };
        const gone = [...now.gone, ...added.map(numberOf)];
        return {
          ...now,
          found,
          gone,
          mend: [...now.mend, ...left.map(({ row }) => numberOf(row))],
        };
      });
      onSaid(broughtWords(added.length, left.length, name));
    });
  }

  return (
    <>
      {table === "people" ? (
        <>
          <ListedRows title="Already there" rows={heaps.doubles} />
          <ListedRows
            title="Ready"
            rows={heaps.ready}
            onSame={(changes) => onChange((now) => typedIn(now, changes))}
          />
        </>
      ) : (
        <>
          <DoubleRows rows={heaps.doubles} columns={shown} wanted={doubles} onWanted={setDoubles} />
          <ReadyRows rows={heaps.ready} columns={shown} />
        </>
      )}
      <div className={`cluster ${styles["bar"]}`}>
        <button
          type="button"
          className="button button-main"
          aria-disabled={bringing || coming.length === 0 || unsaid > 0}
          onClick={bring}
        >
          {bringing ? "Importing…" : `Import ${counted(coming.length, "row")}`}
        </button>
        {unsaid === 0 ? null : <span className="mend">{unsaidWords(unsaid)}</span>}
        <span role="status">
          {said === "" ? null : (
            <span className="strong">
              {said} <Link href={back}>See them</Link>
            </span>
          )}
        </span>
      </div>
      {refusal === "" ? null : <NoticeBox kind="mend" title={refusal} />}
    </>
  );
}

function countWords({ ready, mend, doubles }: Heaps): string {
  const wrong = mend.filter(isWrong).length;
  const parts = [
    `${counted(ready.length + mend.length - wrong, "row")} ready`,
    wrong === 0 ? "" : `${wrong} to fix`,
    doubles.length === 0 ? "" : `${doubles.length} already there`,
  ];
  return `${parts.filter((part) => part !== "").join(", ")}.`;
}

function unsaidWords(unsaid: number): string {
  return unsaid === 1
    ? "Choose above what one column is, or skip it."
    : `Choose above what ${unsaid} columns are, or skip them.`;
}

function broughtWords(added: number, left: number, name: string): string {
  const rest = left === 0 ? "" : ` ${counted(left, "cell")} below still to fix.`;
  if (added === 0) return `Nothing was imported.${rest}`;
  return `${counted(added, "row")} imported into ${name}.${rest}`;
}
