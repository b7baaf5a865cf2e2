/** Ink of a shape. `loud` is never the only sign: its mark is another shape and has a word. */
export type Tone = "ink" | "soft" | "faint" | "loud" | "paper";

export type Point = readonly [x: number, y: number];

/** One shape of a drawing on paper: points of 1/72 in, from the top left. */
export type Shape =
  | {
      readonly kind: "line";
      readonly points: readonly Point[];
      readonly width: number;
      readonly tone: Tone;
      readonly dash: boolean;
    }
  | {
      readonly kind: "area";
      readonly points: readonly Point[];
      readonly fill: Tone;
      readonly tone: Tone;
      readonly width: number;
    }
  | {
      readonly kind: "words";
      readonly at: Point;
      readonly text: string;
      readonly size: number;
      readonly strong: boolean;
      readonly tone: Tone;
      readonly anchor: "start" | "middle" | "end";
      /** Reads upwards, turned about its point. */
      readonly upright: boolean;
    };

/** A strip laid out on paper. */
export interface StripPlan {
  readonly width: number;
  readonly height: number;
  /** Where the drawing ends; only notes stand below. */
  readonly foot: number;
  readonly shapes: readonly Shape[];
}
