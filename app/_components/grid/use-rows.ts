import {
  type Dispatch,
  useCallback,
  useEffect,
  useMemo,
  useReducer,
  useRef,
  useState,
} from "react";
import type { RowsAnswer } from "./answer.ts";
import type { GridColumn, GridRow } from "./column.ts";
import { dropDraft, keepDraft, readDraft } from "./draft.ts";
import type { GridAction, GridSpec, GridState } from "./grid-state.ts";
import { idOf } from "./merge.ts";
import { type Place, problemPlaces, unreadPlaces } from "./problems.ts";
import { allRows, isDirty, reduceGrid, startGrid } from "./state.ts";

const AUTOSAVE_AFTER = 1200;

/** Saves a whole table, read at revision `base`, that was last known to be saved as `known`. */
export type SaveRows = (
  base: number,
  rows: readonly GridRow[],
  known: readonly GridRow[],
) => Promise<RowsAnswer>;

export interface Rows {
  readonly state: GridState;
  readonly dispatch: Dispatch<GridAction>;
  readonly saving: boolean;
  /** Cells to be mended before anything is saved. */
  readonly problems: readonly Place[];
  /** Those of them whose words could not be read; nothing is sent while there are any. */
  readonly unread: readonly Place[];
  /** When it was last saved from here, or null. */
  readonly savedAt: string | null;
  /** Why the last try did not reach the file; empty when it did. */
  readonly failure: string;
  readonly save: () => void;
}

/**
 * The rows of one table while they are typed: kept in the browser at once, saved by themselves when
 * nothing in them is to be mended, and put together with what others saved meanwhile.
 */
export function useRows({
  rows,
  base,
  spec,
  draftName,
  saveRows,
}: {
  readonly rows: readonly GridRow[];
  readonly base: number;
  readonly spec: GridSpec;
  readonly draftName: string;
  readonly saveRows: SaveRows;
}): Rows {
  const specNow = useLatest(spec);
  const [state, dispatch] = useReducer(
    (now: GridState, action: GridAction) => reduceGrid(now, action, specNow.current),
    null,
    () => startGrid(rows, base, spec),
  );
  const problems = useMemo(() => problemPlaces(state, spec.columns), [state, spec.columns]);
  const unread = useMemo(() => unreadPlaces(state, spec.columns), [state, spec.columns]);
  const wrong = problems.length;
  const saver = useSaver({ state, dispatch, spec, saveRows, draftName });

  useRestored(draftName, dispatch);
  useTheirs({ rows, base, state, dispatch, waiting: saver.saving });
  useDraft(draftName, state);
  useAutosave({
    state,
    ready: wrong === 0 && !saver.saving && saver.failure === "",
    save: saver.save,
  });
  return { state, dispatch, problems, unread, ...saver };
}

function useSaver({
  state,
  dispatch,
  spec,
  saveRows,
  draftName,
}: {
  readonly state: GridState;
  readonly dispatch: Dispatch<GridAction>;
  readonly spec: GridSpec;
  readonly saveRows: SaveRows;
  readonly draftName: string;
}) {
  const [saving, setSaving] = useState(false);
  const [savedAt, setSavedAt] = useState<string | null>(null);
  const [failedEdits, setFailed] = useState<{ edits: number; words: string } | null>(null);
  const now = useLatest({ state, spec, saveRows });
  const busy = useRef(false);

  const save = useCallback(() => {
    const { state: sent } = now.current;
    if (busy.current) return;
    busy.current = true;
    setSaving(true);
    const sentRows = allRows(sent);
    now.current
      .saveRows(sent.base, sentRows, sent.baseRows)
      .then((answer) => {
        setFailed(failureOf(answer, sent));
        if (answer.status === "saved") setSavedAt(answer.at);
        hear(answer, { sent, sentRows, dispatch, columns: now.current.spec.columns });
      })
      .catch(() => setFailed({ edits: sent.edits, words: NO_ANSWER }))
      .finally(() => {
        busy.current = false;
        setSaving(false);
      });
  }, [now, dispatch]);

  useSaveOnLeaving({ now, draftName, busy });
  const failure =
    failedEdits !== null && failedEdits.edits === state.edits ? failedEdits.words : "";
  return { saving, savedAt, failure, save };
}

const NO_ANSWER =
  "the server did not respond. Your changes are saved in this browser; choose Save now to try again";

function failureOf(answer: RowsAnswer, sent: GridState): { edits: number; words: string } | null {
  if (answer.status !== "refused") return null;
  if (answer.message === "" && answer.cells.length > 0) return null;
  return { edits: sent.edits, words: answer.message || "these rows could not be saved" };
}

