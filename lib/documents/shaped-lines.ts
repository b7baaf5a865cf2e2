import { type Shape, shapeOf } from "./fonts.ts";

/** Words set into lines: how large, in lines how wide (points), and how strong. */
export interface Setting {
  readonly size: number;
  readonly width: number;
  readonly strong?: boolean;
}

/** A space shrinks by at most a third before a line ends sooner: the renderer's line breaker. */
const LEAST_SPACE = 2 / 3;
/** What a line may be wider than it is said to be; kerning at a word of another face, say. */
const SPARE = 1.004;

/**
 * The fewest lines that a text can take: as many words in each as fit with its spaces at their
 * narrowest. Never more than it is drawn with; 0 for no text.
 */
export function leastLines(text: string, { size, width, strong = false }: Setting): number {
  const shape = shapeOf(text, strong);
  const most = (width * SPARE * shape.unitsPerEm) / size;
  let lines = 0;
  let filled = most + 1;
  for (const { word, space } of wordsOf(shape)) {
    const longer = filled + space * LEAST_SPACE + word;
    if (longer > most) lines += 1;
    filled = longer > most ? word : longer;
  }
  return lines;
}

/** A word with the space before it, in units of the typeface. */
interface Word {
  readonly word: number;
  readonly space: number;
}

const known = new WeakMap<Shape["glyphs"], readonly Word[]>();

function wordsOf({ glyphs, positions }: Shape): readonly Word[] {
  const found = known.get(glyphs);
  if (found !== undefined) return found;
  const words: { word: number; space: number }[] = [];
  let [space, open] = [0, false];
  for (const [at, glyph] of glyphs.entries()) {
    const advance = glyph.id === 0 ? 0 : (positions[at]?.xAdvance ?? 0);
    if (glyph.codePoints[0] === SPACE) {
      space += advance;
      open = false;
      continue;
    }
    const last = words.at(-1);
    if (open && last !== undefined) last.word += advance;
    else words.push({ word: advance, space });
    [space, open] = [0, true];
  }
  known.set(glyphs, words);
  return words;
}

const SPACE = 0x20;
