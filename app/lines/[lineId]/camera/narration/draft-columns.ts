import type { GridColumn } from "#app/_components/grid/column.ts";
import type { DraftDecision } from "#lib/domain/facts/narration.ts";
import type { PlacedRow } from "#lib/domain/narration/log/moved.ts";
import type { TextSpan } from "#lib/domain/narration/transcript/said-line.ts";
import { GAP_COLUMNS } from "../columns.ts";
import { OBSERVATION_COLUMNS } from "../observation-columns.ts";

/** A drafted row as the screen shows it: the words it rests on, and its cells as typed. */
export interface DraftView {
  readonly key: string;
  readonly quote: string;
  /** `2:58`; empty where the transcript has no times. */
  readonly time: string;
  readonly texts: Readonly<Record<string, string>>;
  /** How sure: how the counter was found, hedges, what was said of the record. */
  readonly marks: readonly string[];
  /** The counter was spoken, not worked out. */
  readonly readOut: boolean;
  /** Spoken there, without a hedge, and nothing else heard there: nothing in it asks for a second look. */
  readonly sure: boolean;
  /** Where its words stand in what was said. */
  readonly span: TextSpan;
  /** Where it is and when it was told, for what moves with a mended distance. */
  readonly place: Omit<PlacedRow, "key">;
  readonly decided: DecidedView | null;
}

export interface DecidedView {
  readonly state: DraftDecision["state"];
  /** What it became; for one that was dropped, what it would have been. */
  readonly words: string;
  /** It was taken out of the log by hand since. */
  readonly gone: boolean;
}

const WIDTHS: Readonly<Record<string, number>> = {
  counter: 6,
  kind: 9,
  clock: 5,
  toCounter: 6,
  fault: 12,
  degree: 7,
  reduction: 5,
  diameter: 4,
  material: 13,
  fitting: 8,
  note: 20,
};

/** Cells of a drafted row; its time and its words stand over them. */
export const SEEN_COLUMNS: readonly GridColumn[] = narrower(OBSERVATION_COLUMNS);
export const UNSEEN_COLUMNS: readonly GridColumn[] = GAP_COLUMNS;

function narrower(columns: readonly GridColumn[]): GridColumn[] {
  return columns.flatMap((column) => {
    const width = WIDTHS[column.key];
    return width === undefined ? [] : [{ ...column, width }];
  });
}
