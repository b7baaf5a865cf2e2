import type { PDFPage } from "@cantoo/pdf-lib";

// A page may be turned and cut when it is shown. What people point at is the page as shown, with its
// origin at the upper left; what a PDF draws on is the page before it is turned, with its origin below.

export interface Size {
  readonly width: number;
  readonly height: number;
}

export type Turn = 0 | 90 | 180 | 270;

/** How far a page is turned clockwise when it is shown. */
export function turnOf(page: PDFPage): Turn {
  const angle = ((page.getRotation().angle % 360) + 360) % 360;
  if (angle === 90 || angle === 180 || angle === 270) return angle;
  return 0;
}

/** A size once it is turned. */
export function turned({ width, height }: Size, turn: Turn): Size {
  return turn === 90 || turn === 270 ? { width: height, height: width } : { width, height };
}

/**
 * A point as shown (from the lower left) → the same point on the page before it is turned, which is as
 * large as `media`.
 */
export function toPage(x: number, y: number, media: Size, turn: Turn): { x: number; y: number } {
  if (turn === 90) return { x: media.width - y, y: x };
  if (turn === 180) return { x: media.width - x, y: media.height - y };
  if (turn === 270) return { x: y, y: media.height - x };
  return { x, y };
}

/** The page's size as shown. */
export function shownSize(page: PDFPage): Size {
  const { width, height } = page.getCropBox();
  return turned({ width, height }, turnOf(page));
}

export interface Rectangle extends Size {
  readonly x: number;
  readonly y: number;
}

/** A rectangle on the page → the same as shown, from the upper left. */
export function shownPlace(
  page: PDFPage,
  { x, y, width, height }: Rectangle,
): { left: number; top: number; width: number; height: number } {
  const crop = page.getCropBox();
  const turn = turnOf(page);
  const low = { x: x - crop.x, y: y - crop.y };
  const size = turned({ width, height }, turn);
  if (turn === 90) return { left: low.y, top: low.x, ...size };
  if (turn === 180) return { left: crop.width - low.x - width, top: low.y, ...size };
  if (turn === 270)
    return { left: crop.height - low.y - height, top: crop.width - low.x - width, ...size };
  return { left: low.x, top: crop.height - low.y - height, ...size };
}

/** A point as shown, from the upper left → where that is on the page. */
export function pagePoint(page: PDFPage, left: number, top: number): { x: number; y: number } {
  const crop = page.getCropBox();
  const { height } = shownSize(page);
  const at = toPage(left, height - top, crop, turnOf(page));
  return { x: crop.x + at.x, y: crop.y + at.y };
}
