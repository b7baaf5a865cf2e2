import { degrees, PDFDocument, PDFName, StandardFonts } from "@cantoo/pdf-lib";
import sharp from "sharp";
import { expect, test } from "vitest";
import { drawingPages } from "#lib/documents/drawing-pages.ts";
import { renderPacket } from "#lib/documents/render-packet.tsx";
import { SHEET_KINDS } from "#lib/domain/facts/authority.ts";
import { composePacket } from "#lib/domain/packet/compose.ts";
import type { Packet, Sheet } from "#lib/domain/packet/packet.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { scalesOf } from "#tests/support/application.ts";
import { anAuthority } from "#tests/support/file.ts";
import { readPdf } from "#tests/support/pdf.ts";
import { askingFor, sampleLine } from "#tests/support/sample-line.ts";

/** Rendering is slow where other work runs beside it. */
/** A packet with a cover and stored files only. */
/** The sample line, where the authority asks for every sheet. */
function wholeLine() {
  return askingFor(SHEET_KINDS, sampleLine());
}

function packetOf(titles: readonly string[]): Packet {
  const sheets: Sheet[] = titles.map((title) => ({
    kind: "upload",
    title,
    blocks: [],
    plans: [],
    drawing: null,
    uploadId: title,
  }));
  return { ...composePacket(wholeLine()), sheets, missing: [], checks: [] };
}

async function foreignPdf(
  pages: readonly { size: [number, number]; words: string; turn?: number }[],
): Promise<Uint8Array> {
  const document = await PDFDocument.create();
  const font = await document.embedFont(StandardFonts.Courier);
  for (const { size, words, turn = 0 } of pages) {
    const page = document.addPage(size);
    page.drawText(words, { x: 40, y: size[1] - 60, size: 14, font });
    page.setRotation(degrees(turn));
  }
  return document.save();
}

function pageNumbers(pdf: ReturnType<typeof readPdf>): string[] {
  const pages = Number(pdf.info()["Pages"]);
  return Array.from(
    { length: pages },
    (_, index) =>
      /(Cover|Sheets? \d+(?:–\d+)?) · page \d+ of \d+/.exec(pdf.text(index + 1))?.[0] ?? "none",
  );
}

test("renderPacket() prints the whole packet as a sound PDF with every page numbered in order", async () => {
  const packet = composePacket(wholeLine());
  const pdf = readPdf(await renderPacket(packet, new Map()));
  pdf.check();
  const numbers = pageNumbers(pdf);
  expect(numbers.length).toBeGreaterThanOrEqual(7);
  expect(numbers.map((text) => text.replace(/^.*· /, ""))).toEqual(
    numbers.map((_, index) => `page ${index + 1} of ${numbers.length}`),
  );
  expect(pdf.fonts().filter(({ embedded }) => !embedded)).toEqual([]);
  expect(pdf.info()["Title"]).toBe(
    "Permit application for a shared private sewer: Alley behind Fennel Row",
  );
});

test("renderPacket() says what is missing on its first page, and where each sheet is", async () => {
  const packet = composePacket(askingFor(["proof-of-notice"], sampleLine()));
  const pdf = readPdf(await renderPacket(packet, new Map()));
  const [first = ""] = [pdf.text(1)];
  expect(packet.missing.length).toBeGreaterThan(1);
  expect(first).toContain(`${packet.missing.length} items are missing`);
  expect(first.indexOf("missing")).toBeLessThan(first.indexOf("Index"));
  const [, page = "0"] = /Proof of notice\s+(\d+)/.exec(first) ?? [];
  expect(pdf.text(Number(page))).toMatch(/^\s*5\s+Proof of notice/m);
});

