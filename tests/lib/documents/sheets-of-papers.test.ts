import { beforeAll, expect, test, vi } from "vitest";
import { renderAccounts } from "#lib/documents/account-document.tsx";
import { renderAgreements } from "#lib/documents/agreement-document.tsx";
import { renderDeclarations } from "#lib/documents/declaration-document.tsx";
import { renderPacket } from "#lib/documents/render-packet.tsx";
import { renderStatements } from "#lib/documents/statement-document.tsx";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { composePacket } from "#lib/domain/packet/compose.ts";
import { accountPapers } from "#lib/domain/paper/account-papers.ts";
import { readingCopy } from "#lib/domain/paper/agreement-paper.ts";
import { declarationsOf } from "#lib/domain/paper/declaration.ts";
import { statementOf, statementPlaces, statementsOf } from "#lib/domain/paper/statement.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { drawPlans } from "#lib/domain/strip/draw-plan.ts";
import { PLAN_FRAME } from "#lib/domain/strip/plan-scale.ts";
import { demoLines } from "#tests/support/demo.ts";
import { anAgreement } from "#tests/support/file.ts";
import { readPdf } from "#tests/support/pdf.ts";
import { coverings, crossings } from "#tests/support/plan-words.ts";
import { sixShare } from "#tests/support/six-share.ts";

// How many sheets the other papers of the example office take: statements, invoices, agreements,
// declarations, door hangers, and what goes to the authority.

/** Rendering is slow where other work runs beside it. */
vi.setConfig({ testTimeout: 600_000, hookTimeout: 600_000 });

const TODAY = "2026-11-25";

let demo: Awaited<ReturnType<typeof demoLines>>;
let six: LineFile;

beforeAll(async () => {
  demo = await demoLines();
  six = sixShare(demo.fennel, TODAY);
});

function pagesOf(bytes: Uint8Array): number {
  return Number(readPdf(bytes).info()["Pages"]);
}

function factsOf(file: LineFile) {
  return { file, report: reportOn(file, TODAY), office: demo.office, today: TODAY };
}

test("a statement is one page in the example office", async () => {
  for (const file of [demo.ropewalk, demo.tollgate]) {
    const facts = factsOf(file);
    for (const propertyId of statementPlaces(file))
      for (const statement of statementsOf(facts, [propertyId]))
        expect(pagesOf(await renderStatements([statement])), propertyId).toBe(1);
  }
});

test("a statement is one sheet, front and back, where six share", async () => {
  const facts = factsOf(six);
  expect(statementPlaces(six)).toHaveLength(6);
  for (const propertyId of statementPlaces(six)) {
    const statement = statementOf({ ...facts, propertyId });
    if (statement === null) throw new Error(`No statement for ${propertyId}`);
    expect(pagesOf(await renderStatements([statement])), propertyId).toBeLessThanOrEqual(2);
  }
});

test("the packet of the example office’s alley is seven pages, with every sheet that is asked for", async () => {
  const packet = composePacket(factsOf(demo.fennel));
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

test("on the example office’s plan views no words lie over others, or over the line to them", () => {
  for (const file of [demo.fennel, demo.ropewalk, demo.tollgate])
    for (const allowed of [[], [10, 20]])
      for (const { shapes, sheet } of drawPlans(file, reportOn(file, TODAY), {
        frame: PLAN_FRAME,
        allowed,
      })) {
        expect(crossings(shapes), `${file.line.name}, sheet ${sheet}`).toEqual([]);
        expect(coverings(shapes), `${file.line.name}, sheet ${sheet}`).toEqual([]);
      }
});

test("an invoice is one page", async () => {
  const invoices = demo.ropewalk.ledger.filter(({ kind }) => kind === "invoice");
  expect(invoices.length).toBeGreaterThan(0);
  for (const paper of accountPapers(
    factsOf(demo.ropewalk),
    invoices.map(({ id }) => id),
  ))
    expect(pagesOf((await renderAccounts([paper])).bytes)).toBe(1);
});

test("a statement of account is one page", async () => {
  for (const { id } of demo.ropewalk.properties)
    for (const paper of accountPapers(factsOf(demo.ropewalk), [id]))
      expect(pagesOf((await renderAccounts([paper])).bytes), id).toBe(1);
});

test("a declaration is signed on a sheet that has one of its acts, under their titles", async () => {
  const ids = demo.fennel.deliveries.map(({ id }) => id);
  const declared = declarationsOf(factsOf(demo.fennel), ids);
  expect(declared.length).toBeGreaterThan(0);
  for (let many = 1; many <= ids.length; many += 1) {
    const some = declarationsOf(factsOf(demo.fennel), ids.slice(0, many)).slice(0, 1);
    const pdf = readPdf((await renderDeclarations(some, new Map())).bytes);
    for (let page = 1; page <= Number(pdf.info()["Pages"]); page += 1) {
      const text = pdf.text(page);
      expect(text, `${many} acts, page ${page}`).toMatch(/When\s+What was done\s+To\s+Letter/);
      expect(text, `${many} acts, page ${page}`).toContain("Mailed by certified mail");
    }
  }
});

test("a reading copy keeps within its frame", async () => {
  const agreement = anAgreement("a", {
    shares: demo.fennel.properties.slice(0, 3).map(({ id }) => ({ propertyId: id, parts: 1 })),
  });
  const parties = demo.fennel.parties.map((each) => ({ ...each, language: "es" as const }));
  const copy = readingCopy(
    factsOf({ ...demo.fennel, parties, agreements: [agreement] }),
    agreement,
  );
  if (copy === null) throw new Error("No copy");
  const pdf = readPdf(await renderAgreements([copy]));
  const margin = 612 - 72 - 8;
  const top = pdf.words(1).filter(({ bottom }) => bottom < 130);
  expect(top.length).toBeGreaterThan(20);
  expect(Math.max(...top.map(({ right }) => right))).toBeLessThanOrEqual(margin);
});
