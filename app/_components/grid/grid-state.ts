import type { GridColumn, GridRow } from "./column.ts";
import type { Pasted } from "./paste.ts";

/** What a table of rows is made of. */
export interface GridSpec {
  readonly columns: readonly GridColumn[];
  /** Fields of a new row that no column shows, or that do not start empty. */
  readonly blank: GridRow;
  /** Shows and adds only rows with these values; the others are kept and saved along. */
  readonly where: Readonly<Record<string, unknown>>;
}

export interface GridLine {
  /** Stays the same while the line is on the screen, also when the blank line becomes a row. */
  readonly key: string;
  readonly id: string;
  readonly values: GridRow;
  /** What was typed and could not be read, by column. */
  readonly raw: Readonly<Record<string, string>>;
  /** What saving found wrong, by column. */
  readonly problems: Readonly<Record<string, string>>;
}

export interface CellState {
  readonly value: unknown;
  readonly raw: string | undefined;
}

export type Patch =
  | {
      readonly kind: "cell";
      readonly id: string;
      readonly column: string;
      readonly before: CellState;
      readonly after: CellState;
    }
  | { readonly kind: "add"; readonly at: number; readonly line: GridLine }
  | { readonly kind: "remove"; readonly at: number; readonly line: GridLine };

export interface Step {
  readonly patches: readonly Patch[];
  /** The cell still being typed in; more letters join the same step. */
  readonly typingIn: string | null;
}

/** Pasted rows that wait for a word on where some of their columns go. */
export interface AskedPaste {
  readonly at: number;
  readonly column: number;
  readonly cells: readonly (readonly string[])[];
  readonly newIds: readonly string[];
  readonly pasted: Pasted;
}

interface Conflict {
  readonly by: string;
  readonly at: string;
  readonly base: number;
  readonly rows: readonly GridRow[];
}

export interface GridState {
  readonly lines: readonly GridLine[];
  /** Rows of the table that this grid does not show. */
  readonly hidden: readonly GridRow[];
  /** The whole table as it was last known to be saved, and its revision. */
  readonly baseRows: readonly GridRow[];
  readonly base: number;
  readonly past: readonly Step[];
  readonly future: readonly Step[];
  readonly edits: number;
  readonly savedEdits: number;
  /** Numbers the blank lines, so that each has its own key. */
  readonly blanks: number;
  readonly conflict: Conflict | null;
  readonly asked: AskedPaste | null;
  readonly note: string;
}

/** Rows typed and not saved, as kept in the browser. */
export interface Draft {
  readonly base: number;
  readonly baseRows: readonly GridRow[];
  readonly rows: readonly GridRow[];
  readonly raw: Readonly<Record<string, Readonly<Record<string, string>>>>;
}

export type GridAction =
  | {
      readonly do: "type";
      readonly key: string;
      readonly column: GridColumn;
      readonly text: string;
      readonly newId: string;
    }
  | { readonly do: "leave" }
  | {
      readonly do: "paste";
      readonly at: number;
      readonly column: number;
      readonly cells: readonly (readonly string[])[];
      readonly newIds: readonly string[];
    }
  /** The first of the pasted rows is one of headings, or it is not. */
  | { readonly do: "read-paste"; readonly heads: boolean }
  /** For each pasted column that was open: the key of its column, or null to leave it out. */
  | { readonly do: "place-paste"; readonly into: Readonly<Record<number, string | null>> }
  | { readonly do: "drop-paste" }
  | { readonly do: "remove"; readonly key: string }
  /** A row that comes from elsewhere on the page, with what is known of it. */
  | { readonly do: "add"; readonly newId: string; readonly values: GridRow }
  | {
      readonly do: "set";
      readonly id: string;
      readonly field: string;
      readonly value: unknown;
    }
  | { readonly do: "undo" }
  | { readonly do: "redo" }
  | {
      readonly do: "saved";
      readonly rows: readonly GridRow[];
      readonly base: number;
      readonly edits: number;
    }
  | {
      readonly do: "refused";
      /** The table as it was sent. */
      readonly rows: readonly GridRow[];
      readonly cells: readonly {
        readonly id: string;
        readonly column: string;
        readonly message: string;
      }[];
    }
  | {
      readonly do: "theirs";
      readonly rows: readonly GridRow[];
      readonly base: number;
      readonly by: string;
      readonly at: string;
    }
  | { readonly do: "keep-mine" }
  | { readonly do: "take-theirs" }
  | { readonly do: "restore"; readonly draft: Draft };
