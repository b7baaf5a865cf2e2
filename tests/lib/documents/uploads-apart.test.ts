import { execFileSync } from "node:child_process";
import fs from "node:fs";
import path from "node:path";
import { PDFArray, PDFDocument, PDFName, type PDFPage, PDFString, rgb } from "@cantoo/pdf-lib";
import sharp from "sharp";
import { expect, onTestFinished, test } from "vitest";
import { uploadPages } from "#lib/documents/upload-pages.ts";
import { openUploads } from "#lib/documents/uploads-apart.ts";
import { watchStretches } from "../../support/effort.ts";
import { manyFields } from "../../support/hostile-pdf.ts";
import { aFolder, must } from "../../support/office.ts";

function opened(limits?: Parameters<typeof openUploads>[0]) {
  const uploads = openUploads(limits);
  onTestFinished(uploads.close);
  return uploads;
}

async function aPdf(pages = 1): Promise<PDFDocument> {
  const document = await PDFDocument.create();
  for (let at = 0; at < pages; at += 1) document.addPage([200, 200]);
  return document;
}

/** What stands in a PDF when everything in it is unpacked, as another program reads it. */
function unpacked(bytes: Uint8Array): string {
  const file = path.join(aFolder(), "a.pdf");
  fs.writeFileSync(file, bytes);
  return execFileSync("qpdf", ["--json", "--json-key=qpdf", "--json-stream-data=none", file], {
    encoding: "utf8",
    maxBuffer: 1 << 28,
  });
}

const SCRIPT = { S: "JavaScript", JS: PDFString.of("app.alert('x')") };
const PROGRAM = { S: "Launch", F: PDFString.of("calc.exe") };

function onPage(page: PDFPage, remark: object): void {
  const { context } = page.doc;
  const remarks = page.node.lookupMaybe(PDFName.of("Annots"), PDFArray) ?? context.obj([]);
  remarks.push(context.register(context.obj({ Type: "Annot", Rect: [0, 0, 9, 9], ...remark })));
  page.node.set(PDFName.of("Annots"), remarks);
}

/** Ways in which a PDF carries a script, a program's start or a file. */
const HIDDEN: Readonly<
  Record<string, (document: PDFDocument, page: PDFPage) => void | Promise<void>>
> = {
  "as what the document does when it opens": (document) => {
    document.catalog.set(PDFName.of("OpenAction"), document.context.obj(SCRIPT));
  },
  "among the document's names": (document) => {
    document.addJavaScript("start", "app.alert('x')");
  },
  "as what the page does when it opens": (document, page) => {
    page.node.set(PDFName.of("AA"), document.context.obj({ O: SCRIPT, C: PROGRAM }));
  },
  "in a link": (_document, page) => onPage(page, { Subtype: "Link", A: PROGRAM }),
  "behind a web link, as the next thing to do": (_document, page) =>
    onPage(page, {
      Subtype: "Link",
      A: { S: "URI", URI: PDFString.of("https://example.com"), Next: [SCRIPT, PROGRAM] },
    }),
  "in a remark that shows": (_document, page) =>
    onPage(page, { Subtype: "Square", AA: { E: SCRIPT }, A: PROGRAM }),
  "in a form field": (document, page) => {
    const field = document.getForm().createTextField("total");
    field.addToPage(page, { x: 10, y: 10, width: 80, height: 20 });
    field.acroField.dict.set(PDFName.of("AA"), document.context.obj({ K: SCRIPT, F: SCRIPT }));
  },
  "in a button": (document, page) => {
    const button = document.getForm().createButton("go");
    button.addToPage("Go", page, { x: 10, y: 50, width: 80, height: 20 });
    for (const widget of button.acroField.getWidgets())
      widget.dict.set(PDFName.of("A"), document.context.obj(PROGRAM));
  },
  "in a field of no form": ({ context }, page) => {
    const N = context.register(context.stream("", { Subtype: "Form", BBox: [0, 0, 9, 9] }));
    onPage(page, { Subtype: "Widget", FT: "Btn", AP: { N }, A: SCRIPT, AA: { U: PROGRAM } });
  },
  "in a screen and a film on the page": (_document, page) => {
    onPage(page, { Subtype: "Screen", A: { S: "Rendition", JS: PDFString.of("x") } });
    onPage(page, { Subtype: "RichMedia", RichMediaContent: { Assets: { Names: [] } } });
  },
  "as an enclosed file of the document": async (document) => {
    await document.attach(new TextEncoder().encode("MZ"), "setup.exe");
  },
  "as a file pinned to the page": (document, page) => {
    const { context } = document;
    const file = context.register(context.stream("MZ", { Type: "EmbeddedFile" }));
    const spec = { Type: "Filespec", F: PDFString.of("setup.exe"), EF: { F: file } };
    onPage(page, { Subtype: "FileAttachment", FS: spec });
    page.node.set(PDFName.of("AF"), context.obj([spec]));
  },
  "deep in what the page draws with": (document, page) => {
    const { context } = document;
    const drawn = context.register(
      context.stream("0 0 5 5 re f", {
        Type: "XObject",
        Subtype: "Form",
        BBox: [0, 0, 5, 5],
        AF: [{ Type: "Filespec", F: PDFString.of("x.exe") }],
        PieceInfo: { App: { Private: SCRIPT } },
        Resources: { Properties: { MC0: { A: PROGRAM, Deep: { Deeper: [SCRIPT] } } } },
      }),
    );
    page.node.setXObject(PDFName.of("JS"), drawn);
  },
  "as a picture whose bytes are in another file": (document, page) => {
    const { context } = document;
    const drawn = context.register(
      context.stream("", {
        Type: "XObject",
        Subtype: "Image",
        Width: 1,
        Height: 1,
        ColorSpace: "DeviceGray",
        BitsPerComponent: 8,
        F: { Type: "Filespec", F: PDFString.of("//elsewhere/secret") },
      }),
    );
    page.node.setXObject(PDFName.of("Im1"), drawn);
  },
};

