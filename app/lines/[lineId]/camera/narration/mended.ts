import { parseCell, unsureIn } from "#app/_components/grid/cell.ts";
import type { GridColumn } from "#app/_components/grid/column.ts";
import { type DraftView, SEEN_COLUMNS, UNSEEN_COLUMNS } from "./draft-columns.ts";

/** What a person typed over, by draft and column. */
export type Edits = Readonly<Record<string, Readonly<Record<string, string>>>>;

export interface ReadDraft {
  readonly texts: Readonly<Record<string, string>>;
  readonly fields: Readonly<Record<string, unknown>>;
  readonly problems: Readonly<Record<string, string>>;
}

/** A drafted row with what was typed over it, read as the log's own table reads its cells. */
export function readDraft(
  view: Pick<DraftView, "key" | "texts">,
  columns: readonly GridColumn[],
  edits: Edits,
): ReadDraft {
  const texts = { ...view.texts, ...edits[view.key] };
  const fields: Record<string, unknown> = {};
  const problems: Record<string, string> = {};
  for (const column of columns) {
    const text = texts[column.key] ?? "";
    const read = parseCell(column, text);
    const off = unsureIn(column, text);
    if (column.unsure !== undefined && off !== null) fields[column.unsure] = off;
    if (read.ok) fields[column.key] = read.value;
    else problems[column.key] = read.error;
  }
  return { texts, fields, problems };
}

/** The ticked rows that are still open: those that can be accepted, and how many cannot yet. */
export function readDrafts(
  { seen, unseen }: { readonly seen: readonly DraftView[]; readonly unseen: readonly DraftView[] },
  { edits, ticked }: { readonly edits: Edits; readonly ticked: ReadonlySet<string> },
): { readonly good: { key: string; fields: ReadDraft["fields"] }[]; readonly wrong: number } {
  const read = [
    ...seen.map((view) => ({ view, columns: SEEN_COLUMNS })),
    ...unseen.map((view) => ({ view, columns: UNSEEN_COLUMNS })),
  ]
    .filter(({ view }) => view.decided === null && ticked.has(view.key))
    .map(({ view, columns }) => ({ key: view.key, ...readDraft(view, columns, edits) }));
  const good = read.filter(({ problems }) => Object.keys(problems).length === 0);
  return {
    good: good.map(({ key, fields }) => ({ key, fields })),
    wrong: read.length - good.length,
  };
}
