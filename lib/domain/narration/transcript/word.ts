/** A spoken word, as the rest of this room reads it. */
export interface Word {
  /** Small letters, no hyphens; a number as digits stands as it was written. */
  readonly text: string;
  /** Where it stands in what was spoken. */
  readonly from: number;
  readonly to: number;
  /** Thousandths of a second; null in text without times. */
  readonly time: number | null;
  /** Clauses and sentences are numbered through from 0. */
  readonly clause: number;
  readonly sentence: number;
  /** Talk between two silences, or a line of plain text; numbered through from 0. */
  readonly breath: number;
  /** Line of the transcript, from 1. */
  readonly line: number;
  /** Written with a capital. */
  readonly capital: boolean;
  /** Written with ’s. */
  readonly possessive: boolean;
  /** Its sentence was written as a question. */
  readonly asks: boolean;
  /** As labeled; null where the text names nobody. */
  readonly who: string | null;
}
