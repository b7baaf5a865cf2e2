import { Canvas } from "@react-pdf/renderer";
import type { ComponentProps } from "react";
import { faceMetrics, regularFace, shapeOf } from "./fonts.ts";
import { INK } from "./ink.ts";

// Words that are another on each page. The renderer has text for that too, but lays the whole page out
// anew for each of them, several times. These are written when pages are: nothing moves by them.

type Painter = Parameters<ComponentProps<typeof Canvas>["paint"]>[0];

/** Which page of a document is being written, and how many there are: for one drawing of it. */
export interface PageCount {
  readonly total: number;
  page: number;
}

const SIZE = 8.5;
/** The typeface's own height of a line, and how much of it stands above the letters' foot. */
const HEIGHT = SIZE * 1.424;
const ASCENT = SIZE * 1.024;

interface Mark {
  /** Where from the left, from the top or from below, and how wide, in points. */
  readonly place: { readonly left: number; readonly width: number } & (
    | { readonly top: number }
    | { readonly bottom: number }
  );
  readonly align: "left" | "right";
  /** Called once for each page, in order. */
  readonly words: () => string;
}

/** A line on every page that says something else on each. */
export function PageMark({ place, align, words }: Mark) {
  return (
    <Canvas
      fixed
      style={{ position: "absolute", height: HEIGHT, ...place }}
      paint={(painter) => {
        if (!("getWidth" in painter)) write(painter, words(), align === "left" ? 0 : place.width);
        return null;
      }}
    />
  );
}

/** Writes words from 0 on, or up to `end` where that is more; both typefaces on one line. */
function write(painter: Painter, words: string, end: number): void {
  const runs = runsOf(words);
  let at = end === 0 ? 0 : end - runs.reduce((sum, { width }) => sum + width, 0);
  painter.fillColor(INK.soft).fillOpacity(1);
  for (const { text, spare, width } of runs) {
    painter.font(regularFace(spare), SIZE);
    painter.text(text, at, ASCENT, { lineBreak: false, baseline: "alphabetic" });
    at += width;
  }
}

interface Run {
  readonly text: string;
  /** In the spare typeface, for signs that the letters' own lacks. */
  readonly spare: boolean;
  readonly width: number;
}

function runsOf(words: string): Run[] {
  const runs: { text: string; spare: boolean }[] = [];
  for (const sign of words) {
    const spare = !faceMetrics("regular").hasGlyph(sign.codePointAt(0) ?? 0);
    const last = runs.at(-1);
    if (last?.spare === spare) last.text += sign;
    else runs.push({ text: sign, spare });
  }
  return runs.map((run) => ({ ...run, width: widthOf(run) }));
}

function widthOf({ text, spare }: Pick<Run, "text" | "spare">): number {
  if (spare) return faceMetrics("spare").ems(text) * SIZE;
  const { positions, unitsPerEm } = shapeOf(text, false);
  return (positions.reduce((sum, { xAdvance }) => sum + xAdvance, 0) / unitsPerEm) * SIZE;
}
