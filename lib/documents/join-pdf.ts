import { PDFDocument, PDFHexString, PDFName, type PDFRef } from "@cantoo/pdf-lib";
import { noonOf } from "./noon.ts";

/** A part of a joined document, with the words under which readers find it. */
export interface Part {
  readonly title: string;
  readonly document: PDFDocument;
  /** What begins on its pages, counted from 1, where that is more than itself. */
  readonly starts?: readonly { readonly title: string; readonly page: number }[];
}

interface About {
  readonly title: string;
  readonly author: string;
  readonly subject: string;
  readonly language: string;
  readonly day: string;
}

/** A new document from the pages of all parts, in order, with an outline of their titles. */
export async function joinParts(parts: readonly Part[], about: About): Promise<PDFDocument> {
  const joined = await PDFDocument.create({ updateMetadata: false });
  const starts: { title: string; page: PDFRef }[] = [];
  for (const { title, document, starts: within = [{ title, page: 1 }] } of parts) {
    const pages = await joined.copyPages(document, document.getPageIndices());
    for (const page of pages) joined.addPage(page);
    for (const each of within) {
      const first = pages[each.page - 1];
      if (first) starts.push({ title: each.title, page: first.ref });
    }
  }
  addOutline(joined, starts);
  nameDocument(joined, about);
  return joined;
}

function nameDocument(document: PDFDocument, about: About): void {
  const day = noonOf(about.day);
  document.setTitle(about.title, { showInWindowTitleBar: true });
  document.setAuthor(about.author);
  document.setSubject(about.subject);
  document.setLanguage(about.language);
  document.setCreator("Wyebook");
  document.setProducer("Wyebook");
  document.setCreationDate(day);
  document.setModificationDate(day);
}

/** The outline by hand: the library has no call for it. One level, in order. */
function addOutline(
  document: PDFDocument,
  starts: readonly { readonly title: string; readonly page: PDFRef }[],
): void {
  if (starts.length === 0) return;
  const { context } = document;
  const root = context.nextRef();
  const refs = starts.map(() => context.nextRef());
  for (const [index, { title, page }] of starts.entries()) {
    const entry = context.obj({
      Title: PDFHexString.fromText(title),
      Parent: root,
      Dest: [page, "XYZ", null, null, null],
    });
    const before = refs[index - 1];
    const after = refs[index + 1];
    if (before) entry.set(PDFName.of("Prev"), before);
    if (after) entry.set(PDFName.of("Next"), after);
    const own = refs[index];
    if (own) context.assign(own, entry);
  }
  const outline = context.obj({ Type: "Outlines", Count: starts.length });
  const [first] = refs;
  const last = refs.at(-1);
  if (first) outline.set(PDFName.of("First"), first);
  if (last) outline.set(PDFName.of("Last"), last);
  context.assign(root, outline);
  document.catalog.set(PDFName.of("Outlines"), root);
  document.catalog.set(PDFName.of("PageMode"), PDFName.of("UseOutlines"));
}
