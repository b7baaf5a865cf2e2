import { PDFDocument, type PDFFont, type PDFPage, rgb } from "@cantoo/pdf-lib";
import { encode } from "uqr";
import { LINK_WORDS } from "#lib/domain/consent/words.ts";
import type { Language } from "#lib/domain/say/language.ts";

/** What leads a letter's reader to their private page. */
export interface PrintedCode {
  /** The whole address, in the QR code. */
  readonly url: string;
  /** The page where the short code is typed: `office.example.com/n`. */
  readonly door: string;
  /** As it prints: `K7QM-2XPD-9RTB`. */
  readonly code: string;
  /** Until when it opens, as each language prints it. */
  readonly until: Readonly<Record<Language, string>>;
}

const INK = rgb(0, 0, 0);
const SOFT = rgb(0.33, 0.38, 0.42);
/** Right margin and the panel's top, in points from the sheet's top; the envelope's window is below it. */
const RIGHT = 540;
const TOP = 72;
const SIDE = 68;
/** White around the modules, as readers ask for. */
const QUIET = 4;
/** Nothing of ours stands left of here in the letterhead's lower half. */
const LEFT = 282;

/**
 * Puts QR and short code onto the first page of a letter, in the free part of its letterhead, in the
 * languages of the letter. Nothing of the letter moves: without it the pages are the stored ones.
 */
export function stampCode(
  page: PDFPage,
  { url, door, code, until }: PrintedCode,
  { font, languages }: { readonly font: PDFFont; readonly languages: readonly Language[] },
): void {
  drawQr(page, url);
  const right = RIGHT - SIDE - 6;
  const lines = languages.flatMap((language) => {
    const words = LINK_WORDS[language].printed;
    return [
      { text: words.scan, size: 8.5, ink: INK },
      { text: words.type(door), size: 8, ink: SOFT },
    ];
  });
  const [only, other] = languages.map((language) => LINK_WORDS[language].printed);
  const days = languages.map((language) => LINK_WORDS[language].printed.until(until[language]));
  // Two dates on one line would have to be set smaller than anyone reads.
  const small = other === undefined ? [...days, only?.own ?? ""] : days;
  const all = [
    ...lines,
    { text: code, size: 13, ink: INK },
    ...small.map((text) => ({ text, size: 7.5, ink: SOFT })),
  ];
  let top = TOP + 1;
  for (const { text, size, ink } of all) {
    const room = right - LEFT;
    const set = Math.min(size, (size * room) / font.widthOfTextAtSize(text, size));
    top += size * 1.28;
    const x = right - font.widthOfTextAtSize(text, set);
    page.drawText(text, { x, y: page.getHeight() - top, size: set, font, color: ink });
  }
}

function drawQr(page: PDFPage, url: string): void {
  const { data, size } = encode(url, { ecc: "M", border: QUIET });
  const module = SIDE / size;
  const left = RIGHT - SIDE + QUIET * module;
  const top = page.getHeight() - TOP + QUIET * module;
  // One path of all dark modules: hundreds of single squares show hairlines between them in print.
  const path = data.flatMap((row, y) => runsOf(row).map(([x, width]) => square(x, y, width)));
  page.drawSvgPath(path.join(""), { x: left, y: top, scale: module, color: INK, borderWidth: 0 });
}

function square(x: number, y: number, width: number): string {
  return `M${x} ${y}h${width}v1h${-width}z`;
}

/** Where dark modules lie beside each other in a row: from which, and how many. */
function runsOf(row: readonly boolean[]): [number, number][] {
  const runs: [number, number][] = [];
  for (const [x, dark] of row.entries()) {
    if (!dark) continue;
    const last = runs.at(-1);
    if (last !== undefined && last[0] + last[1] === x) last[1] += 1;
    else runs.push([x, 1]);
  }
  return runs;
}

/** A stored paper, to be stamped. */
export async function openPaper(bytes: Uint8Array): Promise<PDFDocument> {
  return await PDFDocument.load(bytes, { updateMetadata: false });
}
