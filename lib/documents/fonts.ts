import fs from "node:fs";
import { createRequire } from "node:module";
import * as fontkit from "@cantoo/fontkit";
import { Font } from "@react-pdf/renderer";
import { rememberShapes, type Shaping } from "./shaped-words.ts";

const require = createRequire(import.meta.url);

const SOURCE = "@expo-google-fonts/source-sans-3";

const FILES = {
  regular: require.resolve(`${SOURCE}/400Regular/SourceSans3_400Regular.ttf`),
  italic: require.resolve(`${SOURCE}/400Regular_Italic/SourceSans3_400Regular_Italic.ttf`),
  strong: require.resolve(`${SOURCE}/600SemiBold/SourceSans3_600SemiBold.ttf`),
  spare: require.resolve("dejavu-fonts-ttf/ttf/DejaVuSans.ttf"),
  spareStrong: require.resolve("dejavu-fonts-ttf/ttf/DejaVuSans-Bold.ttf"),
};

/** The letters' typeface, and a second one for signs that it lacks. Both are always embedded. */
export const FAMILY = ["Source Sans 3", "DejaVu Sans"] as const;

const SOURCE_FACES = [FILES.regular, FILES.italic, FILES.strong] as const;
const SPARE_FACES = [FILES.spare, FILES.spare, FILES.spareStrong] as const;

const STYLES = [
  { fontWeight: 400, fontStyle: "normal" },
  { fontWeight: 400, fontStyle: "italic" },
  { fontWeight: 600, fontStyle: "normal" },
] as const;

let ready: Promise<void> | null = null;

/** Loads the typefaces into the renderer, once. Words are never hyphenated: names stay whole. */
export function readyFonts(): Promise<void> {
  ready ??= loadFonts();
  return ready;
}

async function loadFonts(): Promise<void> {
  const faces = { [FAMILY[0]]: SOURCE_FACES, [FAMILY[1]]: SPARE_FACES };
  for (const [family, files] of Object.entries(faces)) {
    const fonts = STYLES.map((style, index) => ({ ...style, src: files[index] ?? files[0] }));
    Font.register({ family, fonts });
  }
  Font.registerHyphenationCallback((word) => [word]);
  for (const fontFamily of FAMILY) {
    for (const style of STYLES) await nameGlyphs({ fontFamily, ...style });
  }
}

/**
 * The renderer keeps each glyph as it first met it. A mark that it meets first as a part of another
 * (’ within ”) would lose its code point for good: later documents break words at the wrong place
 * and cannot be searched. So every glyph is met by its own code point before anything is printed.
 */
async function nameGlyphs(descriptor: {
  readonly fontFamily: string;
  readonly fontWeight: 400 | 600;
  readonly fontStyle: "normal" | "italic";
}): Promise<void> {
  await Font.load(descriptor);
  const { data } = Font.getFont(descriptor);
  if (data === null) throw new Error(`Typeface ${descriptor.fontFamily} did not load`);
  const points: readonly number[] = data["characterSet"];
  for (const point of points) {
    if (!isLigature(point)) data["glyphForCodePoint"](point);
  }
  rememberShapes(data as unknown as Shaping);
  nameShort(data as unknown as Named);
}

interface Named {
  readonly postscriptName: string;
  readonly name: { readonly records: object };
}

/**
 * The renderer compares typefaces at each run of words, by all that their tables of names say, written
 * out as JSON. One name says as much.
 */
function nameShort({ postscriptName, name }: Named): void {
  Object.defineProperty(name.records, "toJSON", { value: () => postscriptName });
}

/** A text as the letters' typeface shapes it, kerning included; sizes in units of the typeface. */
export interface Shape {
  /** A glyph 0 stands for a sign that the typeface lacks. */
  readonly glyphs: readonly { readonly id: number; readonly codePoints: readonly number[] }[];
  readonly positions: readonly { readonly xAdvance: number }[];
  readonly unitsPerEm: number;
}

/**
 * How a text is shaped in the letters' typeface, left to right: as the renderer asks for it, so that
 * it is found again when the text is drawn. Only once the typefaces are ready.
 */
export function shapeOf(text: string, strong: boolean): Shape {
  const { data } = Font.getFont({ fontFamily: FAMILY[0], fontWeight: strong ? 600 : 400 });
  if (data === null) throw new Error(`Typeface ${FAMILY[0]} is not ready`);
  const { glyphs, positions } = data["layout"](text, undefined, undefined, undefined, "ltr");
  return { glyphs, positions, unitsPerEm: data["unitsPerEm"] };
}

/** The regular face as the renderer holds it, or the one for signs that it lacks. */
export function regularFace(spare: boolean): unknown {
  return Font.getFont({ fontFamily: FAMILY[spare ? 1 : 0], fontWeight: 400 }).data;
}

/** Joined letters (ﬀ, ﬁ …) stand for the letters that they join, not for a sign of their own. */
function isLigature(codePoint: number): boolean {
  return codePoint >= 0xfb00 && codePoint <= 0xfb4f;
}

/** The bytes of the letters' regular face, for stamps on merged pages. */
export function regularFontBytes(): Uint8Array {
  return fs.readFileSync(FILES.regular);
}

export type Face = "regular" | "italic" | "strong" | "spare" | "spareStrong";

interface FaceMetrics {
  readonly hasGlyph: (codePoint: number) => boolean;
  /** Width of a text in ems, kerning left out. */
  readonly ems: (text: string) => number;
}

const faces = new Map<Face, FaceMetrics>();

/** What a face can print and how wide. */
export function faceMetrics(face: Face): FaceMetrics {
  const known = faces.get(face);
  if (known) return known;
  const font = fontkit.create(fs.readFileSync(FILES[face]));
  if (!("hasGlyphForCodePoint" in font)) throw new Error(`${FILES[face]} is no single font`);
  const metrics: FaceMetrics = {
    hasGlyph: (codePoint) => font.hasGlyphForCodePoint(codePoint),
    ems: (text) =>
      [...text].reduce(
        (sum, sign) =>
          sum + advance(font.glyphForCodePoint(sign.codePointAt(0) ?? 0), font.unitsPerEm),
        0,
      ),
  };
  faces.set(face, metrics);
  return metrics;
}

function advance(glyph: { readonly advanceWidth: number } | null, unitsPerEm: number): number {
  return glyph === null ? 1 : glyph.advanceWidth / unitsPerEm;
}
