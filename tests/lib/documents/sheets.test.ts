import { beforeAll, describe, expect, test, vi } from "vitest";
import { drawLetter } from "#lib/documents/draw-letter.tsx";
import { readyFonts } from "#lib/documents/fonts.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { LETTER_KINDS, type LetterKind } from "#lib/domain/facts/notice.ts";
import { composeLetter } from "#lib/domain/paper/compose.ts";
import { recipientsOf } from "#lib/domain/paper/recipients.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { LANGUAGES, type Language } from "#lib/domain/say/language.ts";
import { demoLines } from "#tests/support/demo.ts";
import { aNotice, anEvent, aSpillStep } from "#tests/support/file.ts";
import { readPdf } from "#tests/support/pdf.ts";
import { sixShare } from "#tests/support/six-share.ts";

// How many sheets the letters of the example office take, and of a made-up line beside it: two
// owners of one house, a tenant who reads Spanish, a split among six. Each letter is drawn once and
// judged on every count.

/** Rendering is slow where other work runs beside it. */
vi.setConfig({ testTimeout: 600_000, hookTimeout: 600_000 });

const TODAY = "2026-11-25";
const REPLY_BY = "2026-12-09";
const SHEET = 792;
/** Where the words of a page end, above its footer. */
const FOOT = SHEET - 55;

let office: Awaited<ReturnType<typeof demoLines>>["office"];
let lines: readonly { readonly file: LineFile; readonly kinds: readonly LetterKind[] }[];

const ON = "2026-11-24";
const SPILL = [
  aSpillStep("a", { kind: "known", on: ON, at: "08:10", place: "the alley behind 16 Fennel Row" }),
  aSpillStep("b", { kind: "crew-on-site", on: ON, at: "08:45" }),
  aSpillStep("c", { kind: "flow-stopped", on: ON, at: "09:05" }),
  aSpillStep("d", {
    kind: "reported",
    on: ON,
    at: "09:20",
    place: "Quillhaven Health",
    number: "8",
  }),
  aSpillStep("e", { kind: "cleaned-up", on: ON, at: "11:30" }),
];

const MEETING = {
  ...{ id: "m", on: "2026-12-16", at: "18:30", until: "20:00", note: "" },
  place: "Quillhaven Library, Room 2",
};
const CLOSED_STREET = anEvent("s", {
  ...{
    event: "street-closed",
    on: "2026-12-14",
    lastOn: "2026-12-16",
    at: "07:00",
    until: "17:00",
  },
  reference: "the north side of the street from No. 12 to No. 20",
});

const SHUTDOWN = anEvent("d", {
  ...{ event: "drains-paused", on: "2026-12-14", at: "09:00", until: "15:30" },
});

const SHARED: readonly LetterKind[] = [
  "finding",
  "proposed-split",
  "share-demand",
  "entry-consent",
];

beforeAll(async () => {
  const demo = await demoLines();
  await readyFonts();
  office = demo.office;
  const back = anEvent("b", { event: "drains-back", on: TODAY, at: "11:40" });
  const fennel = {
    ...{ ...demo.fennel, spillSteps: SPILL, meetings: [MEETING] },
    events: [...demo.fennel.events, back, CLOSED_STREET],
  };
  lines = [
    ...[fennel, demo.ropewalk, demo.tollgate].map((file) => ({
      file: { ...file, events: [...file.events, SHUTDOWN] },
      kinds: LETTER_KINDS,
    })),
    { file: sixShare(demo.fennel, TODAY), kinds: SHARED },
  ];
});

interface Judged {
  readonly of: string;
  readonly pages: number;
  /** How far down the words reach, by page, in points from the top. */
  readonly reach: readonly number[];
  readonly text: readonly string[];
  /** Where on the first page the day stands by which an answer is asked, left of the window. */
  readonly asked: number;
}

async function judged(kind: LetterKind, language: Language): Promise<readonly Judged[]> {
  const found: Judged[] = [];
  for (const { file } of lines.filter(({ kinds }) => kinds.includes(kind))) {
    const report = reportOn(file, TODAY);
    const all = recipientsOf(file, report, kind);
    const whose = file.splits.some(({ id }) => id === "six") && kind === "proposed-split";
    const some = whose ? all : [...new Set([...all.slice(0, 1), ...all.slice(-1)])];
    for (const { partyId, propertyId, tieInId, splitId } of some) {
      const about = { kind, partyId, propertyId, tieInId, splitId, language, replyBy: REPLY_BY };
      const notice = aNotice("n", about);
      const letter = composeLetter({ file, report, office, notice });
      const [drawn] = await drawLetter({ letter, enclosed: null }, new Map());
      if (drawn === undefined) throw new Error("Nothing was drawn");
      const of = `${kind}, ${file.line.name}, ${letter.to[0]}`;
      found.push({ of, ...read(drawn.bytes, drawn.document.getPageCount()) });
    }
  }
  return found;
}

function read(bytes: Uint8Array, pages: number): Omit<Judged, "of"> {
  const pdf = readPdf(bytes);
  const words = Array.from({ length: pages }, (_none, at) => pdf.words(at + 1));
  const day = words[0]?.filter(
    ({ text, left }) => /^(December|diciembre)$/.test(text) && left < 400,
  );
  return {
    pages,
    reach: words.map((page) =>
      Math.max(...page.filter(({ bottom }) => bottom < FOOT).map(({ bottom }) => bottom)),
    ),
    text: words.map((page) => page.map(({ text }) => text).join(" ")),
    asked: Math.min(...(day ?? []).map(({ bottom }) => bottom)),
  };
}

