/** A run of text as its typeface shaped it: which glyphs, how far apart; in units of the typeface. */
interface Shaped {
  readonly glyphs: readonly unknown[];
  readonly positions: readonly unknown[];
}

type Layout = (
  text: string,
  features?: unknown,
  script?: unknown,
  language?: unknown,
  direction?: unknown,
) => Shaped;

/** A typeface that shapes text. */
export interface Shaping {
  layout: Layout;
}

/** Characters whose shapes are kept, of each typeface: some ten letters of different words, 6 MB. */
const MOST_KEPT = 60_000;

/**
 * Lets a typeface shape the same text once. A letter is laid out in several settings, each page of it
 * several times, and most of its sentences stand in the letters to its neighbors too, while shapes
 * depend on neither size nor width. What is kept can’t be changed by who reads it. Only what the
 * layout asks for is kept: left to right and with the usual features; past `most` characters it
 * begins anew.
 */
export function rememberShapes(face: Shaping, most = MOST_KEPT): void {
  const shape = face.layout.bind(face);
  const kept = new Map<string, Shaped>();
  let size = 0;
  face.layout = (text, features, script, language, direction) => {
    const plain = isNone(features) && isNone(script) && isNone(language) && direction === "ltr";
    if (typeof text !== "string" || !plain)
      return shape(text, features, script, language, direction);
    const known = kept.get(text);
    if (known !== undefined) return known;
    const shaped = unchangeable(shape(text, features, script, language, direction));
    if (size + text.length > most) {
      kept.clear();
      size = 0;
    }
    size += text.length;
    kept.set(text, shaped);
    return shaped;
  };
}

function isNone(asked: unknown): boolean {
  return asked === undefined || (Array.isArray(asked) && asked.length === 0);
}

function unchangeable(shaped: Shaped): Shaped {
  for (const position of shaped.positions) Object.freeze(position);
  Object.freeze(shaped.positions);
  Object.freeze(shaped.glyphs);
  return shaped;
}
