"use client";

import { useState, useTransition } from "react";
import type { GridColumn } from "#app/_components/grid/column.ts";
import { type TypedRow, TypedTable } from "#app/_components/typed-table.client.tsx";
import { counted } from "../../_names.ts";
import { type DraftView, SEEN_COLUMNS, UNSEEN_COLUMNS } from "./_draft-columns.ts";
import { seenWords, unseenWords } from "./_draft-words.ts";
import { readDrafts } from "./_mended.ts";
import { decideDraftsAction, takeBackDraftAction } from "./actions.ts";
import styles from "./narration.module.css";
import { type Mending, useMending } from "./use-mending.ts";

interface DraftedLogProps {
  readonly lineId: string;
  readonly narrationId: string;
  readonly seen: readonly DraftView[];
  readonly unseen: readonly DraftView[];
  readonly readOnly: boolean;
}

/**
 * The drafted rows to look over: each with the words it rests on, mended in place, ticked, and taken
 * into the log together. What was decided stays in its place and can be taken back.
 */
export function DraftedLog(props: DraftedLogProps) {
  const { lineId, narrationId, seen, unseen, readOnly } = props;
  const mending = useMending(narrationId);
  const [said, setSaid] = useState("");
  if (seen.length + unseen.length === 0) return null;
  const shared = { lineId, narrationId, readOnly, mending, onSaid: setSaid };
  return (
    <>
      {seen.length === 0 ? null : (
        <DraftTable label="Drafted rows" views={seen} columns={SEEN_COLUMNS} {...shared} />
      )}
      {unseen.length === 0 ? null : (
        <div className="stack-tight">
          <h3>Could not see, as said</h3>
          <DraftTable label="Drafted gaps" views={unseen} columns={UNSEEN_COLUMNS} {...shared} />
        </div>
      )}
      {readOnly ? null : <Bar {...props} mending={mending} said={said} onSaid={setSaid} />}
    </>
  );
}

interface TableProps {
  readonly lineId: string;
  readonly narrationId: string;
  readonly label: string;
  readonly views: readonly DraftView[];
  readonly columns: readonly GridColumn[];
  readonly readOnly: boolean;
  readonly mending: Mending;
  readonly onSaid: (words: string) => void;
}

function DraftTable({ label, views, columns, mending, ...props }: TableProps) {
  return (
    <TypedTable
      label={label}
      columns={columns}
      rows={views.map((view) => rowOf(view, { columns, mending, ...props }))}
      onType={mending.type}
      onUndo={mending.undo}
      onRedo={mending.redo}
      onTick={mending.tick}
    />
  );
}

function rowOf(
  view: DraftView,
  { columns, mending, readOnly, ...props }: Omit<TableProps, "label" | "views">,
): TypedRow {
  const { key, quote, decided } = view;
  const { texts, problems } = mending.read(view, columns);
  const ticked = mending.ticked.has(key);
  const shared = { key, name: `“${quote}”`, texts, problems };
  if (decided !== null || readOnly)
    return { ...shared, mark: "", still: <Still view={view} readOnly={readOnly} {...props} /> };
  return {
    ...shared,
    problems: ticked ? problems : mending.shown(key, problems),
    mark: (
      <input
        type="checkbox"
        className={styles["tick"]}
        aria-label={`Accept “${quote}”`}
        checked={ticked}
        onChange={() => mending.tick(key)}
      />
    ),
    above: <Words view={view} />,
    brief: columns === UNSEEN_COLUMNS ? unseenWords(texts) : seenWords(texts),
  };
}

/** The time, the words themselves, and how sure they are. */
function Words({ view }: { readonly view: DraftView }) {
  return (
    <span className={styles["said"]}>
      {view.time === "" ? null : <span className={styles["time"]}>{view.time}</span>}
      <q>{view.quote}</q>
      {view.marks.map((mark) => (
        <span key={mark} className="tag">
          {mark}
        </span>
      ))}
    </span>
  );
}

