import type { Sheet } from "#lib/exchange/table-file/sheet.ts";
import type { Reading } from "./sort-rows.ts";

/** What is on the screen of one file, by the numbers of its rows. */
export interface Work {
  readonly fileName: string;
  readonly guessed: boolean;
  readonly sheets: readonly Sheet[];
  readonly sheet: number;
  readonly reading: Reading;
  readonly edits: Readonly<Record<number, Readonly<Record<string, string>>>>;
  /** Rows that came in, or that a person leaves out. */
  readonly gone: readonly number[];
  /** Rows that had something to mend: they stay in that table while they are typed in. */
  readonly mend: readonly number[];
  /** What saving found wrong, by row and column. */
  readonly found: Readonly<Record<number, Readonly<Record<string, string>>>>;
}

/** Keeps the work on a file in the browser, so that leaving the page loses nothing. */
export function keepWork(name: string, work: Work | null): void {
  try {
    if (work === null) localStorage.removeItem(name);
    else localStorage.setItem(name, JSON.stringify(work));
  } catch {
    // Private windows and full stores: the rows stay on the screen.
  }
}

export function keptWork(name: string): Work | null {
  try {
    const text = localStorage.getItem(name);
    const work: unknown = text === null ? null : JSON.parse(text);
    return isWork(work) ? work : null;
  } catch {
    return null;
  }
}

function isWork(value: unknown): value is Work {
  if (typeof value !== "object" || value === null) return false;
  const work = value as Record<string, unknown>;
  return (
    Array.isArray(work["sheets"]) &&
    Array.isArray(work["gone"]) &&
    Array.isArray(work["mend"]) &&
    typeof work["reading"] === "object" &&
    typeof work["edits"] === "object"
  );
}
