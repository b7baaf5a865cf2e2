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
 * pages one takes at least: what can't be the best by that isn't drawn. `draw` is told how many pages
 * are expected; where they are `counted` on paper, what came out with others is drawn again.
 */
export async function fewestPages<S>(
  settings: readonly S[],
  most: number,
  draw: (setting: S, expected: number) => ReactElement<DocumentProps>,
  { least = () => 1, counted = false }: Beforehand<S> = {},
): Promise<Drawn> {
  const tries: Try<S>[] = settings.map((setting) => ({
    ...{ setting, drawn: null, expected: 0 },
    pages: least(setting),
  }));
  for (;;) {
    const found = bestOf(tries, most);
    if (found === undefined) throw new RangeError("Cannot render a document: no setting given");
    const { drawn, setting, pages } = found;
    if (drawn !== null && (!counted || found.expected === pages)) return drawn;
    if (drawn !== null) return await made(draw(setting, pages));
    found.drawn = await made(draw(setting, pages));
    found.expected = pages;
    learn(tries, found, found.drawn.document.getPageCount());
  }
}

/** How many pages one came out with. A bound that was none says nothing about the others either. */
function learn<S>(tries: readonly Try<S>[], of: Try<S>, pages: number): void {
  if (pages < of.pages) for (const each of tries) if (each.drawn === null) each.pages = 1;
  of.pages = pages;
}

interface Beforehand<S> {
  readonly least?: (setting: S) => number;
  readonly counted?: boolean;
}

/** A setting with its pages: so many at least, until it is drawn. */
interface Try<S> {
  readonly setting: S;
  pages: number;
  drawn: Drawn | null;
  /** How many it was drawn for. */
  expected: number;
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
