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
 * where the others take more than `most`. `settings` begin with the roomiest; `least` is how many
 * pages one takes at least: what can't be the best by that isn't drawn.
 */
export async function fewestPages<S>(
  settings: readonly S[],
  most: number,
  draw: (setting: S) => ReactElement<DocumentProps>,
  least: (setting: S) => number = () => 1,
): Promise<Drawn> {
  const tries: Try<S>[] = settings.map((setting) => ({
    ...{ setting, drawn: null },
    pages: least(setting),
  }));
  for (;;) {
    const found = bestOf(tries, most);
    if (found === undefined) throw new RangeError("Cannot render a document: no setting given");
    if (found.drawn !== null) return found.drawn;
    found.drawn = await made(draw(found.setting));
    const pages = found.drawn.document.getPageCount();
    // A bound that was none says nothing about the others either.
    if (pages < found.pages) for (const each of tries) if (each.drawn === null) each.pages = 1;
    found.pages = pages;
  }
}

/** A setting with its pages: so many at least, until it is drawn. */
interface Try<S> {
  readonly setting: S;
  pages: number;
  drawn: Drawn | null;
}

/** The one that is the best, or may be as far as is known; drawn, it is the best. */
function bestOf<S>(tries: readonly Try<S>[], most: number): Try<S> | undefined {
  const fewest = (each: readonly Try<S>[]) => Math.min(...each.map(({ pages }) => pages));
  const roomier = tries.slice(0, -1);
  const open = fewest(roomier) > most ? tries : roomier;
  const pages = fewest(open);
  return open.find((each) => each.pages === pages);
}

async function made(element: ReactElement<DocumentProps>): Promise<Drawn> {
  const bytes = await renderToBuffer(element);
  return { bytes, document: await PDFDocument.load(bytes, { updateMetadata: false }) };
}