/** A row that is decided: what became of it, and the way back. */
function Still({
  view,
  lineId,
  narrationId,
  readOnly,
  onSaid,
}: Pick<TableProps, "lineId" | "narrationId" | "readOnly" | "onSaid"> & {
  readonly view: DraftView;
}) {
  const [working, begin] = useTransition();
  const { key, decided, time, quote } = view;
  const state = decided?.state;

  function takeBack() {
    if (working) return;
    begin(async () => {
      const taken = await takeBackDraftAction(lineId, narrationId, key);
      onSaid(taken.ok ? "Taken back: the row is open again." : taken.error);
    });
  }

  return (
    <span className={styles["said"]}>
      {time === "" ? null : <span className={styles["time"]}>{time}</span>}
      <span className={state === "dropped" ? "tag tag-done" : "tag"}>{state ?? "open"}</span>
      {state === "accepted" ? <strong>{decided?.words}</strong> : null}
      {decided?.gone === true ? <span>taken out of the log since</span> : null}
      <q className={state === "dropped" ? styles["dropped"] : undefined}>{quote}</q>
      {readOnly || state === undefined ? null : (
        <button
          type="button"
          className="link-button"
          aria-label={`Take back: “${quote}”`}
          onClick={takeBack}
        >
          {working ? "taking back …" : "take back"}
        </button>
      )}
    </span>
  );
}

/** What is done with the ticked rows. */
function Bar({
  lineId,
  narrationId,
  seen,
  unseen,
  mending,
  said,
  onSaid,
}: DraftedLogProps & {
  readonly mending: Mending;
  readonly said: string;
  readonly onSaid: (words: string) => void;
}) {
  const [working, begin] = useTransition();
  const open = [...seen, ...unseen].filter(({ decided }) => decided === null);
  const ticked = open.filter(({ key }) => mending.ticked.has(key));
  const readOut = open.filter(({ readOut: read }) => read);

  function decide(as: "accept" | "drop") {
    if (working || ticked.length === 0) return;
    const read = readDrafts({ seen, unseen }, mending);
    const accept = as === "accept" ? read.good : [];
    const drop = as === "drop" ? ticked.map(({ key }) => key) : [];
    if (accept.length + drop.length === 0) return onSaid(leftWords(read.wrong));
    begin(async () => {
      const decided = await decideDraftsAction(lineId, narrationId, { accept, drop });
      if (!decided.ok) {
        const { message, key, field } = decided.error;
        mending.find(key, field, message);
        return onSaid(message);
      }
      mending.settle([...accept.map(({ key }) => key), ...drop]);
      const done = as === "accept" ? `${accept.length} accepted.` : `${drop.length} dropped.`;
      onSaid(as === "accept" ? `${done} ${leftWords(read.wrong)}`.trim() : done);
    });
  }

  if (open.length === 0)
    return (
      <p role="status" className="strong">
        {said === "" ? "Every row is decided." : said}
      </p>
    );
  return (
    <div className={`cluster screen-only ${styles["bar"]}`}>
      <button
        type="button"
        className="button button-main"
        aria-disabled={working || ticked.length === 0}
        onClick={() => decide("accept")}
      >
        {working ? "Saving …" : acceptWords(ticked.length)}
      </button>
      <button
        type="button"
        className="button"
        aria-disabled={working || ticked.length === 0}
        onClick={() => decide("drop")}
      >
        Drop
      </button>
      <button
        type="button"
        className="link-button"
        onClick={() => mending.tickAll(readOut.map(({ key }) => key))}
      >
        Tick all that were read out ({readOut.length})
      </button>
      <span role="status" className="strong">
        {said}
      </span>
      <span className={`muted small ${styles["keys"]}`}>
        <kbd>Ctrl Enter</kbd> ticks a row, <kbd>Ctrl Z</kbd> undoes
      </span>
    </div>
  );
}

function acceptWords(ticked: number): string {
  return ticked === 0 ? "Accept ticked rows" : `Accept ${counted(ticked, "ticked row")}`;
}

function leftWords(wrong: number): string {
  return wrong === 0
    ? ""
    : `${counted(wrong, "ticked row needs", "ticked rows need")} mending first.`;
}
