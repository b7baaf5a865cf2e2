import * as fontkit from "@cantoo/fontkit";
import { PDFDocument, type PDFPage } from "@cantoo/pdf-lib";
import { renderToBuffer } from "@react-pdf/renderer";
import type { Packet, Sheet } from "#lib/domain/packet/packet.ts";
import { CoverDocument, type IndexEntry } from "./cover-document.tsx";
import { readyFonts, regularFontBytes } from "./fonts.ts";
import { joinParts } from "./join-pdf.ts";
import { frameOnLetter, stampPage } from "./page-frame.ts";
import { readyPictures } from "./pictures.ts";
import { printable } from "./printable.ts";
import { SheetDocument } from "./sheet-document.tsx";
import { openUploads, type Uploads } from "./uploads-apart.ts";

interface ReadySheet {
  readonly title: string;
  readonly document: PDFDocument;
  /** Pages from a stored file, to be set on Letter pages. */
  readonly foreign: boolean;
  /** Why a stored file is not in the packet; null where all is well. */
  readonly refused: string | null;
}

/**
 * The packet as one PDF in Letter size: cover with what is missing and the index, every sheet,
 * stored files merged in; every page numbered within the whole, an outline, fixed dates, so that the
 * same packet gives the same bytes. `uploads` are the stored files' bytes by id; one that cannot be
 * merged is named among what is missing and has a page that says why. For the worker process only.
 * Throws DocumentRefused where a word cannot be printed.
 */
export async function renderPacket(
  packet: Packet,
  uploads: ReadonlyMap<string, Uint8Array>,
): Promise<Uint8Array> {
  await readyFonts();
  const clean = printable(packet, "The packet");
  const sheets = await readySheets(clean, uploads);
  const cover = await renderCover(clean, sheets);
  const joined = await joinParts(
    [
      { title: "Cover, what is missing, index", document: cover },
      ...sheets.map(({ title, document }, index) => ({
        title: `${index + 1}  ${title}`,
        document,
      })),
    ],
    {
      title: `${clean.title}: ${clean.lineName}`,
      author: clean.preparedBy[0] ?? "",
      subject: clean.authorityName,
      language: "en",
      day: clean.day,
    },
  );
  await finishPages(joined, { cover: cover.getPageCount(), sheets, footer: clean.footer });
  return joined.save();
}

async function readySheets(
  packet: Packet,
  uploads: ReadonlyMap<string, Uint8Array>,
): Promise<ReadySheet[]> {
  const apart = openUploads();
  try {
    const sheets: ReadySheet[] = [];
    for (const [index, sheet] of packet.sheets.entries())
      sheets.push(await readySheet(sheet, { packet, number: index + 1, uploads, apart }));
    return sheets;
  } finally {
    apart.close();
  }
}

async function readySheet(
  sheet: Sheet,
  at: {
    readonly packet: Packet;
    readonly number: number;
    readonly uploads: ReadonlyMap<string, Uint8Array>;
    readonly apart: Uploads;
  },
): Promise<ReadySheet> {
  if (sheet.uploadId === null) {
    const document = await renderSheet(sheet, at);
    return { title: sheet.title, document, foreign: false, refused: null };
  }
  const bytes = at.uploads.get(sheet.uploadId);
  const pages = bytes
    ? await at.apart.pages(bytes)
    : { ok: false as const, error: "its bytes are not in the store. Add the file again." };
  if (pages.ok) {
    return { title: sheet.title, document: pages.value, foreign: true, refused: null };
  }
  const refused = `“${sheet.title}” could not be merged: ${pages.error}`;
  const stand: Sheet = { ...sheet, blocks: [{ kind: "paragraph", text: refused }] };
  const document = await renderSheet(stand, at);
  return { title: sheet.title, document, foreign: false, refused };
}

async function renderSheet(
  sheet: Sheet,
  {
    packet,
    number,
    uploads,
  }: {
    readonly packet: Packet;
    readonly number: number;
    readonly uploads: ReadonlyMap<string, Uint8Array>;
  },
): Promise<PDFDocument> {
  const pictures = await readyPictures(sheet.blocks, uploads);
  const context = { number, lineName: packet.lineName, day: packet.day, pictures };
  const bytes = await renderToBuffer(<SheetDocument sheet={sheet} context={context} />);
  return await PDFDocument.load(bytes, { updateMetadata: false });
}

/** The index needs page numbers, which depend on how long the cover itself is: until it agrees. */
async function renderCover(packet: Packet, sheets: readonly ReadySheet[]): Promise<PDFDocument> {
  const refused = sheets.flatMap((sheet) => (sheet.refused === null ? [] : [sheet.refused]));
  let pages = 1;
  for (;;) {
    const index = indexOf(sheets, pages);
    const bytes = await renderToBuffer(
      <CoverDocument packet={packet} index={index} refused={refused} />,
    );
    const document = await PDFDocument.load(bytes, { updateMetadata: false });
    if (document.getPageCount() <= pages) return document;
    pages = document.getPageCount();
  }
}

function indexOf(sheets: readonly ReadySheet[], coverPages: number): IndexEntry[] {
  let page = coverPages + 1;
  return sheets.map(({ title, document }, index) => {
    const pages = document.getPageCount();
    const entry = { number: index + 1, title, page, pages };
    page += pages;
    return entry;
  });
}

async function finishPages(
  joined: PDFDocument,
  {
    cover,
    sheets,
    footer,
  }: { readonly cover: number; readonly sheets: readonly ReadySheet[]; readonly footer: string },
): Promise<void> {
  joined.registerFontkit(fontkit);
  const font = await joined.embedFont(regularFontBytes(), { subset: true });
  const pages = joined.getPages();
  const owners = [
    ...Array.from({ length: cover }, () => null),
    ...sheets.flatMap((sheet, index) =>
      Array.from({ length: sheet.document.getPageCount() }, () => ({ sheet, number: index + 1 })),
    ),
  ];
  for (const [index, page] of pages.entries()) {
    const owner = owners[index] ?? null;
    const left = owner?.sheet.foreign ? framedWords(page) : footer;
    const name = owner === null ? "Cover" : `Sheet ${owner.number}`;
    stampPage(page, font, { left, right: `${name} · page ${index + 1} of ${pages.length}` });
  }
}

function framedWords(page: PDFPage): string {
  const { percent } = frameOnLetter(page);
  return percent === 100 ? "Enclosed file" : `Enclosed file, shown at ${percent} % of its size`;
}
