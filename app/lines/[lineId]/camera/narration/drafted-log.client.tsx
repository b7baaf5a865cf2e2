"use client";

import { useEffect, useRef, useState, useTransition } from "react";
import type { GridColumn } from "#app/_components/grid/column.ts";
import { rowId } from "#app/_components/typed-cell.ts";
import { type TypedRow, TypedTable } from "#app/_components/typed-table.client.tsx";
import { unanswered } from "#app/_components/unanswered.ts";
import type { SpokenReading } from "#lib/domain/narration/footage/run-told.ts";
import { err } from "#lib/result.ts";
import { counted } from "../../names.ts";
import { decideDraftsAction, takeBackDraftAction } from "./actions.ts";
import { type DraftView, SEEN_COLUMNS, UNSEEN_COLUMNS } from "./draft-columns.ts";
import { seenWords, unseenWords } from "./draft-words.ts";
import { readDrafts } from "./mended.ts";
import { movedViews } from "./moved-views.ts";
import styles from "./narration.module.css";
import type { SaidPart } from "./said-pieces.ts";
import { SaidWords } from "./said-words.client.tsx";
import { type Mending, useMending } from "./use-mending.ts";

interface DraftedLogProps {
  readonly lineId: string;
  readonly narrationId: string;
  readonly seen: readonly DraftView[];
  readonly unseen: readonly DraftView[];
  readonly parts: readonly SaidPart[];
  readonly readings: readonly SpokenReading[];
  readonly readOnly: boolean;
}

/**
 * What was said beside the rows drafted from it: each with the words it rests on, which are lit when
 * it is chosen, mended in place, ticked, and taken into the log together. What was decided stays in
 * its place and can be taken back.
 */
export function DraftedLog(props: DraftedLogProps) {
  const { lineId, narrationId, unseen, parts, readings, readOnly } = props;
  const mending = useMending(narrationId);
  const [said, setSaid] = useState("");
  const [chosen, setChosen] = useState("");
  const rows = useRef<HTMLDivElement>(null);
  const { views: seen, moved } = movedViews(props.seen, readings, mending.edits);
  const shared = { lineId, narrationId, readOnly, mending, chosen, onSaid: setSaid };

  /** Choosing words brings their row into view; choosing a row is going into it. */
  function choose(key: string) {
    setChosen(key);
    document.getElementById(rowId(key))?.scrollIntoView({ block: "nearest" });
  }

  useEffect(() => {
    const box = rows.current;
    const follow = ({ target }: Event) => {
      const row = target instanceof Element ? target.closest("[data-row]") : null;
      const key = row?.getAttribute("data-row");
      if (key) setChosen(key);
    };
    box?.addEventListener("focusin", follow);
    box?.addEventListener("click", follow);
    return () => {
      box?.removeEventListener("focusin", follow);
      box?.removeEventListener("click", follow);
    };
  }, []);

  return (
    <>
      <div className={styles["sides"]}>
        <SaidWords parts={parts} chosen={chosen} onChoose={choose} />
        <div ref={rows} className={`stack ${styles["rows"]}`}>
          {seen.length === 0 ? null : (
            <DraftTable label="Draft rows" views={seen} columns={SEEN_COLUMNS} {...shared} />
          )}
          {unseen.length === 0 ? null : (
            <div className="stack-tight">
              <h3>Not visible, per the recording</h3>
              <DraftTable label="Draft gaps" views={unseen} columns={UNSEEN_COLUMNS} {...shared} />
            </div>
          )}
        </div>
      </div>
      {readOnly || seen.length + unseen.length === 0 ? null : (
        <Bar {...props} seen={seen} moved={moved} mending={mending} said={said} onSaid={setSaid} />
      )}
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
  /** Key of the row whose words are lit; empty where none is. */
  readonly chosen: string;
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
  { columns, mending, readOnly, chosen, ...props }: Omit<TableProps, "label" | "views">,
): TypedRow {
  const { key, quote, decided } = view;
  const { texts, problems } = mending.read(view, columns);
  const ticked = mending.ticked.has(key);
  const shared = { key, name: `“${quote}”`, texts, problems, lit: key === chosen };
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
      const taken = await takeBackDraftAction(lineId, narrationId, key).catch((error) =>
        err(unanswered(error)),
      );
      onSaid(taken.ok ? "Undone; the row is open again." : taken.error);
    });
  }

  return (
    <span className={styles["said"]}>
      {time === "" ? null : <span className={styles["time"]}>{time}</span>}
      <span className={state === "dropped" ? "tag tag-done" : "tag"}>{state ?? "open"}</span>
      {state === "accepted" ? <strong>{decided?.words}</strong> : null}
      {decided?.gone === true ? <span>since removed from the log</span> : null}
      <q className={state === "dropped" ? styles["dropped"] : undefined}>{quote}</q>
      {readOnly || state === undefined ? null : (
        <button
          type="button"
          className="link-button"
          aria-label={`Undo: “${quote}”`}
          onClick={takeBack}
        >
          {working ? "undoing …" : "undo"}
        </button>
      )}
    </span>
  );
}

