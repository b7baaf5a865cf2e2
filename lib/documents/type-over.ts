import {
  degrees,
  layoutMultilineText,
  type PDFDocument,
  type PDFFont,
  type PDFPage,
  rgb,
  TextAlignment,
} from "@cantoo/pdf-lib";
import type { FormPlace } from "#lib/domain/facts/form.ts";
import type { FormSet, FormValue } from "#lib/domain/form/form-fill.ts";
import { clean, type Faces } from "./form-faces.ts";
import { settingOf } from "./form-text.ts";
import { pagePoint, turnOf } from "./shown-page.ts";

const INK = rgb(0.05, 0.1, 0.35);
/** White between a box's edge and its words. */
const INSIDE = 1.5;

/** Types what goes into a box that the office placed over the page of a form. */
export async function typeOver(
  document: PDFDocument,
  value: FormValue,
  faces: Faces,
): Promise<FormSet[]> {
  const { field } = value;
  const places = field.places.flatMap((place) => {
    const page = document.getPages()[place.page - 1];
    return page === undefined ? [] : [{ place, page }];
  });
  if (value.kind !== "text") {
    if (value.kind === "check" && value.on) for (const each of places) cross(each.page, each.place);
    return [];
  }
  const ways = value.ways.map(clean);
  const font = await faces.faceFor(ways.join(""));
  const setting = settingOf({
    ways,
    lines: field.lines,
    most: field.most,
    size: 0,
    font,
    rooms: field.places.map(({ width, height }) => ({
      width: Math.max(0, width - 2 * INSIDE),
      height: Math.max(0, height - 2 * INSIDE),
    })),
  });
  for (const { page, place } of places)
    write(page, place, { ...setting, font, lines: field.lines });
  const [words = ""] = ways;
  if (setting.continued) return [{ field: field.name, how: "continued", words }];
  return setting.smaller ? [{ field: field.name, how: "smaller", words }] : [];
}

interface Written {
  readonly text: string;
  readonly size: number;
  readonly font: PDFFont;
  readonly lines: string;
}

function write(page: PDFPage, place: FormPlace, { text, size, font, lines }: Written): void {
  if (text === "") return;
  const put = (words: string, left: number, baseline: number) => {
    const at = pagePoint(page, left, baseline);
    page.drawText(words, { ...at, size, font, color: INK, rotate: degrees(turnOf(page)) });
  };
  const left = place.left + INSIDE;
  if (lines !== "many") {
    const height = font.heightAtSize(size, { descender: false });
    put(text, left, place.top + place.height / 2 + height / 2);
    return;
  }
  const set = layoutMultilineText(text, {
    alignment: TextAlignment.Left,
    fontSize: size,
    font,
    bounds: { x: 0, y: 0, width: place.width - 2 * INSIDE, height: place.height - 2 * INSIDE },
  });
  for (const line of set.lines)
    put(line.text, left + line.x, place.top + place.height - INSIDE - line.y);
}

/** A cross from corner to corner of the largest square in the middle of the box. */
function cross(page: PDFPage, { left, top, width, height }: FormPlace): void {
  const half = (Math.min(width, height) - 2) / 2;
  if (half <= 0) return;
  const middle = { left: left + width / 2, top: top + height / 2 };
  for (const way of [1, -1]) {
    page.drawLine({
      start: pagePoint(page, middle.left - half, middle.top - half * way),
      end: pagePoint(page, middle.left + half, middle.top + half * way),
      thickness: 1.2,
      color: INK,
    });
  }
}
