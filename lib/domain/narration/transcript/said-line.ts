/** A stretch of a text, by its letters. */
export interface TextSpan {
  readonly from: number;
  readonly to: number;
}

/** A piece of what was said in one go, as the transcript has it. */
export interface SaidLine extends TextSpan {
  readonly text: string;
  /** Null in text without times. */
  readonly second: number | null;
}

const NARRATION_FORMATS = ["webvtt", "srt", "timed-lines", "plain"] as const;
export type NarrationFormat = (typeof NARRATION_FORMATS)[number];

/** What is wrong with a line of the transcript; the rest is read all the same. */
export interface TranscriptProblem {
  /** From 1. */
  readonly line: number;
  readonly message: string;
}
