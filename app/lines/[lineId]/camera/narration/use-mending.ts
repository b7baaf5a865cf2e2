import { useEffect, useRef, useState } from "react";
import type { GridColumn } from "#app/_components/grid/column.ts";
import { NO_STEPS, type Steps, stepBack, stepForth, stepFrom } from "#app/_components/steps.ts";
import { type CellChange, cellOf } from "#app/_components/typed-cell.ts";
import type { DraftView } from "./draft-columns.ts";
import { type Edits, type ReadDraft, readDraft } from "./mended.ts";

interface Kept {
  readonly edits: Edits;
  readonly ticks: readonly string[];
}

type Found = Readonly<Record<string, Readonly<Record<string, string>>>>;

/** What is typed over and ticked in a drafted log, before it is decided. */
export interface Mending {
  readonly edits: Edits;
  readonly ticked: ReadonlySet<string>;
  readonly read: (view: DraftView, columns: readonly GridColumn[]) => ReadDraft;
  /** Problems of a row that is not ticked: only of cells that were typed in. */
  readonly shown: (
    key: string,
    problems: Readonly<Record<string, string>>,
  ) => Readonly<Record<string, string>>;
  readonly type: (changes: readonly CellChange[]) => void;
  readonly tick: (key: string) => void;
  readonly tickAll: (keys: readonly string[]) => void;
  readonly undo: () => void;
  readonly redo: () => void;
  /** What saving found wrong in a cell. */
  readonly find: (key: string, field: string, message: string) => void;
  /** These rows are decided: nothing of them is kept here any more. */
  readonly settle: (keys: readonly string[]) => void;
}

const NOTHING: Kept = { edits: {}, ticks: [] };

/** Kept in the browser, so that a page that is left loses nothing of what was typed. */
export function useMending(narrationId: string): Mending {
  const name = `wyebook:narration:${narrationId}`;
  const [kept, setKept] = useState<Kept>(NOTHING);
  const [found, setFound] = useState<Found>({});
  const steps = useRef<Steps<Kept>>(NO_STEPS);
  const restored = useRef(false);

  useEffect(() => {
    setKept(keptUnder(name));
    restored.current = true;
  }, [name]);

  useEffect(() => {
    if (restored.current && kept !== NOTHING) keep(name, kept);
  }, [name, kept]);

  /** Letters typed on in the same cell are one step. */
  function change(next: (now: Kept) => Kept, typingIn: string | null = null) {
    steps.current = stepFrom(steps.current, kept, typingIn);
    setKept(next);
  }

  function move(moved: ReturnType<typeof stepBack<Kept>>) {
    if (moved === null) return;
    steps.current = moved.steps;
    setKept(moved.value);
  }

  return {
    edits: kept.edits,
    ticked: new Set(kept.ticks),
    read: (view, columns) => {
      const read = readDraft(view, columns, kept.edits);
      return { ...read, problems: { ...found[view.key], ...read.problems } };
    },
    shown: (key, problems) =>
      Object.fromEntries(
        Object.entries(problems).filter(
          ([column]) =>
            kept.edits[key]?.[column] !== undefined || found[key]?.[column] !== undefined,
        ),
      ),
    type: (changes) => {
      change((now) => ({ ...now, edits: withChanges(now.edits, changes) }), cellOf(changes));
      setFound((now) => withoutChanged(now, changes));
    },
    tick: (key) =>
      change((now) => ({
        ...now,
        ticks: now.ticks.includes(key)
          ? now.ticks.filter((each) => each !== key)
          : [...now.ticks, key],
      })),
    tickAll: (keys) => change((now) => ({ ...now, ticks: [...new Set([...now.ticks, ...keys])] })),
    undo: () => move(stepBack(steps.current, kept)),
    redo: () => move(stepForth(steps.current, kept)),
    find: (key, field, message) => setFound((now) => ({ ...now, [key]: { [field]: message } })),
    settle: (keys) => {
      const gone = new Set(keys);
      steps.current = NO_STEPS;
      setKept((now) => ({
        edits: Object.fromEntries(Object.entries(now.edits).filter(([key]) => !gone.has(key))),
        ticks: now.ticks.filter((key) => !gone.has(key)),
      }));
    },
  };
}

function withChanges(edits: Edits, changes: readonly CellChange[]): Edits {
  const next: Record<string, Readonly<Record<string, string>>> = { ...edits };
  for (const { key, column, text } of changes) next[key] = { ...next[key], [column]: text };
  return next;
}

function withoutChanged(found: Found, changes: readonly CellChange[]): Found {
  const keys = new Set(changes.map(({ key }) => key));
  return Object.fromEntries(Object.entries(found).filter(([key]) => !keys.has(key)));
}

function keep(name: string, kept: Kept): void {
  try {
    localStorage.setItem(name, JSON.stringify(kept));
  } catch {
    // Private windows and full stores: what was typed stays on the screen.
  }
}

function keptUnder(name: string): Kept {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(name) ?? "null");
    return isKept(kept) ? kept : NOTHING;
  } catch {
    return NOTHING;
  }
}

function isKept(value: unknown): value is Kept {
  if (typeof value !== "object" || value === null) return false;
  const kept = value as Record<string, unknown>;
  return typeof kept["edits"] === "object" && Array.isArray(kept["ticks"]);
}
