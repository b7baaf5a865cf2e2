import { beforeAll, describe, expect, test, vi } from "vitest";
import { renderAccounts } from "#lib/documents/account-document.tsx";
import { renderLetters } from "#lib/documents/render-letters.tsx";
import { renderPacket } from "#lib/documents/render-packet.tsx";
import { renderStatements } from "#lib/documents/statement-document.tsx";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { LETTER_KINDS, type LetterKind } from "#lib/domain/facts/notice.ts";
import type { Report } from "#lib/domain/findings/report.ts";
import { composePacket } from "#lib/domain/packet/compose.ts";
import { accountPapers } from "#lib/domain/paper/account-papers.ts";
import { composeLetter } from "#lib/domain/paper/compose.ts";
import { recipientsOf } from "#lib/domain/paper/recipients.ts";
import { statementOf, statementPlaces, statementsOf } from "#lib/domain/paper/statement.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { LANGUAGES, type Language } from "#lib/domain/say/language.ts";
import { demoLines } from "#tests/support/demo.ts";
import { aNotice, anEvent } from "#tests/support/file.ts";
import { readPdf } from "#tests/support/pdf.ts";

// How many sheets the papers of the example office take, and of a made-up line beside it: two owners
// of one house, a tenant who reads Spanish, a split among six.

/** Rendering is slow where other work runs beside it. */
vi.setConfig({ testTimeout: 240_000, hookTimeout: 240_000 });

const TODAY = "2026-11-25";
const REPLY_BY = "2026-12-09";

let demo: Awaited<ReturnType<typeof demoLines>>;

beforeAll(async () => {
  demo = await demoLines();
});

/** The alley with every tie-in owned, six to share, and a rule chosen. */
function sixShare(file: LineFile): LineFile {
  const owners: Readonly<Record<string, string>> = {
    T1: "fr-12",
    T2: "fr-r11",
    T3: "fr-14",
    T4: "fr-16",
    T5: "fr-18",
    T6: "fr-18",
    T7: "fr-20",
  };
  const [owner] = file.parties;
  const [role] = file.roles;
  if (owner === undefined || role === undefined) throw new Error("The alley has nobody");
  const settled: LineFile = {
    ...file,
    tieIns: file.tieIns.map((each) => ({
      ...each,
      propertyId: owners[each.label] ?? null,
      ownerAccepted: true,
    })),
    properties: file.properties.map((each) =>
      each.id === "fr-r11" ? { ...each, stake: "connected" as const } : each,
    ),
    parties: [
      ...file.parties.map((each) =>
        each.id === "fr-p7" ? { ...each, language: "es" as const } : each,
      ),
      { ...owner, id: "second-owner", name: "Otto Brandvold" },
    ],
    roles: [...file.roles, { ...role, id: "second-role", partyId: "second-owner" }],
    options: [],
    scope: file.scope
      .filter(({ optionId }) => optionId !== "fr-dig")
      .map((each) => ({ ...each, optionId: null })),
  };
  const outcome = reportOn(settled, TODAY).splits.find(
    ({ choice }) => choice.rule === "portion-used",
  );
  if (outcome === undefined || outcome.refusal !== null) throw new Error("No split by portion");
  const { choice, total, basis, shares } = outcome;
  const split = {
    ...choice,
    id: "six",
    optionId: null,
    sentAt: null,
    number: 1,
    total,
    basis,
    reason: "Each foot is paid by those whose sewage flows through it.",
    chosenOn: "2026-11-20",
    chosenBy: "Ruth Lindqvist",
    shares: shares.map(({ propertyId, tieInId, amount, recoverable }) => ({
      propertyId,
      tieInId,
      amount,
      recoverable,
    })),
  };
  return { ...settled, splits: [split] };
}

async function lettersOf(file: LineFile, report: Report, kind: LetterKind, language: Language) {
  const pages: number[] = [];
  const all = recipientsOf(file, report, kind);
  for (const { partyId, propertyId, tieInId, splitId } of [...all.slice(0, 1), ...all.slice(-1)]) {
    const about = { kind, partyId, propertyId, tieInId, splitId, language, replyBy: REPLY_BY };
    const letter = composeLetter({
      file,
      report,
      office: demo.office,
      notice: aNotice("n", about),
    });
    pages.push(pagesOf(await renderLetters([letter])));
  }
  return pages;
}

function pagesOf(bytes: Uint8Array): number {
  return Number(readPdf(bytes).info()["Pages"]);
}

describe("a letter is two sheets at most", () => {
  test.each(LANGUAGES)("of every kind in the example office, in %s", async (language) => {
    for (const file of [demo.fennel, demo.ropewalk, demo.tollgate]) {
      const report = reportOn(file, TODAY);
      for (const kind of LETTER_KINDS) {
        const pages = await lettersOf(file, report, kind, language);
        expect(Math.max(0, ...pages), `${kind}, ${file.line.name}`).toBeLessThanOrEqual(2);
      }
    }
  });

  test.each(LANGUAGES)("where six share, in %s", async (language) => {
    const file = sixShare(demo.fennel);
    const report = reportOn(file, TODAY);
    for (const kind of ["finding", "proposed-split", "share-demand", "entry-consent"] as const) {
      const pages = await lettersOf(file, report, kind, language);
      expect(pages.length, kind).toBeGreaterThan(0);
      expect(Math.max(...pages), kind).toBeLessThanOrEqual(2);
    }
  });
});