const CARRIED =
  /JavaScript|\/JS\b(?!": *"\d+ 0 R)|Launch|calc\.exe|setup\.exe|x\.exe|secret|EmbeddedFile|Filespec|"\/AA"|OpenAction|RichMedia|Rendition|alert/;

test.each(Object.entries(HIDDEN))(
  "nothing runs, starts or comes along that a PDF carries %s",
  async (_, hide) => {
    const document = await aPdf();
    const [page] = document.getPages();
    if (page === undefined) throw new Error("There is no page");
    page.drawRectangle({ x: 20, y: 20, width: 100, height: 50, color: rgb(0, 0.4, 0.6) });
    await hide(document, page);
    const bytes = await document.save();
    expect(unpacked(bytes)).toMatch(CARRIED);
    const source = await PDFDocument.load(must(await uploadPages(bytes)));
    // As the packet takes them.
    const packet = await PDFDocument.create();
    for (const each of await packet.copyPages(source, source.getPageIndices()))
      packet.addPage(each);
    const clean = unpacked(await packet.save());
    expect(clean).not.toMatch(CARRIED);
    expect(clean).toContain("/Contents");
  },
);

/** A page tree that names itself. */
async function aLoop(): Promise<Uint8Array> {
  const document = await aPdf();
  const tree = document.catalog.Pages();
  tree.set(PDFName.of("Kids"), document.context.obj([document.catalog.get(PDFName.of("Pages"))]));
  return await document.save({ useObjectStreams: false });
}

function aPng(side: number): Promise<Buffer> {
  const create = { width: side, height: side, channels: 3, background: "#336699" } as const;
  return sharp({ create, limitInputPixels: false }).png({ compressionLevel: 1 }).toBuffer();
}

test("hostile files cost their packet a minute at most and are named with the reason; the rest comes in", async () => {
  const uploads = opened({ time: 12_000, memory: 1_500 });
  const files: Record<string, Uint8Array> = {
    "2,000 pages": await (await aPdf(2_000)).save(),
    "20,000 fields": await manyFields(20_000),
    "a loop": await aLoop(),
    "a large picture": await aPng(10_900),
    "20,001 fields": await manyFields(20_001),
    "a good one": await (await aPdf(3)).save(),
  };
  const longest = watchStretches();
  const answers: Record<string, string> = {};
  for (const [name, bytes] of Object.entries(files)) {
    const pages = await uploads.pages(bytes);
    answers[name] = pages.ok ? `${pages.value.getPageCount()} pages` : pages.error;
  }
  const stretch = longest();
  expect(answers).toEqual({
    "2,000 pages": expect.stringMatching(/^it has 2,000 pages, and a packet takes at most 1,000/),
    "20,000 fields": expect.stringMatching(/takes too long|too large/),
    "a loop": expect.stringMatching(/damaged|can’t be read/),
    "a large picture": expect.stringMatching(/^1 pages|takes too long|too large/),
    "20,001 fields": expect.stringMatching(/takes too long|too large/),
    "a good one": "3 pages",
  });
  expect(stretch).toBeLessThan(2_000);
});

test("a file that takes more memory than there is for it ends its own process only", async () => {
  const uploads = opened({ time: 60_000, memory: 120 });
  const picture = await uploads.pages(await aPng(9_000));
  expect(picture.ok ? "" : picture.error).toMatch(/too large once it is opened/);
  const good = await opened().pages(await (await aPdf(2)).save());
  expect(good.ok && good.value.getPageCount()).toBe(2);
});
