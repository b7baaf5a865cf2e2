import fs from "node:fs";
import { createRequire } from "node:module";
import * as fontkit from "@cantoo/fontkit";
import { Font } from "@react-pdf/renderer";

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
export const FAMILY = ["Source Sans 3", "DejaVu Sans"];

let registered = false;

/** Makes the typefaces known to the renderer, once. Words are never hyphenated: names stay whole. */
export function registerFonts(): void {
  if (registered) return;
  Font.register({
    family: "Source Sans 3",
    fonts: [
      { src: FILES.regular, fontWeight: 400 },
      { src: FILES.italic, fontWeight: 400, fontStyle: "italic" },
      { src: FILES.strong, fontWeight: 600 },
    ],
  });
  Font.register({
    family: "DejaVu Sans",
    fonts: [
      { src: FILES.spare, fontWeight: 400 },
      { src: FILES.spare, fontWeight: 400, fontStyle: "italic" },
      { src: FILES.spareStrong, fontWeight: 600 },
    ],
  });
  Font.registerHyphenationCallback((word) => [word]);
  registered = true;
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