function hear(
  answer: RowsAnswer,
  {
    sent,
    sentRows,
    dispatch,
    columns,
  }: {
    readonly sent: GridState;
    readonly sentRows: readonly GridRow[];
    readonly dispatch: Dispatch<GridAction>;
    readonly columns: readonly GridColumn[];
  },
) {
  if (answer.status === "saved") {
    dispatch({ do: "saved", rows: sentRows, base: answer.revision, edits: sent.edits });
    const kept = new Map((answer.rows ?? []).map((row) => [idOf(row), row]));
    if (kept.size > 0) {
      const rows = sentRows.map((row) => kept.get(idOf(row)) ?? row);
      dispatch({ do: "theirs", rows, base: answer.revision, by: "", at: "" });
    }
  } else if (answer.status === "refused") {
    const cells = answer.cells.flatMap(({ row, column, message }) => {
      const wrong = sentRows[row];
      if (wrong === undefined) return [];
      return [{ id: idOf(wrong), column: shownColumn(column, columns), message }];
    });
    dispatch({ do: "refused", rows: sentRows, cells });
  } else {
    dispatch({
      do: "theirs",
      rows: answer.rows,
      base: answer.revision,
      by: answer.by,
      at: answer.at,
    });
  }
}

/** The column that shows a field: itself, a part of it, or the first one. */
function shownColumn(field: string, columns: readonly GridColumn[]): string {
  const exact = columns.find((column) => column.key === field);
  const [top = field] = field.split(/[.[]/);
  const part = columns.find((column) => column.key === top || column.key.startsWith(`${top}.`));
  return (exact ?? part ?? columns[0])?.key ?? field;
}

/** Leaving the page by a link saves what is ready; the rest stays in the browser. */
function useSaveOnLeaving({
  now,
  draftName,
  busy,
}: {
  readonly now: { readonly current: { state: GridState; spec: GridSpec; saveRows: SaveRows } };
  readonly draftName: string;
  readonly busy: { readonly current: boolean };
}) {
  useEffect(
    () => () => {
      const { state, spec, saveRows } = now.current;
      if (!isDirty(state) || busy.current || state.conflict !== null) return;
      keepDraft(draftName, state);
      if (problemPlaces(state, spec.columns).length > 0) return;
      saveRows(state.base, allRows(state), state.baseRows).then(
        (answer) => {
          if (answer.status === "saved") dropDraft(draftName);
        },
        () => undefined,
      );
    },
    [now, draftName, busy],
  );
}

/** What was typed here earlier and not saved comes back, once. */
function useRestored(name: string, dispatch: Dispatch<GridAction>) {
  useEffect(() => {
    const draft = readDraft(name);
    if (draft !== null) dispatch({ do: "restore", draft });
  }, [name, dispatch]);
}

/** Rows that come with the page: taken over, or put together with what is being typed. */
function useTheirs({
  rows,
  base,
  state,
  dispatch,
  waiting,
}: {
  readonly rows: readonly GridRow[];
  readonly base: number;
  readonly state: GridState;
  readonly dispatch: Dispatch<GridAction>;
  readonly waiting: boolean;
}) {
  const known = useRef<readonly GridRow[]>(rows);
  const behind = base > state.base;
  useEffect(() => {
    if (waiting || (known.current === rows && !behind)) return;
    known.current = rows;
    if (base >= state.base) dispatch({ do: "theirs", rows, base, by: "", at: "" });
  }, [rows, base, behind, state.base, waiting, dispatch]);
}

function useDraft(name: string, state: GridState) {
  const dirty = isDirty(state);
  const touched = state.edits > 0;
  useEffect(() => {
    if (!dirty) {
      if (touched) dropDraft(name);
      return;
    }
    const timer = setTimeout(() => keepDraft(name, state), 250);
    const keepNow = () => keepDraft(name, state);
    window.addEventListener("pagehide", keepNow);
    return () => {
      clearTimeout(timer);
      window.removeEventListener("pagehide", keepNow);
    };
  }, [name, state, dirty, touched]);
}

function useAutosave({
  state,
  ready,
  save,
}: {
  readonly state: GridState;
  readonly ready: boolean;
  readonly save: () => void;
}) {
  const due = ready && isDirty(state) && state.conflict === null;
  const { edits } = state;
  useEffect(() => {
    if (!due || edits === 0) return;
    const timer = setTimeout(save, AUTOSAVE_AFTER);
    return () => clearTimeout(timer);
  }, [due, edits, save]);
}

function useLatest<T>(value: T): { readonly current: T } {
  const latest = useRef(value);
  latest.current = value;
  return latest;
}
