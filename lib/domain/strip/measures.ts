import { textWidth } from "../say/text-width.ts";

/** `slim` is what stays in view while a page is scrolled: record, pipe and camera, with the holds. */
export type StripSize = "slim" | "small" | "large";

/** Sizes of everything on the screen's strip, in units of the drawing, say pixels. */
export interface Measures {
  /** Size of the type of names, and of what stands under them. */
  readonly label: number;
  readonly detail: number;
  readonly pipe: number;
  /** Room for the titles of the rows, and with the public main beside it. */
  readonly gutter: number;
  readonly left: number;
  /** From the line of the record down to the pipe: the pairings cross it. */
  readonly between: number;
  /** How far a branch leans upstream before it turns into its pole. */
  readonly wye: number;
  /** How far the public main is drawn on each side of the pipe. */
  readonly main: number;
  /** How far the north arrow goes to each side of its middle. */
  readonly north: number;
  readonly row: number;
  /** How many lanes of names each part may have before they are counted together. */
  readonly lanes: { readonly above: number; readonly below: number; readonly points: number };
}

export const MEASURES: Readonly<Record<StripSize, Measures>> = {
  large: {
    label: 15,
    detail: 13,
    pipe: 18,
    gutter: 64,
    left: 108,
    between: 40,
    wye: 15,
    main: 34,
    north: 13,
    row: 24,
    lanes: { above: 2, below: 3, points: 2 },
  },
  small: {
    label: 13,
    detail: 0,
    pipe: 12,
    gutter: 44,
    left: 74,
    between: 20,
    wye: 10,
    main: 20,
    north: 8,
    row: 20,
    lanes: { above: 1, below: 1, points: 1 },
  },
  slim: {
    label: 12,
    detail: 0,
    pipe: 10,
    gutter: 44,
    left: 74,
    between: 14,
    wye: 8,
    main: 14,
    north: 6,
    row: 18,
    lanes: { above: 1, below: 1, points: 1 },
  },
};

/** Between words that stand beside each other. */
export const GAP = 8;

/** How wide words are on the screen, with a little to spare. */
export function wide(text: string, size: number, strong = false): number {
  return Math.ceil(textWidth(text, size, strong) * 1.02);
}
