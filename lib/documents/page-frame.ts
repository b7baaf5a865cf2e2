import {
  clip,
  concatTransformationMatrix,
  degrees,
  endPath,
  type PDFFont,
  PDFName,
  type PDFPage,
  popGraphicsState,
  pushGraphicsState,
  rectangle,
  rgb,
} from "@cantoo/pdf-lib";
import { type Size, toPage, turned, turnOf } from "./shown-page.ts";

const SHORT = 612;
const LONG = 792;
/** White that a framed page keeps around it; more below, for the stamp. */
const SIDE = 14;
const BELOW = 44;

/** How large a framed page came out, of its own size. */
export interface Framed {
  readonly percent: number;
}

/**
 * Puts a foreign page, whatever its size, rotation and crop, upright on a Letter page with room for
 * a stamp below: scaled down where it must be, never up, cut to what it showed before.
 */
export function frameOnLetter(page: PDFPage): Framed {
  const turn = turnOf(page);
  const crop = page.getCropBox();
  const visible = turned({ width: crop.width, height: crop.height }, turn);
  const sheet: Size =
    visible.width > visible.height
      ? { width: LONG, height: SHORT }
      : { width: SHORT, height: LONG };
  const room = { width: sheet.width - 2 * SIDE, height: sheet.height - SIDE - BELOW };
  const scale = Math.min(room.width / visible.width, room.height / visible.height, 1);
  const offset = {
    x: (sheet.width - visible.width * scale) / 2,
    y: BELOW + (room.height - visible.height * scale) / 2,
  };
  wrapContent(page, crop, scale);
  page.scaleAnnotations(scale, scale);
  const media = turned(sheet, turn);
  const one = toPage(offset.x, offset.y, media, turn);
  const other = toPage(
    offset.x + visible.width * scale,
    offset.y + visible.height * scale,
    media,
    turn,
  );
  for (const box of ["CropBox", "BleedBox", "TrimBox", "ArtBox"]) {
    page.node.delete(PDFName.of(box));
  }
  page.setMediaBox(
    crop.x * scale - Math.min(one.x, other.x),
    crop.y * scale - Math.min(one.y, other.y),
    media.width,
    media.height,
  );
  return { percent: Math.round(scale * 100) };
}

function wrapContent(
  page: PDFPage,
  crop: { x: number; y: number; width: number; height: number },
  scale: number,
): void {
  page.node.normalize();
  const { context } = page.doc;
  const start = context.contentStream([
    pushGraphicsState(),
    concatTransformationMatrix(scale, 0, 0, scale, 0, 0),
    rectangle(crop.x, crop.y, crop.width, crop.height),
    clip(),
    endPath(),
  ]);
  const end = context.contentStream([popGraphicsState()]);
  page.node.wrapContentStreams(context.register(start), context.register(end));
}

/** Words at the foot of a page, upright as it is shown: the left ones and the right ones. */
export function stampPage(
  page: PDFPage,
  font: PDFFont,
  {
    left,
    right,
    margin: asked = null,
  }: {
    readonly left: string;
    readonly right: string;
    /** From the sides of the page; null: as its own kind has it. */
    readonly margin?: number | null;
  },
): void {
  const turn = turnOf(page);
  const media = page.getMediaBox();
  const shown = turned({ width: media.width, height: media.height }, turn);
  const size = 8.5;
  const margin = asked ?? (shown.width > shown.height ? 44 : 54);
  const put = (text: string, x: number) => {
    const at = toPage(x, 24, media, turn);
    page.drawText(text, {
      x: media.x + at.x,
      y: media.y + at.y,
      size,
      font,
      color: rgb(0.33, 0.38, 0.42),
      rotate: degrees(turn),
    });
  };
  if (left !== "") put(left, margin);
  put(right, shown.width - margin - font.widthOfTextAtSize(right, size));
}
