import { PDFDocument } from "@cantoo/pdf-lib";
import { type DocumentProps, renderToBuffer } from "@react-pdf/renderer";
import type { ReactElement } from "react";

/** A document as it was drawn, and read back. */
export interface Drawn {
  readonly bytes: Uint8Array;
  readonly document: PDFDocument;
}

/**
 * A document in the roomiest of its settings that gives the fewest pages; the closest of them only
 * where the others take more than `most`. `settings` are tried in their order, the roomiest first.
 */
export async function fewestPages<S>(
  settings: readonly S[],
  most: number,
  draw: (setting: S) => ReactElement<DocumentProps>,
): Promise<Drawn> {
  const last = settings.length - 1;
  let best: Drawn | null = null;
  for (const [index, setting] of settings.entries()) {
    const pages = best?.document.getPageCount() ?? Number.POSITIVE_INFINITY;
    if (pages === 1 || (index === last && pages <= most)) break;
    const drawn = await made(draw(setting));
    if (drawn.document.getPageCount() < pages) best = drawn;
  }
  if (best === null) throw new RangeError("Cannot render a document: no setting given");
  return best;
}

async function made(element: ReactElement<DocumentProps>): Promise<Drawn> {
  const bytes = await renderToBuffer(element);
  return { bytes, document: await PDFDocument.load(bytes, { updateMetadata: false }) };
}
