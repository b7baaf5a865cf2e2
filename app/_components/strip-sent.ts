import type { FileDrawing, StripTopic } from "#lib/domain/strip/drawing.ts";
import type { StripChosen } from "#lib/domain/strip/gist.ts";

/** The strip as it comes with a page. */
export interface StripSent {
  readonly lineId: string;
  /** Names what it was drawn from: another name, another drawing. */
  readonly version: string;
  /**
   * By what they tell; of a long line the page's own alone. As text: a page carries one string where it
   * would carry thousands of values one by one, and only what is looked at is read (`drawingIn`).
   */
  readonly drawings: Partial<Record<StripTopic, string>>;
  /** False: marks have no sentences, and what is close is drawn as one, until the rest is asked for. */
  readonly whole: boolean;
}

/** What the strip's route answers about the whole drawing, or about one thing on it. */
export interface StripAnswer {
  readonly drawing: FileDrawing | null;
  readonly chosen: StripChosen | null;
}

/** Drawings that were read: a page draws the same one again and again, and so does the next reader. */
const read = new Map<string, FileDrawing>();
const MOST_READ = 24;

/** The drawing that a text holds; of the same text the same drawing, while it is used. */
export function drawingIn(text: string): FileDrawing {
  // Written by `stripSent`, and by nothing else.
  const drawing = read.get(text) ?? (JSON.parse(text) as FileDrawing);
  read.delete(text);
  read.set(text, drawing);
  for (const [oldest] of read) {
    if (read.size <= MOST_READ) break;
    read.delete(oldest);
  }
  return drawing;
}