/** What is done with the ticked rows, and with all that ask for no second look. */
function Bar({
  lineId,
  narrationId,
  seen,
  unseen,
  moved,
  mending,
  said,
  onSaid,
}: DraftedLogProps & {
  readonly moved: ReadonlySet<string>;
  readonly mending: Mending;
  readonly said: string;
  readonly onSaid: (words: string) => void;
}) {
  const [working, begin] = useTransition();
  const open = [...seen, ...unseen].filter(({ decided }) => decided === null);
  const ticked = open.filter(({ key }) => mending.ticked.has(key));
  const readOut = open.filter(({ readOut: read }) => read);
  const sure = open.filter((view) => view.sure);

  function accept(keys: ReadonlySet<string>) {
    const { good, wrong } = readDrafts({ seen, unseen }, { edits: mending.edits, ticked: keys });
    const rows = good.map((each) => ({ ...each, moved: moved.has(each.key) }));
    if (rows.length === 0) return onSaid(leftWords(wrong));
    decide({ accept: rows, drop: [] }, `${rows.length} accepted. ${leftWords(wrong)}`.trim());
  }

  function decide(decisions: Parameters<typeof decideDraftsAction>[2], done: string) {
    if (working) return;
    begin(async () => {
      const decided = await decideDraftsAction(lineId, narrationId, decisions).catch((error) =>
        err({ message: unanswered(error), key: "", field: "" }),
      );
      if (!decided.ok) {
        const { message, key, field } = decided.error;
        mending.find(key, field, message);
        return onSaid(message);
      }
      mending.settle([...decisions.accept.map(({ key }) => key), ...decisions.drop]);
      onSaid(done);
    });
  }

  if (open.length === 0)
    return (
      <p role="status" className="strong">
        {said === "" ? "All rows reviewed." : said}
      </p>
    );
  return (
    <div className={`cluster screen-only ${styles["bar"]}`} data-foot-bar>
      <button
        type="button"
        className="button button-main"
        aria-disabled={working || ticked.length === 0}
        onClick={() => ticked.length === 0 || accept(new Set(ticked.map(({ key }) => key)))}
      >
        {working ? "Saving …" : acceptWords(ticked.length)}
      </button>
      <button
        type="button"
        className="button"
        aria-disabled={working || sure.length === 0}
        onClick={() => sure.length === 0 || accept(new Set(sure.map(({ key }) => key)))}
      >
        Accept all that are sure ({sure.length})
      </button>
      <button
        type="button"
        className="button"
        aria-disabled={working || ticked.length === 0}
        onClick={() =>
          ticked.length === 0 ||
          decide({ accept: [], drop: ticked.map(({ key }) => key) }, `${ticked.length} discarded.`)
        }
      >
        Discard
      </button>
      <button
        type="button"
        className="link-button"
        onClick={() => mending.tickAll(readOut.map(({ key }) => key))}
      >
        Select all rows with a spoken footage ({readOut.length})
      </button>
      <span role="status" className="strong">
        {said}
      </span>
      <span className={`muted small ${styles["keys"]}`}>
        <kbd>Ctrl+Enter</kbd> selects a row, <kbd>Ctrl+Z</kbd> undoes
      </span>
    </div>
  );
}

function acceptWords(ticked: number): string {
  return ticked === 0 ? "Accept selected rows" : `Accept ${counted(ticked, "selected row")}`;
}

function leftWords(wrong: number): string {
  return wrong === 0
    ? ""
    : `${counted(wrong, "selected row needs", "selected rows need")} fixing first.`;
}
