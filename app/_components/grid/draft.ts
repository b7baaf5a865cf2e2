import type { Draft, GridState } from "./grid-state.ts";
import { allRows } from "./state.ts";

/** Keeps rows that are not saved yet in the browser; a browser that has no room keeps none. */
export function keepDraft(name: string, state: GridState): void {
  const draft: Draft = {
    base: state.base,
    baseRows: state.baseRows,
    rows: allRows(state),
    raw: Object.fromEntries(
      state.lines
        .filter((line) => Object.keys(line.raw).length > 0)
        .map((line) => [line.id, line.raw]),
    ),
  };
  try {
    localStorage.setItem(name, JSON.stringify(draft));
  } catch {
    // Private windows and full stores: the rows stay on the screen.
  }
}

export function dropDraft(name: string): void {
  try {
    localStorage.removeItem(name);
  } catch {
    // Nothing was kept.
  }
}

export function readDraft(name: string): Draft | null {
  try {
    const text = localStorage.getItem(name);
    const draft: unknown = text === null ? null : JSON.parse(text);
    return isDraft(draft) ? draft : null;
  } catch {
    return null;
  }
}

function isDraft(value: unknown): value is Draft {
  if (typeof value !== "object" || value === null) return false;
  const draft = value as Record<string, unknown>;
  return (
    typeof draft["base"] === "number" &&
    Array.isArray(draft["baseRows"]) &&
    Array.isArray(draft["rows"]) &&
    typeof draft["raw"] === "object"
  );
}
