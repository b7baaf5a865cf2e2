import * as fontkit from "@cantoo/fontkit";
import { PDFDocument, type PDFPage } from "@cantoo/pdf-lib";
import { renderToBuffer } from "@react-pdf/renderer";
import type { FormFill } from "#lib/domain/form/form-fill.ts";
import type { Packet, Sheet } from "#lib/domain/packet/packet.ts";
import { err } from "#lib/result.ts";
import { CoverDocument, type IndexEntry } from "./cover-document.tsx";
import { readyFonts, regularFontBytes } from "./fonts.ts";
import { formPages } from "./form-pages.tsx";
import { joinParts } from "./join-pdf.ts";
import { frameOnLetter, stampPage } from "./page-frame.ts";
import { readyPictures } from "./pictures.ts";
import { leaveOnlyWhatShows } from "./plain-pages.ts";
import { printable } from "./printable.ts";
import {
  FLOW_MARGIN,
  FlowDocument,
  isFlowing,
  type NumberedSheet,
  SheetDocument,
  type SheetSpan,
} from "./sheet-document.tsx";
import { openUploads, type Uploads } from "./uploads-apart.ts";

interface ReadySheet extends SheetSpan {
  readonly number: number;
  readonly title: string;
  /** Why a stored file is not in the packet; null where all is well. */
  readonly refused: string | null;
}

/** Pages that were made together, and the sheets on them. */
interface ReadyPart {
  readonly document: PDFDocument;
  /** Pages from a stored file, to be set on Letter pages. */
  readonly foreign: boolean;
  /** How far the foot stands from the sides; null: as on any page. */
  readonly margin: number | null;
  readonly sheets: readonly ReadySheet[];
}

/**
 * The packet as one PDF in Letter size: cover with what is missing and the index, every sheet, those
 * of words and tables on shared pages, stored files merged in; every page numbered within the whole, an outline, fixed dates, so that the
 * same packet gives the same bytes. `uploads` are the stored files' bytes by id, `forms` those of the
 * authority's forms by hash; one that cannot be
 * merged is named among what is missing and has a page that says why. For the worker process only.
 * Throws DocumentRefused where a word cannot be printed.
 */
