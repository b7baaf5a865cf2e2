import { type Face, faceMetrics } from "./fonts.ts";

/** A document that cannot be printed as it is, with words that say why and what to do. */
export class DocumentRefused extends Error {
  override readonly name = "DocumentRefused";
}

/** Every style of ours is a face of the letters' family with one of the spare family behind it. */
const PAIRS: readonly (readonly [Face, Face])[] = [
  ["regular", "spare"],
  ["italic", "spare"],
  ["strong", "spareStrong"],
];

/** Invisible signs that mean nothing on paper. */
const INVISIBLE = /\u00ad|[\u200b-\u200f]|[\u202a-\u202e]|\u2060|\ufe0e|\ufe0f|\ufeff/g;

/**
 * Takes every text in a document's data, composes its accents, drops invisible signs, and makes
 * sure that each sign can be printed by the letters' face or by the spare one behind it.
 * Throws DocumentRefused, naming sign and text, where neither can: nothing is ever printed wrong.
 */
export function printable<T>(data: T, what: string): T {
  return walk(data, what) as T;
}

function walk(data: unknown, what: string): unknown {
  if (typeof data === "string") return checked(data, what);
  if (Array.isArray(data)) return data.map((part) => walk(part, what));
  if (data === null || typeof data !== "object") return data;
  return Object.fromEntries(Object.entries(data).map(([key, part]) => [key, walk(part, what)]));
}

function checked(text: string, what: string): string {
  const clean = text
    .normalize("NFC")
    .replace(/[\ufb00-\ufb06]/g, (joined) => joined.normalize("NFKC"))
    .replace(INVISIBLE, "")
    .replace(/[\t\r\n\u2028\u2029]+/g, " ")
    .replace(/[\u2000-\u200a\u3000]/g, " ")
    // A time of day is not torn at a line's end.
    .replace(/(?<=\d) ([ap])\. m\./g, "\u00a0$1.\u00a0m.")
    .replace(/(?<=\d) (AM|PM)\b/g, "\u00a0$1")
    // Nor what is numbered from its number.
    .replace(/\b(Room|Suite|Hall|Sala|Salón|No\.|[Nn]úm\.) (?=\d)/g, "$1\u00a0");
  for (const sign of clean) {
    const point = sign.codePointAt(0) ?? 0;
    if (!canPrint(point)) throw new DocumentRefused(refusal(sign, point, { text: clean, what }));
  }
  return clean;
}

/** Whether a sign can be printed in every style that we use. */
export function canPrint(codePoint: number): boolean {
  if (codePoint < 0x20) return false;
  return PAIRS.every(([face, spare]) =>
    [face, spare].some((each) => faceMetrics(each).hasGlyph(codePoint)),
  );
}

function refusal(sign: string, point: number, at: { text: string; what: string }): string {
  const code = `U+${point.toString(16).toUpperCase().padStart(4, "0")}`;
  const around = at.text.length > 60 ? `${at.text.slice(0, 60)}…` : at.text;
  return `${at.what} cannot be printed: no typeface here has the sign “${sign}” (${code}) in “${around}”. Write it in other letters and try again.`;
}