const CASES = LANGUAGES.flatMap((language) =>
  LETTER_KINDS.map((kind) => [kind, language] as const),
);

/** What is said in a few words, with its reply slip. */
const OF_ONE_PAGE: readonly LetterKind[] = [
  ...(["drains-back", "invoice-cover", "change-order", "landlord-entry"] as const),
  ...(["spill", "meeting", "street-parking"] as const),
  ...(["drain-pause", "test-visit", "joint-agreement"] as const),
];
/** What asks for something that has a day. */
const ASKING: readonly LetterKind[] = ["finding", "proposed-split", "entry-consent"];

function isWarned(page: string): boolean {
  return /Sewage carries disease|A gas pipe may|transmiten enfermedades|tubería de gas puede/.test(
    page,
  );
}

const CALCULATION = /The calculation, step by step|El cálculo, paso a paso/;
const CALCULATED = /step by step\s+Work, in feet|paso a paso\s+Obra, en pies/;
/** How the note under the calculation goes on. */
const ROUNDED: Readonly<Record<Language, string>> = {
  ...{ en: "Amounts are rounded to the cent", es: "Los montos se redondean al centavo" },
};
/** The sum of the reader’s own steps, and the note below it on the same page. */
const SUMMED = /\$[\d,.]+ (× [\d/.%]+: .{0,120})?(Amounts are|Los montos se)/;

describe("a letter is two sheets at most, none of them half empty", () => {
  test.each(CASES)("%s, in %s", async (kind, language) => {
    for (const letter of await judged(kind, language)) {
      expect(letter.pages, letter.of).toBeLessThanOrEqual(OF_ONE_PAGE.includes(kind) ? 1 : 2);
      expectFull(letter);
      // What is asked, and by when, stands in the first half page.
      if (ASKING.includes(kind)) expect(letter.asked, letter.of).toBeLessThan(SHEET / 2);
      expectCalculation(letter, language);
      // What is dangerous about a spill stands together.
      if (kind === "spill") expect(letter.text.filter(isWarned).length, letter.of).toBe(1);
    }
  });
});

/** No heading is torn from the table that it heads, no table from the note that explains its signs. */
function expectCalculation({ of, text }: Judged, language: Language): void {
  const begun = text.find((page) => CALCULATION.test(page));
  if (begun === undefined) return;
  expect(begun, of).toMatch(CALCULATED);
  const noted = text.find((page) => page.includes(ROUNDED[language]));
  if (noted !== undefined) expect(noted, of).toMatch(SUMMED);
}

/** A page before another is two thirds full, the last one half: no signature stands there alone. */
function expectFull({ of, pages, reach }: Judged): void {
  for (const [at, down] of reach.entries()) {
    const least = at < pages - 1 ? 0.65 : 0.5;
    expect(down / SHEET, `${of}, page ${at + 1}`).toBeGreaterThan(least);
  }
}

test("a letter in two languages has no page half empty, and its cautions together", async () => {
  const [{ file } = { file: null }] = lines;
  if (file === null) throw new Error("No line");
  const report = reportOn(file, TODAY);
  const [to] = recipientsOf(file, report, "work-start");
  if (to === undefined) throw new Error("Nobody to tell");
  const about = { ...to, kind: "work-start", language: "es", alsoIn: "en" } as const;
  const letter = composeLetter({ file, report, office, notice: aNotice("n", about) });
  const [drawn] = await drawLetter({ letter, enclosed: null }, new Map());
  if (drawn === undefined) throw new Error("Nothing was drawn");
  const { pages, reach, text } = read(drawn.bytes, drawn.document.getPageCount());
  expect(pages).toBe(4);
  expectFull({ of: "Spanish", pages: 2, reach: reach.slice(0, 2), text, asked: 0 });
  expectFull({ of: "English", pages: 2, reach: reach.slice(2), text, asked: 0 });
  const warned = text.filter((page) => /Open trench|A gas pipe may run/.test(page));
  expect(warned).toHaveLength(1);
});

test.each([
  ["close-out", 1, 4],
  ["test-visit", 0, 2],
  ["drain-pause", 0, 2],
  ["joint-agreement", 0, 2],
] as const)("%s in two languages is no longer than in one and one", async (kind, line, most) => {
  const { file } = lines[line] ?? {};
  if (file === undefined) throw new Error("No line");
  const report = reportOn(file, TODAY);
  const [to] = recipientsOf(file, report, kind);
  if (to === undefined) throw new Error("Nobody to tell");
  const about = { ...to, kind, language: "es", alsoIn: "en", replyBy: REPLY_BY } as const;
  const letter = composeLetter({ file, report, office, notice: aNotice("n", about) });
  const [drawn] = await drawLetter({ letter, enclosed: null }, new Map());
  if (drawn === undefined) throw new Error("Nothing was drawn");
  const { pages, text } = read(drawn.bytes, drawn.document.getPageCount());
  expect(pages).toBe(most);
  const cautions =
    /Not legal advice|How far this can|A gas pipe may run|About the dye|Sewage carries/;
  expect(text.filter((page) => cautions.test(page))).toHaveLength(1);
});

test("every kind that a line of the example office can send was among them", async () => {
  const drawn = new Set<LetterKind>();
  for (const { file, kinds } of lines)
    for (const kind of kinds)
      if (recipientsOf(file, reportOn(file, TODAY), kind).length > 0) drawn.add(kind);
  // Nobody of a public body is a party to these lines, and no statute asks for a paper on them.
  const others = LETTER_KINDS.filter((kind) => !drawn.has(kind)).toSorted();
  expect(others).toEqual(["authority-response", "statutory-notice"]);
});