test("renderPacket() never says that nothing is missing above a row that is", async () => {
  const packet = composePacket(sampleLine());
  const check = { ...packet.checks[0], title: "Photographs", mandatory: false, due: "submission" };
  const row = {
    ...check,
    state: "missing",
    requirementId: "p",
    sentence: "",
    citation: "",
  } as const;
  const first = async (checks: Packet["checks"]) =>
    readPdf(await renderPacket({ ...packet, missing: [], checks }, new Map())).text(1);
  expect(await first([row as Packet["checks"][number]])).toContain("No required item is missing");
  expect(await first([])).toMatch(/^\s*Nothing is missing/m);
});

test("renderPacket() sets a cover closer that would run over its page by a few lines", async () => {
  const packet = composePacket(sampleLine());
  const [row] = packet.checks;
  if (row === undefined) throw new Error("no requirement");
  const pagesWith = async (count: number) => {
    const checks = Array.from({ length: count }, (_, at) => ({
      ...row,
      requirementId: String(at),
      title: `Item ${at}`,
      sentence: "In the packet.",
      citation: "Handbook 3",
      state: "in-hand" as const,
      due: "submission" as const,
    }));
    const pdf = readPdf(await renderPacket({ ...packet, missing: [], checks }, new Map()));
    return Array.from({ length: 3 }, (_, at) => at + 1).filter((page) =>
      /Cover/.test(pdf.text(page)),
    ).length;
  };
  // So many rows, with their air, take more than a page; far more take two all the same.
  expect(await pagesWith(24)).toBe(1);
  expect(await pagesWith(45)).toBe(2);
});

test("renderPacket() names size and material of the pipe beside its sign", async () => {
  const packet = composePacket(sampleLine());
  const at = packet.sheets.findIndex(({ drawing }) => drawing !== null);
  const text = readPdf(await renderPacket(packet, new Map())).text();
  const words = new Set(packet.sheets[at]?.drawing?.pipes.map((pipe) => pipe.words));
  expect(words.size).toBeGreaterThan(0);
  for (const each of words) expect(text).toContain(each);
});

test("renderPacket() says on its first page what was left out on purpose", async () => {
  const packet = composePacket(sampleLine());
  const first = readPdf(await renderPacket(packet, new Map())).text(1);
  expect(first.replaceAll(/\s+/g, " ")).toContain(
    "Left out on purpose, since Quillhaven Sewer Utility",
  );
});

test("renderPacket() never leaves the heading of its index alone at the foot of a page", async () => {
  const packet = composePacket(wholeLine());
  for (let more = 7; more <= 10; more += 1) {
    const missing = Array.from(
      { length: more },
      (_, at) => `One more thing that is missing, ${at}.`,
    );
    const pdf = readPdf(await renderPacket({ ...packet, missing }, new Map()));
    const on = [1, 2].find((page) => /^\s*Index$/m.test(pdf.text(page))) ?? 0;
    expect(pdf.text(on), `${more} missing`).toContain("Application data");
  }
});

test("renderPacket() merges PDF and picture, upright on Letter pages, numbered like all others", async () => {
  const pdfBytes = await foreignPdf([
    { size: [612, 792], words: "letter page" },
    { size: [595, 842], words: "A4 page" },
    { size: [1224, 792], words: "wide drawing" },
    { size: [612, 792], words: "turned page", turn: 90 },
    { size: [612, 792], words: "upside down", turn: 180 },
    { size: [792, 612], words: "turned back", turn: 270 },
  ]);
  const picture = await sharp({
    create: { width: 1200, height: 800, channels: 3, background: "#336699" },
  })
    .png()
    .toBuffer();
  const packet = packetOf(["easement", "photograph"]);
  const pdf = readPdf(
    await renderPacket(
      packet,
      new Map<string, Uint8Array>([
        ["easement", pdfBytes],
        ["photograph", picture],
      ]),
    ),
  );
  pdf.check();
  expect(pageNumbers(pdf)).toEqual([
    "Cover · page 1 of 8",
    ...[2, 3, 4, 5, 6, 7].map((page) => `Sheet 1 · page ${page} of 8`),
    "Sheet 2 · page 8 of 8",
  ]);
  for (const [page, words] of [
    [2, "letter page"],
    [3, "A4 page"],
    [4, "wide drawing"],
    [5, "turned page"],
    [6, "upside down"],
    [7, "turned back"],
  ] as const) {
    expect(pdf.text(page)).toContain(words);
  }
});

