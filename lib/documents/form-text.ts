import type { PDFFont } from "@cantoo/pdf-lib";
import type { FormLines } from "#lib/domain/facts/form.ts";

/** Smaller than this nobody at a counter reads; only a field too low for it is set smaller. */
const LEAST_SIZE = 7;
/** The least for a field that is too low for more. */
const LOW_FIELD_SIZE = 6;
/** From this on nobody has to be told that type is small. */
const EASY_SIZE = 8;
const USUAL_SIZE = 10;
const LARGEST_SIZE = 12;
const STEP = 0.5;
/** Words of one line keep so far from the end of their box, in points. */
const AIR = 2;

/** Said where a field's words are elsewhere, as many of them as there is room for. */
const ATTACHED = ["See attached sheet", "See attached", "Attached", "Att."];
const GOES_ON = " … (see attached sheet)";

/** The room of one place of a field, inside of its border. */
export interface Room {
  readonly width: number;
  readonly height: number;
}

export interface Asked {
  /** The words, then shorter ways to say the same. */
  readonly ways: readonly string[];
  readonly lines: FormLines;
  readonly most: number | null;
  /** Type size that the form asks for; 0: as fits. */
  readonly size: number;
  readonly font: PDFFont;
  /** Where the field stands; it has to fit in each place. */
  readonly rooms: readonly Room[];
}

/** How a text is set: the words that go in, their size, and whether that is all of them. */
export interface Setting {
  readonly text: string;
  readonly size: number;
  readonly smaller: boolean;
  /** The words in full go onto the attached sheet. */
  readonly continued: boolean;
}

/**
 * Sets words into a field: at the form's size, else in a shorter way, else in smaller type; a line down
 * to 7 points, a text of several lines only to 8. What still does not fit goes onto an attached sheet in
 * full, where it is read with ease, and the field says so. Nothing is ever cut without a word.
 */
export function settingOf(asked: Asked): Setting {
  const [words = ""] = asked.ways;
  const first = wanted(asked);
  for (const size of [first, ...smallerThan(first, leastOf(asked))]) {
    const way = asked.ways.find((each) => fits(each, size, asked));
    if (way !== undefined)
      return { text: way, size, smaller: size < Math.min(first, EASY_SIZE), continued: false };
  }
  return { ...beginning(words, asked), smaller: false, continued: true };
}

function wanted({ size, font, lines, rooms }: Asked): number {
  if (size > 0) return Math.min(size, LARGEST_SIZE);
  if (lines === "many") return USUAL_SIZE;
  const lowest = Math.min(...rooms.map(({ height }) => height));
  const tallest = font.sizeAtHeight(Math.max(lowest, 1));
  return Math.max(LOW_FIELD_SIZE, Math.min(USUAL_SIZE, Math.floor(tallest * 2) / 2));
}

/** How small the words of a field may get. */
function leastOf({ lines, font, rooms }: Asked): number {
  if (lines === "many") return EASY_SIZE;
  const isLow = rooms.some(
    ({ height }) => font.heightAtSize(LEAST_SIZE, { descender: false }) > height + 2,
  );
  return isLow ? LOW_FIELD_SIZE : LEAST_SIZE;
}

function smallerThan(size: number, least: number): number[] {
  const count = Math.max(0, Math.floor((size - least) / STEP));
  return Array.from({ length: count }, (_, at) => size - (at + 1) * STEP);
}

function fits(text: string, size: number, asked: Asked): boolean {
  if (asked.most !== null && [...text].length > asked.most) return false;
  return asked.rooms.every((room) => fitsIn(text, size, { ...asked, room }));
}

function fitsIn(
  text: string,
  size: number,
  { lines, most, font, room }: Asked & { readonly room: Room },
): boolean {
  if (lines === "many") {
    const set = wrapped(text, { size, font, width: room.width });
    const low = room.height - set.length * lineHeight(font, size);
    return low >= size * 0.2 && set.every((line) => line <= room.width - 1);
  }
  if (/[\r\n]/.test(text)) return false;
  if (font.heightAtSize(size, { descender: false }) > room.height + 2) return false;
  if (lines === "comb") {
    const cell = room.width / (most ?? 1);
    return [...text].every((sign) => font.widthOfTextAtSize(sign, size) <= cell);
  }
  return drawnWidth(text, size, font) <= room.width - AIR;
}

/** The library measures some pairs of signs closer together than it draws them. */
function drawnWidth(text: string, size: number, font: PDFFont): number {
  return [...text].reduce((sum, sign) => sum + font.widthOfTextAtSize(sign, size), 0);
}

/** As far apart as the library that draws them sets its lines. */
function lineHeight(font: PDFFont, size: number): number {
  return font.heightAtSize(size) * 1.2;
}

/** The drawn widths of the lines into which a text falls, each as long as it can be by the library’s measure. */
function wrapped(
  text: string,
  { size, font, width }: { readonly size: number; readonly font: PDFFont; readonly width: number },
): number[] {
  const widthOf = (words: string) => font.widthOfTextAtSize(words, size);
  const space = widthOf(" ");
  const lines = text.split("\n").flatMap((paragraph) => {
    const found: string[][] = [];
    let measured = 0;
    for (const word of paragraph.split(" ")) {
      const long = widthOf(word);
      const next = measured + space + long;
      const last = measured === 0 || next >= width ? undefined : found.at(-1);
      if (last === undefined) found.push([word]);
      else last.push(word);
      measured = last === undefined ? long : next;
    }
    return found;
  });
  return lines.map((words) => drawnWidth(words.join(" "), size, font));
}

/** As many whole words as there is room for, with where the rest is; else only where it is. */
function beginning(words: string, asked: Asked): { text: string; size: number } {
  const size = Math.max(LEAST_SIZE, Math.min(wanted(asked), EASY_SIZE));
  const parts = words.split(/(?<=\s)/);
  if (asked.lines === "many") {
    let low = 0;
    let high = parts.length;
    const upTo = (count: number) => parts.slice(0, count).join("").trimEnd() + GOES_ON;
    while (low < high) {
      const middle = Math.ceil((low + high) / 2);
      if (fits(upTo(middle), size, asked)) low = middle;
      else high = middle - 1;
    }
    if (low > 0) return { text: upTo(low), size };
  }
  for (const at of [size, LOW_FIELD_SIZE]) {
    const said = ATTACHED.find((each) => fits(each, at, asked));
    if (said !== undefined) return { text: said, size: at };
  }
  return { text: "", size };
}
