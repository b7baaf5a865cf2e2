import { expect, test } from "vitest";
import { renderLetters } from "#lib/documents/render-letters.tsx";
import { exposedBox, FOLD, NUMBER_TEN, visibleBox } from "#lib/documents/window.ts";
import { LETTER_KINDS, type LetterKind } from "#lib/domain/facts/notice.ts";
import { composeLetter } from "#lib/domain/paper/compose.ts";
import type { Letter } from "#lib/domain/paper/letter.ts";
import { LANGUAGES } from "#lib/domain/say/language.ts";
import { type PdfWord, readPdf } from "#tests/support/pdf.ts";
import { sampleLine, sampleNotice } from "#tests/support/sample-line.ts";

/** Rendering is slow where other work runs beside it. */
const READERS: Partial<Record<LetterKind, readonly [string, string | null]>> = {
  "tie-in-inquiry": ["nils", "p11"],
  "entry-consent": ["georgina", "p9"],
  "authority-response": ["utility", null],
};

function letterOf(kind: LetterKind, overrides: Parameters<typeof sampleNotice>[2] = {}): Letter {
  const [party, property] = READERS[kind] ?? ["lodz", "p18"];
  const notice = sampleNotice(party, property, { kind, tieInId: "T3", ...overrides });
  return composeLetter({ ...sampleLine(), notice });
}

function inside(word: PdfWord, box: { left: number; top: number; right: number; bottom: number }) {
  return (
    word.left >= box.left - 0.01 &&
    word.right <= box.right + 0.01 &&
    word.top >= box.top - 0.01 &&
    word.bottom <= box.bottom + 0.01
  );
}

function touches(
  word: PdfWord,
  box: { left: number; top: number; right: number; bottom: number },
): boolean {
  return (
    word.left < box.right && word.right > box.left && word.top < box.bottom && word.bottom > box.top
  );
}

test("renderLetters() prints every kind, in turn in English and Spanish, as a sound PDF in Letter size", async () => {
  const letters = LETTER_KINDS.map((kind, index) =>
    letterOf(kind, { language: LANGUAGES[index % LANGUAGES.length] ?? "en" }),
  );
  const pdf = readPdf(await renderLetters(letters));
  pdf.check();
  expect(pdf.info()["Page size"]).toContain("(letter)");
  expect(pdf.fonts().length).toBeGreaterThan(0);
  expect(pdf.fonts().filter(({ embedded }) => !embedded)).toEqual([]);
  expect(pdf.text()).toContain("AGNIESZKA ŁÓDŹ");
});

test("renderLetters() starts each letter on a fresh page with page numbers of its own", async () => {
  const pdf = readPdf(
    await renderLetters([letterOf("finding"), letterOf("drain-pause", { language: "es" })]),
  );
  const pages = Number(pdf.info()["Pages"]);
  const numbers = Array.from({ length: pages }, (_, index) =>
    /(Page|Página) (\d+) (of|de) (\d+)/.exec(pdf.text(index + 1))?.slice(2, 5),
  ).map((found) => [Number(found?.[0]), Number(found?.[2])]);
  const first = numbers[0]?.[1] ?? 0;
  expect(first).toBeGreaterThan(1);
  const counted = (many: number) => Array.from({ length: many }, (_, index) => [index + 1, many]);
  expect(numbers).toEqual([...counted(first), ...counted(pages - first)]);
});

test("renderLetters() keeps every word of the address in the window, however the sheet slides", async () => {
  const box = visibleBox(NUMBER_TEN, FOLD);
  const addresses: readonly (readonly string[])[] = [
    ["OTTILIE BRANDVOLD", "12 FENNEL ROW", "QUILLHAVEN WA 98000"],
    ["LARKSPUR HOLDINGS LLC", "ATTN ŁÓDŹ PEÑA", "900 SIGNAL HILL RD STE 4½", "QUILLHAVEN WA 98000"],
    [
      "WINFIELD FAMILY IRREVOCABLE TRUST OF",
      "NINETEEN HUNDRED NINETY-EIGHT",
      "C/O BEATRIX HOLLOWAY",
      "12345 NORTHWEST FENNEL ROW APT 1201",
      "QUILLHAVEN WA 98000-0001",
    ],
  ];
  for (const to of addresses) {
    const pdf = readPdf(await renderLetters([{ ...letterOf("finding"), to }]));
    const exposed = exposedBox(NUMBER_TEN, FOLD);
    const shown = pdf.words(1).filter((word) => touches(word, exposed));
    const wanted = to.flatMap((line) => line.split(" "));
    expect(shown.map(({ text }) => text)).toEqual(wanted);
    expect(shown.filter((word) => !inside(word, box))).toEqual([]);
  }
});

test("renderLetters() refuses an address line that no window shows, in words", async () => {
  const to = [`${"W".repeat(60)}`, "12 FENNEL ROW", "QUILLHAVEN WA 98000"];
  await expect(renderLetters([{ ...letterOf("finding"), to }])).rejects.toThrow(
    /too long for the envelope’s window/,
  );
});

test("renderLetters() gives the same bytes for the same letters", async () => {
  const once = await renderLetters([letterOf("proposed-split")]);
  const again = await renderLetters([letterOf("proposed-split")]);
  expect(Buffer.from(once).equals(Buffer.from(again))).toBe(true);
});

test("renderLetters() dates the document by the letter and names it in its title", async () => {
  const info = readPdf(await renderLetters([letterOf("finding")])).info();
  expect(info["CreationDate"]).toContain("Nov 25");
  expect(info["Title"]).toContain("18 Fennel Row");
});

test("renderLetters() prints the reader's amount and the slip's boxes", async () => {
  const text = readPdf(await renderLetters([letterOf("proposed-split")])).text();
  expect(text).toContain("$7,200.00");
  expect(text).toContain("☐");
  expect(text).not.toContain("$5,683.34");
});

test("renderLetters() throws where no letter is given", async () => {
  await expect(renderLetters([])).rejects.toThrow("none given");
});

/** Body lines of each page, without what stands on every page. */
function bodies(pdf: ReturnType<typeof readPdf>): string[][] {
  return Array.from({ length: Number(pdf.info()["Pages"]) }, (_, at) =>
    pdf
      .text(at + 1)
      .split("\n")
      .map((line) => line.trim())
      .filter((line) => line !== "" && !/AGNIESZKA|Page \d+ of|Bellwether.*BELLWDS/.test(line)),
  );
}

test("renderLetters() leaves no signature alone on a page, and no head of a table without a row", async () => {
  for (const lines of [0, 3, 6, 9, 12, 15, 18]) {
    const ownWords = Array.from({ length: lines }, () => "A line of the office’s own.").join(
      "\n\n",
    );
    const letters = [letterOf("close-out", { ownWords }), letterOf("finding", { ownWords })];
    for (const letter of letters) {
      const pages = bodies(readPdf(await renderLetters([letter])));
      for (const page of pages) {
        expect(page[0], `${letter.kind} with ${lines} lines`).not.toMatch(/^Sincerely/);
        expect(page.at(-1), `${letter.kind} with ${lines} lines`).not.toMatch(/^Mark .*Side/);
      }
    }
  }
});
