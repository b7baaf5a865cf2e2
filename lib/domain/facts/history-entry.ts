import { instant, type RowOf, row, words } from "./field.ts";

/** One line of the append-only history. */
export type HistoryEntry = RowOf<typeof HISTORY_ENTRY>;

export const HISTORY_ENTRY = row({
  one: "history entry",
  most: 100_000,
  fields: {
    at: instant,
    by: words,
    /** The operation, say `save-entries`. */
    action: words,
    /** One sentence for people. */
    sentence: words,
    /** What changed, as JSON. */
    detail: words,
  },
});
