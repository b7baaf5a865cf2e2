import type { FileDrawing, StripTopic } from "#lib/domain/strip/drawing.ts";
import type { StripChosen } from "#lib/domain/strip/gist.ts";

/** The strip as it comes with a page. */
export interface StripSent {
  readonly lineId: string;
  /** Names what it was drawn from: another name, another drawing. */
  readonly version: string;
  /** By what they tell; of a long line the page's own alone. */
  readonly drawings: Partial<Record<StripTopic, FileDrawing>>;
  /** False: marks have no sentences, and what is close is drawn as one, until the rest is asked for. */
  readonly whole: boolean;
}

/** What the strip's route answers about the whole drawing, or about one thing on it. */
export interface StripAnswer {
  readonly drawing: FileDrawing | null;
  readonly chosen: StripChosen | null;
}
