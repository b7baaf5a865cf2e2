import * as fontkit from "@cantoo/fontkit";
import { PDFDocument, rgb } from "@cantoo/pdf-lib";
import type { LabelSheet } from "#lib/domain/mailing/label-sheets.ts";
import type { Day } from "#lib/domain/time/day.ts";
import { faceMetrics, regularFontBytes } from "./fonts.ts";
import { noonOf } from "./noon.ts";
import { DocumentRefused, printable } from "./printable.ts";

const POINTS = 72;
/** White kept inside a label's edge: printers pull a sheet in up to a sixteenth of an inch off. */
const INSIDE = 9;
const LARGEST = 11;
const SMALLEST = 7.5;
const LEADING = 1.2;

/**
 * Addresses on label sheets, in order, left to right and down; print at 100 %, without scaling. Throws
 * DocumentRefused with the name where an address does not go onto a label.
 */
export async function renderLabels(
  addresses: readonly (readonly string[])[],
  sheet: LabelSheet,
  about: { readonly title: string; readonly day: Day },
): Promise<Uint8Array> {
  const document = await PDFDocument.create({ updateMetadata: false });
  document.registerFontkit(fontkit);
  document.setTitle(about.title);
  document.setCreationDate(noonOf(about.day));
  document.setModificationDate(noonOf(about.day));
  const font = await document.embedFont(regularFontBytes(), { subset: true });
  const each = sheet.columns * sheet.rows;
  for (const [at, lines] of addresses.entries()) {
    const place = at % each;
    const page =
      place === 0 ? document.addPage([612, 792]) : document.getPage(-1 + document.getPageCount());
    const set = setLabel(printable([...lines], `The label of ${lines[0] ?? ""}`), sheet);
    const left = (sheet.left + (place % sheet.columns) * sheet.across) * POINTS + INSIDE;
    const top = (sheet.top + Math.floor(place / sheet.columns) * sheet.down) * POINTS;
    const block = (set.lines.length - 1) * set.size * LEADING + set.size;
    const first = top + (sheet.height * POINTS - block) / 2 + set.size * 0.8;
    for (const [line, text] of set.lines.entries())
      page.drawText(text, {
        x: left,
        y: 792 - (first + line * set.size * LEADING),
        size: set.size,
        font,
        color: rgb(0, 0, 0),
      });
  }
  return document.save();
}

/** The largest type that keeps an address inside its label. */
function setLabel(lines: readonly string[], sheet: LabelSheet) {
  const width = sheet.width * POINTS - 2 * INSIDE;
  const height = sheet.height * POINTS - INSIDE;
  const { ems } = faceMetrics("regular");
  const widest = Math.max(1, ...lines.map(ems));
  const size = Math.min(LARGEST, width / widest, height / (lines.length * LEADING));
  if (size < SMALLEST)
    throw new DocumentRefused(
      `The address of ${lines[0] ?? ""} does not fit on a label of this size. Choose a larger label, or shorten the name in the list of parties.`,
    );
  return { lines, size: Math.floor(size * 4) / 4 };
}