test.each(LANGUAGES)(
  "a notice of a few words is one page, with its reply slip, in %s",
  async (language) => {
    const back = anEvent("b", { event: "drains-back", on: TODAY, at: "11:40" });
    for (const [kind, from] of [
      ["drains-back", demo.fennel],
      ["invoice-cover", demo.ropewalk],
    ] as const) {
      const file = { ...from, events: [...from.events, back] };
      const pages = await lettersOf(file, reportOn(file, TODAY), kind, language);
      expect(pages.length, kind).toBeGreaterThan(0);
      expect(Math.max(...pages), kind).toBe(1);
    }
  },
);

test("what is asked, and by when, stands in the first half page", async () => {
  const file = sixShare(demo.fennel);
  const report = reportOn(file, TODAY);
  for (const kind of ["finding", "proposed-split", "entry-consent"] as const) {
    const [to] = recipientsOf(file, report, kind);
    if (to === undefined) throw new Error(`Nobody gets a ${kind}`);
    const notice = aNotice("n", { ...to, kind, replyBy: REPLY_BY });
    const letter = composeLetter({ file, report, office: demo.office, notice });
    const words = readPdf(await renderLetters([letter])).words(1);
    const asked = words.filter(({ text, left }) => text === "December" && left < 400);
    expect(Math.min(...asked.map(({ bottom }) => bottom)), kind).toBeLessThan(792 / 2);
  }
});

test("no heading is torn from the table that it heads", async () => {
  const file = sixShare(demo.fennel);
  const report = reportOn(file, TODAY);
  for (const to of recipientsOf(file, report, "proposed-split")) {
    const notice = aNotice("n", {
      ...to,
      kind: "proposed-split",
      language: "en",
      replyBy: REPLY_BY,
    });
    const letter = composeLetter({ file, report, office: demo.office, notice });
    const pdf = readPdf(await renderLetters([letter]));
    const page = [1, 2].find((each) => pdf.text(each).includes("step by step")) ?? 0;
    expect(pdf.text(page), to.propertyId ?? "").toMatch(/step by step\s+Work, in feet/);
  }
});

test("a statement is one page in the example office, and one sheet, front and back, where six share", async () => {
  for (const file of [demo.ropewalk, demo.tollgate]) {
    const input = { file, report: reportOn(file, TODAY), office: demo.office };
    for (const propertyId of statementPlaces(file)) {
      for (const statement of statementsOf(input, [propertyId]))
        expect(pagesOf(await renderStatements([statement])), propertyId).toBe(1);
    }
  }
  const file = sixShare(demo.fennel);
  const input = { file, report: reportOn(file, TODAY), office: demo.office };
  expect(statementPlaces(file)).toHaveLength(6);
  for (const propertyId of statementPlaces(file)) {
    const statement = statementOf({ ...input, propertyId });
    if (statement === null) throw new Error(`No statement for ${propertyId}`);
    expect(pagesOf(await renderStatements([statement])), propertyId).toBeLessThanOrEqual(2);
  }
});

test("the packet of the example office’s alley is seven pages, with every sheet that is asked for", async () => {
  const file = demo.fennel;
  const packet = composePacket({ file, report: reportOn(file, TODAY), office: demo.office });
  const pdf = readPdf(await renderPacket(packet, new Map()));
  expect(Number(pdf.info()["Pages"])).toBeLessThanOrEqual(7);
  const [cover = ""] = [pdf.text(1)];
  expect(cover).toContain("Requirements of Quillhaven Sewer District");
  for (const [index, { title }] of packet.sheets.entries()) {
    const page = new RegExp(
      `${index + 1}\\s+${title.slice(0, 24)}.*?\\s(\\d+)(?:–\\d+)?(?:\\s|$)`,
      "m",
    ).exec(cover);
    // The plan view stands before the drawing along the pipe.
    const first = Number(page?.[1]);
    expect(`${pdf.text(first)}${pdf.text(Math.min(first + 1, 7))}`).toContain(title.slice(0, 24));
  }
});

test("an invoice is one page", async () => {
  const file = demo.ropewalk;
  const input = { file, report: reportOn(file, TODAY), office: demo.office, today: TODAY };
  const invoices = file.ledger.filter(({ kind }) => kind === "invoice").map(({ id }) => id);
  expect(invoices.length).toBeGreaterThan(0);
  for (const paper of accountPapers(input, invoices))
    expect(pagesOf((await renderAccounts([paper])).bytes)).toBe(1);
});