test("renderPacket() keeps the stamp at the foot of the page as shown, also where a page is turned", async () => {
  const bytes = await foreignPdf(
    [0, 90, 180, 270].map((turn) => ({ size: [612, 792] as [number, number], words: "x", turn })),
  );
  const pdf = readPdf(await renderPacket(packetOf(["a"]), new Map([["a", bytes]])));
  for (const [index, height] of [792, 612, 792, 612].entries()) {
    const stamp = pdf.words(index + 2).find(({ text }) => text === "Sheet");
    expect(stamp?.bottom).toBeGreaterThan(height - 40);
    expect(stamp?.bottom).toBeLessThan(height - 10);
  }
});

test("renderPacket() makes form fields part of the page", async () => {
  const document = await PDFDocument.create();
  const page = document.addPage([612, 792]);
  const field = document.getForm().createTextField("owner");
  field.setText("Ottilie Brandvold");
  field.addToPage(page, { x: 60, y: 600, width: 300, height: 24 });
  const bytes = await document.save();
  const pdf = readPdf(await renderPacket(packetOf(["form"]), new Map([["form", bytes]])));
  pdf.check();
  expect(pdf.text(2)).toContain("Ottilie Brandvold");
  expect(pdf.info()["Form"]).toBe("none");
});

test("renderPacket() names a file that it cannot merge among what is missing, with the reason", async () => {
  const good = await foreignPdf([{ size: [612, 792], words: "good" }]);
  const locked = await PDFDocument.load(good);
  locked.encrypt({ userPassword: "open sesame", ownerPassword: "other" });
  const lockedBytes = await locked.save();
  const pdf = readPdf(
    await renderPacket(
      packetOf(["locked", "cut", "words", "lost"]),
      new Map<string, Uint8Array>([
        ["locked", lockedBytes],
        ["cut", good.slice(0, good.length - 40)],
        ["words", new TextEncoder().encode("just some words")],
      ]),
    ),
  );
  pdf.check();
  const first = pdf.text(1).replace(/\s+/g, " ");
  expect(first).toContain("4 items are missing");
  expect(first).toContain("“locked” could not be merged: it is locked with a password.");
  expect(first).toContain("“cut” could not be merged: it is damaged or incomplete.");
  expect(first).toContain("“words” could not be merged: it is neither a PDF nor a picture");
  expect(first).toContain("“lost” could not be merged: its bytes are not in the store.");
  expect(pdf.text(2)).toContain("could not be merged");
});

test("renderPacket() merges a PDF that only restricts its use", async () => {
  const document = await PDFDocument.load(
    await foreignPdf([{ size: [612, 792], words: "restricted" }]),
  );
  document.encrypt({ ownerPassword: "office", userPassword: "", permissions: { printing: false } });
  const pdf = readPdf(await renderPacket(packetOf(["a"]), new Map([["a", await document.save()]])));
  pdf.check();
  expect(pdf.text(2)).toContain("restricted");
});

test("renderPacket() cuts a cropped page to what it showed", async () => {
  const document = await PDFDocument.create();
  const page = document.addPage([612, 792]);
  page.drawText("inside", { x: 300, y: 400 });
  page.setCropBox(100, 100, 400, 500);
  const bytes = await document.save();
  const pdf = readPdf(await renderPacket(packetOf(["a"]), new Map([["a", bytes]])));
  const word = pdf.words(2).find(({ text }) => text === "inside");
  // 400 × 500 of its own size in the middle of the room above the stamp: 106 + 200 from the left.
  expect(word?.left).toBeCloseTo(306, 0);
});

