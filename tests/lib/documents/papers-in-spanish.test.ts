import { beforeAll, expect, test, vi } from "vitest";
import { renderHangers } from "#lib/documents/render-hangers.tsx";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { doorHanger } from "#lib/domain/mailing/door-hanger.ts";
import { accountPapers } from "#lib/domain/paper/account-papers.ts";
import { composeLetter } from "#lib/domain/paper/compose.ts";
import { recipientsOf } from "#lib/domain/paper/recipients.ts";
import { statementOf, statementPlaces } from "#lib/domain/paper/statement.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { demoLines } from "#tests/support/demo.ts";
import { aNotice, anEvent } from "#tests/support/file.ts";
import { readPdf } from "#tests/support/pdf.ts";
import { sixShare } from "#tests/support/six-share.ts";

/** Rendering is slow where other work runs beside it. */
vi.setConfig({ testTimeout: 600_000, hookTimeout: 600_000 });

const TODAY = "2026-11-25";
/** A panel's width less its margin, in points. */
const EDGE = 264 - 20;

let demo: Awaited<ReturnType<typeof demoLines>>;

beforeAll(async () => {
  demo = await demoLines();
});

function inSpanish(file: LineFile): LineFile {
  return { ...file, parties: file.parties.map((party) => ({ ...party, language: "es" as const })) };
}

function factsOf(file: LineFile) {
  return { file, report: reportOn(file, TODAY), office: demo.office, today: TODAY };
}

test("a Spanish statement names each piece of work in Spanish and quotes what the office typed", () => {
  const facts = factsOf(inSpanish(sixShare(demo.fennel, TODAY)));
  for (const propertyId of statementPlaces(facts.file)) {
    const text = JSON.stringify(statementOf({ ...facts, propertyId }));
    expect(text).toContain("Apéndice");
    for (const { title } of facts.file.scope)
      expect(text.replaceAll(`«${title}»`, "")).not.toContain(`${title}, `);
    expect(text).not.toMatch(/[“”]|\.».\./);
  }
});

test("Spanish accounts quote in « »", () => {
  const facts = factsOf(inSpanish(demo.ropewalk));
  const of = facts.file.ledger.flatMap(({ id, kind }) => (kind === "invoice" ? [id] : []));
  const papers = accountPapers(facts, [...of, ...facts.file.properties.map(({ id }) => id)]);
  expect(papers.length).toBeGreaterThan(2);
  expect(JSON.stringify(papers)).not.toMatch(/[“”]/);
});

test("the words at the head of a door hanger keep within its panel", async () => {
  const shut = anEvent("p", {
    event: "drains-paused",
    on: "2026-12-02",
    at: "09:00",
    until: "15:30",
  });
  const file = { ...demo.fennel, events: [...demo.fennel.events, shut] };
  const facts = factsOf(file);
  const [to] = recipientsOf(file, facts.report, "drain-pause");
  if (to === undefined) throw new Error("Nobody to tell");
  const about = { ...to, kind: "drain-pause", language: "es", replyBy: null } as const;
  const letter = composeLetter({ ...facts, notice: aNotice("n", about) });
  const drawn = await renderHangers([doorHanger(letter)], { title: "Hangers", day: TODAY });
  const right = readPdf(drawn)
    .words(1)
    .map((word) => word.right);
  expect(right.length).toBeGreaterThan(30);
  expect(Math.max(...right)).toBeLessThanOrEqual(EDGE + 1);
});