export async function renderPacket(
  packet: Packet,
  uploads: ReadonlyMap<string, Uint8Array>,
  forms: ReadonlyMap<string, Uint8Array> = new Map(),
): Promise<Uint8Array> {
  await readyFonts();
  const clean = cleaned(packet);
  const ready = await readyParts(clean, { uploads, forms });
  const cover = await renderCover(clean, ready);
  const joined = await joinParts(
    [
      { title: "Cover, what is missing, index", document: cover },
      ...ready.map(({ document, sheets }) => ({
        title: "",
        document,
        starts: sheets.map(({ number, title, first }) => ({
          title: `${number}  ${title}`,
          page: first,
        })),
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
  await finishPages(joined, { cover: cover.getPageCount(), ready, footer: clean.footer });
  return joined.save();
}

/** What goes into a form's fields keeps its lines, and the fields their names. */
function cleaned(packet: Packet): Packet {
  const plain = packet.sheets.map(({ form: _form, ...sheet }) => sheet);
  const clean = printable({ ...packet, sheets: plain }, "The packet");
  const sheets = clean.sheets.map((sheet, at) => {
    const form = packet.sheets[at]?.form;
    return form === undefined ? sheet : { ...sheet, form };
  });
  return { ...clean, sheets };
}

/** Bytes of what is merged. */
interface Stored {
  readonly uploads: ReadonlyMap<string, Uint8Array>;
  readonly forms: ReadonlyMap<string, Uint8Array>;
}

async function readyParts(packet: Packet, stored: Stored): Promise<ReadyPart[]> {
  const { uploads } = stored;
  const apart = openUploads();
  try {
    const parts: ReadyPart[] = [];
    let flow: Numbered[] = [];
    const close = async () => {
      if (flow.length > 0) parts.push(await flowPart(flow, { packet, uploads }));
      flow = [];
    };
    for (const [index, sheet] of packet.sheets.entries()) {
      const number = index + 1;
      if (isFlowing(sheet)) {
        flow.push({ sheet, number });
        continue;
      }
      await close();
      if (sheet.form !== undefined)
        parts.push(
          ...(await formParts({ ...sheet, form: sheet.form }, { packet, number, stored })),
        );
      else parts.push(await ownPart(sheet, { packet, number, uploads, apart }));
    }
    await close();
    return parts;
  } finally {
    apart.close();
  }
}

interface Numbered {
  readonly sheet: Sheet;
  readonly number: number;
}

async function flowPart(
  flow: readonly Numbered[],
  { packet, uploads }: { packet: Packet; uploads: ReadonlyMap<string, Uint8Array> },
): Promise<ReadyPart> {
  const spans = new Map<number, SheetSpan>();
  const span = (number: number, end: keyof SheetSpan, page: number) => {
    const known = spans.get(number) ?? { first: page, last: page };
    spans.set(number, { ...known, [end]: page });
  };
  const sheets: NumberedSheet[] = [];
  for (const { sheet, number } of flow)
    sheets.push({ sheet, number, pictures: await readyPictures(sheet.blocks, uploads) });
  const context = { lineName: packet.lineName, day: packet.day };
  const bytes = await renderToBuffer(
    <FlowDocument sheets={sheets} context={context} span={span} />,
  );
  const document = await PDFDocument.load(bytes, { updateMetadata: false });
  return {
    document,
    foreign: false,
    margin: FLOW_MARGIN,
    sheets: flow.map(({ sheet, number }) => ({
      number,
      title: sheet.title,
      refused: null,
      ...(spans.get(number) ?? { first: 1, last: 1 }),
    })),
  };
}

/**
 * A form of the authority and what is attached to it. In a packet its answers are part of the page: a
 * packet is kept as it went out.
 */
async function formParts(
  sheet: Sheet & { readonly form: FormFill },
  at: { readonly packet: Packet; readonly number: number; readonly stored: Stored },
): Promise<ReadyPart[]> {
  const { number, packet } = at;
  const part = (
    document: PDFDocument,
    { title = sheet.title, foreign = false, refused = null }: Partial<ReadySheet & ReadyPart>,
  ) => ({
    document,
    foreign,
    margin: null,
    sheets: [{ number, title, refused, first: 1, last: document.getPageCount() }],
  });
  const { uploads, forms } = at.stored;
  const bytes = forms.get(sheet.form.sha256);
  const made =
    bytes === undefined
      ? err("its PDF is not in the store. Add the form again.")
      : await formPages({ ...sheet.form, flatten: true }, { bytes, about: packet, number });
  if (!made.ok) {
    const refused = `The form “${sheet.title}” could not be filled in: ${made.error}`;
    const stand: Sheet = { ...sheet, blocks: [{ kind: "paragraph", text: refused }] };
    return [part(await renderSheet(stand, { packet, number, uploads }), { refused })];
  }
  const { form, attached } = made.value;
  leaveOnlyWhatShows(form.getPages());
  const title = `${sheet.title}: attached sheet`;
  return [part(form, { foreign: true }), ...(attached === null ? [] : [part(attached, { title })])];
}

/** A sheet on pages of its own: a drawing, a wide table, a stored file. */
async function ownPart(
  sheet: Sheet,
  at: {
    readonly packet: Packet;
    readonly number: number;
    readonly uploads: ReadonlyMap<string, Uint8Array>;
    readonly apart: Uploads;
  },
): Promise<ReadyPart> {
  const part = (document: PDFDocument, foreign: boolean, refused: string | null): ReadyPart => {
    const span = { first: 1, last: document.getPageCount() };
    const { number } = at;
    return {
      ...{ document, foreign, margin: null },
      sheets: [{ number, title: sheet.title, refused, ...span }],
    };
  };
  if (sheet.uploadId === null) return part(await renderSheet(sheet, at), false, null);
  const bytes = at.uploads.get(sheet.uploadId);
  const pages = bytes
    ? await at.apart.pages(bytes)
    : { ok: false as const, error: "its bytes are not in the store. Add the file again." };
  if (pages.ok) return part(pages.value, true, null);
  const refused = `“${sheet.title}” could not be merged: ${pages.error}`;
  const stand: Sheet = { ...sheet, blocks: [{ kind: "paragraph", text: refused }] };
  return part(await renderSheet(stand, at), false, refused);
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

/** A cover that runs over its page by a few lines is set closer. */
async function renderCover(packet: Packet, ready: readonly ReadyPart[]): Promise<PDFDocument> {
  const roomy = await coverWith(packet, ready, false);
  if (roomy.getPageCount() === 1) return roomy;
  const close = await coverWith(packet, ready, true);
  return close.getPageCount() < roomy.getPageCount() ? close : roomy;
}

/** The index needs page numbers, which depend on how long the cover itself is: until it agrees. */
async function coverWith(
  packet: Packet,
  ready: readonly ReadyPart[],
  close: boolean,
): Promise<PDFDocument> {
  const refused = ready.flatMap(({ sheets }) => sheets.flatMap((sheet) => sheet.refused ?? []));
  let pages = 1;
  for (;;) {
    const index = indexOf(ready, pages);
    const bytes = await renderToBuffer(
      <CoverDocument packet={packet} index={index} refused={refused} close={close} />,
    );
    const document = await PDFDocument.load(bytes, { updateMetadata: false });
    if (document.getPageCount() <= pages) return document;
    pages = document.getPageCount();
  }
}

function indexOf(ready: readonly ReadyPart[], coverPages: number): IndexEntry[] {
  let before = coverPages;
  return ready.flatMap(({ document, sheets }) => {
    const entries = sheets.map(({ number, title, first, last }) => ({
      number,
      title,
      page: before + first,
      pages: last - first + 1,
    }));
    before += document.getPageCount();
    return entries;
  });
}

async function finishPages(
  joined: PDFDocument,
  {
    cover,
    ready,
    footer,
  }: { readonly cover: number; readonly ready: readonly ReadyPart[]; readonly footer: string },
): Promise<void> {
  joined.registerFontkit(fontkit);
  const font = await joined.embedFont(regularFontBytes(), { subset: true });
  const pages = joined.getPages();
  const owners = [
    ...Array.from({ length: cover }, () => ({ foreign: false, margin: null, name: "Cover" })),
    ...ready.flatMap(({ document, foreign, margin, sheets }) =>
      Array.from({ length: document.getPageCount() }, (_, at) => ({
        foreign,
        margin,
        name: nameOf(sheets.filter(({ first, last }) => first <= at + 1 && at + 1 <= last)),
      })),
    ),
  ];
  for (const [index, page] of pages.entries()) {
    const owner = owners[index];
    const left = owner?.foreign ? framedWords(page) : footer;
    const name = owner?.name ?? "";
    const right = `${name} · page ${index + 1} of ${pages.length}`;
    stampPage(page, font, { left, right, margin: owner?.margin ?? null });
  }
}

/** `Sheet 4`, or `Sheets 4–6` where a page holds several. */
function nameOf(sheets: readonly ReadySheet[]): string {
  const numbers = sheets.map(({ number }) => number);
  const [first] = numbers;
  const last = numbers.at(-1);
  return first === last ? `Sheet ${first}` : `Sheets ${first}–${last}`;
}

function framedWords(page: PDFPage): string {
  const { percent } = frameOnLetter(page);
  return percent === 100 ? "Attachment" : `Attachment, shown at ${percent}% of actual size`;
}