test("renderPacket() has an outline of its sheets", async () => {
  const packet = composePacket(wholeLine());
  const bytes = await renderPacket(packet, new Map());
  const document = await PDFDocument.load(bytes);
  const outlines = document.catalog.lookup(PDFName.of("Outlines"));
  expect(String(outlines)).toContain(`/Count ${packet.sheets.length + 1}`);
});

test("renderPacket() gives the same bytes for the same packet", async () => {
  const upload = await foreignPdf([{ size: [612, 792], words: "same" }]);
  const once = await renderPacket(packetOf(["a"]), new Map([["a", upload]]));
  const again = await renderPacket(packetOf(["a"]), new Map([["a", upload]]));
  expect(Buffer.from(once).equals(Buffer.from(again))).toBe(true);
});

test("drawingPages() draws at 10 ft to the inch, at 30 ft on long lines, continued without a gap", () => {
  const drawing = composePacket(wholeLine()).sheets.find((sheet) => sheet.drawing)?.drawing;
  if (!drawing) throw new Error("The sample packet has no drawing");
  for (const [extent, feet] of [
    [9_600, 10],
    [40_000, 30],
  ] as const) {
    const { feetPerInch, pages } = drawingPages({ ...drawing, extent });
    expect(feetPerInch).toBe(feet);
    expect(pages.at(0)?.from).toBe(0);
    expect(pages.at(-1)?.to).toBe(extent);
    for (const [index, page] of pages.slice(1).entries()) expect(page.from).toBe(pages[index]?.to);
  }
});

test("renderPacket() prints the drawing to scale: 20 ft between two tie-ins are 2 inches", async () => {
  const packet = composePacket(wholeLine());
  const only = { ...packet, sheets: packet.sheets.filter(({ drawing }) => drawing !== null) };
  const pdf = readPdf(await renderPacket(only, new Map()));
  const page = [1, 2, 3].find((each) => pdf.text(each).includes("0+10.0")) ?? 0;
  const words = pdf.words(page);
  const at = (label: string) => words.find(({ text }) => text === label)?.left ?? 0;
  // Ticks at 0+10.0 and 0+30.0 are words of the same width, set in their middle.
  expect(at("0+30.0") - at("0+10.0")).toBeCloseTo(144, 0);
});

/** The drawing's sheet of a line due east, of so many feet, where the authority allows only these scales. */
async function drawingTo(allowed: readonly number[], feet: number): Promise<string> {
  const { line, ...rest } = sampleLine().file;
  const file = { ...rest, line: { ...line, bearing: 90, upperEnd: feet * 100 } };
  const authority = { ...anAuthority(rest.authority ?? {}), scales: scalesOf(...allowed) };
  const input = { ...sampleLine(), file: { ...file, authority } };
  const packet = composePacket({ ...input, report: reportOn(input.file, input.report.today) });
  const only = { ...packet, sheets: packet.sheets.filter(({ drawing }) => drawing !== null) };
  return readPdf(await renderPacket(only, new Map())).text();
}

test("renderPacket() draws plan and pipe to the authority’s scales alone, over several sheets where it must", async () => {
  const text = await drawingTo([20], 300);
  expect(text.match(/1 in = \d+ ft/g)?.filter((words) => words !== "1 in = 20 ft")).toEqual([]);
  expect(text).toContain("1 in = 20 ft when printed at full size");
  expect(text).toContain("Plan view, sheet 1 of 2");
  expect(text).toContain("Plan view, sheet 2 of 2");
  expect(text).toContain("match line: see sheet 2");
  expect(text).toContain("Match line at");
  expect(text).not.toContain("NOT A SCALE");
});

test("renderPacket() says on the plan view that no scale of the authority’s fits", async () => {
  const text = (await drawingTo([5], 2_000)).replaceAll(/\s+/g, " ");
  expect(text).toMatch(
    /1 in = \d+ ft when printed at full size, WHICH IS NOT A SCALE THAT THE AUTHORITY ALLOWS \(1 in = 5 ft\)/,
  );
});
