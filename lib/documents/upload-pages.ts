import { PDFDocument } from "@cantoo/pdf-lib";
import sharp from "sharp";
import { err, ok, type Result } from "#lib/result.ts";
import { hasXfa, openPdf } from "./open-pdf.ts";
import { leaveOnlyWhatShows } from "./plain-pages.ts";

const LETTER = { short: 612, long: 792 };
const MARGIN = 36;
/** A photograph prints well enough at this many pixels on its long side. */
const LONGEST_SIDE = 2_400;

/** More than any authority looks through; what draws such a file needs minutes. */
const MOST_PAGES = 1_000;
const MOST_OBJECTS = 200_000;

/**
 * A stored file as a PDF that can be merged into a packet: a PDF with its form fields made part of
 * the page, only what shows of it, or a picture on a Letter page. A file that cannot be merged comes
 * back as the reason in words, with what to do about it; it is never merged in part. A stranger's
 * file may take any time and memory: called in a process of its own (uploads-apart.ts).
 */
export async function uploadPages(bytes: Uint8Array): Promise<Result<Uint8Array, string>> {
  if (startsWith(bytes, "%PDF")) return await pdfPages(bytes);
  return await picturePages(bytes);
}

function startsWith(bytes: Uint8Array, sign: string): boolean {
  const head = new TextDecoder("latin1").decode(bytes.subarray(0, 1_024));
  return head.includes(sign);
}

async function pdfPages(bytes: Uint8Array): Promise<Result<Uint8Array, string>> {
  const opened = await openPdf(bytes);
  if (!opened.ok) return opened;
  const source = opened.value;
  const count = source.getPageCount();
  if (count > MOST_PAGES)
    return err(
      `it has ${count.toLocaleString("en-US")} pages, and a packet takes at most ${MOST_PAGES.toLocaleString("en-US")} of one file. Print the pages that matter to a new PDF, and add that.`,
    );
  if (hasXfa(source)) {
    return err(
      "it is a form type that only its own program can display. Open it there, print it to a PDF, and add that.",
    );
  }
  try {
    source.getForm().flatten();
    return await cleanCopy(source);
  } catch {
    return err(
      "its pages or form fields are damaged. Open it, print it to a new PDF, and add that.",
    );
  }
}

/** Only the pages, and of them only what shows. */
async function cleanCopy(source: PDFDocument): Promise<Result<Uint8Array, string>> {
  // Before they are copied: a page's actions and remarks may name half of the document.
  leaveOnlyWhatShows(source.getPages());
  const copy = await PDFDocument.create({ updateMetadata: false });
  const pages = await copy.copyPages(source, source.getPageIndices());
  for (const page of pages) copy.addPage(page);
  leaveOnlyWhatShows(copy.getPages());
  if (copy.context.enumerateIndirectObjects().length > MOST_OBJECTS)
    return err(
      "it is made of too many parts to be merged. Open it, print it to a new PDF, and add that.",
    );
  return ok(await copy.save());
}

async function picturePages(bytes: Uint8Array): Promise<Result<Uint8Array, string>> {
  try {
    const { data, info } = await sharp(bytes, { failOn: "error", limitInputPixels: 120_000_000 })
      .rotate()
      .resize(LONGEST_SIDE, LONGEST_SIDE, { fit: "inside", withoutEnlargement: true })
      .flatten({ background: "#ffffff" })
      .jpeg({ quality: 84 })
      .toBuffer({ resolveWithObject: true });
    return ok(await picturePage(data, info));
  } catch {
    return err(
      "it is neither a PDF nor a picture that can be read here. Save it as PDF, JPEG or PNG, and add that.",
    );
  }
}

async function picturePage(
  data: Uint8Array,
  { width, height }: { width: number; height: number },
): Promise<Uint8Array> {
  const document = await PDFDocument.create({ updateMetadata: false });
  const wide = width > height;
  const size: [number, number] = wide ? [LETTER.long, LETTER.short] : [LETTER.short, LETTER.long];
  const page = document.addPage(size);
  const image = await document.embedJpg(data);
  const room = { width: size[0] - 2 * MARGIN, height: size[1] - 2 * MARGIN };
  const scale = Math.min(room.width / width, room.height / height);
  page.drawImage(image, {
    x: (size[0] - width * scale) / 2,
    y: (size[1] - height * scale) / 2,
    width: width * scale,
    height: height * scale,
  });
  return await document.save();
}
