import type { KeyboardEvent } from "react";

/** What a key asks for in a cell; null: the browser's own doing. */
export type CellCommand =
  | "undo"
  | "redo"
  | "fill-down"
  | "remove-row"
  | "edit"
  | "clear"
  | "toggle"
  | "cancel"
  | "open-choices"
  | "close-choices"
  | { readonly rows: number; readonly columns: number }
  | { readonly edge: "row-start" | "row-end" | "first" | "last" };

export interface CellMode {
  /** Something was typed that is not left yet. */
  readonly typing: boolean;
  /** The caret is in the text: arrows move in it. */
  readonly caret: boolean;
  /** One of a closed set is chosen here. */
  readonly choice: boolean;
  /** The list of choices is open. */
  readonly choosing: boolean;
  readonly yesNo: boolean;
}

const ALT_KEYS: Readonly<Record<string, CellCommand>> = {
  ArrowDown: "open-choices",
  Enter: "open-choices",
  ArrowUp: "close-choices",
};
const PLAIN_KEYS: Readonly<Record<string, CellCommand>> = { Escape: "cancel", F2: "edit" };

/** Keyboard first: what each key does; the usual keys for tables that are typed in. */
export function commandOf(event: KeyboardEvent, mode: CellMode): CellCommand | null {
  if (event.ctrlKey || event.metaKey) return commandWithControl(event, mode);
  if (event.altKey) return mode.choice ? (ALT_KEYS[event.key] ?? null) : null;
  if (event.key === "F2" && mode.choice) return "open-choices";
  const plain = PLAIN_KEYS[event.key] ?? rowMove(event, mode);
  if (plain !== null) return plain;
  return mode.caret ? null : commandOver(event, mode);
}

function rowMove(event: KeyboardEvent, mode: CellMode): CellCommand | null {
  if (event.key === "Enter") return { rows: event.shiftKey ? -1 : 1, columns: 0 };
  if (mode.choosing) return null;
  if (event.key === "ArrowDown") return { rows: 1, columns: 0 };
  return event.key === "ArrowUp" ? { rows: -1, columns: 0 } : null;
}

function commandWithControl(event: KeyboardEvent, mode: CellMode): CellCommand | null {
  const key = event.key.toLowerCase();
  if (key === "z") return event.shiftKey ? "redo" : "undo";
  if (key === "y") return "redo";
  if (key === "d") return "fill-down";
  if (key === "delete" && !mode.typing && !mode.caret) return "remove-row";
  if (key === "home") return { edge: "first" };
  if (key === "end") return { edge: "last" };
  return null;
}

/** Keys that act on the whole cell while the caret is not in its text. */
function commandOver(event: KeyboardEvent, mode: CellMode): CellCommand | null {
  if (event.shiftKey) return null;
  if (event.key === "ArrowLeft") return { rows: 0, columns: -1 };
  if (event.key === "ArrowRight") return { rows: 0, columns: 1 };
  if (mode.typing) return null;
  if (event.key === "Home") return { edge: "row-start" };
  if (event.key === "End") return { edge: "row-end" };
  if (event.key === "Delete" || event.key === "Backspace") return "clear";
  if (event.key === " " && mode.yesNo) return "toggle";
  return null;
}
