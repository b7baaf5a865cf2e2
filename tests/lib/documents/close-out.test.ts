import { expect, test } from "vitest";
import { renderPacket } from "#lib/documents/render-packet.tsx";
import { composeAsBuilt } from "#lib/domain/packet/as-built.ts";
import { composeCloseOut } from "#lib/domain/packet/close-out.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { demoLines } from "#tests/support/demo.ts";
import { readPdf } from "#tests/support/pdf.ts";

test("composeCloseOut() is one document with an index that leads to every sheet, and says what is open", async () => {
  const { office, tollgate, ropewalk } = await demoLines();
  const report = reportOn(tollgate, "2026-11-25");
  const packet = composeCloseOut({ file: tollgate, report, office });
  expect(packet.missing).toEqual([]);
  const pdf = readPdf(await renderPacket(packet, new Map()));
  pdf.check();
  const pages = Number(pdf.info()["Pages"]);
  const [first] = [pdf.text(1)];
  expect(first).toContain("Nothing is open");
  expect(first).toContain("For the file");
  const titles = [
    "How the file stands",
    "As-built",
    "Ledger",
    "Proof of notice",
    "History of the file",
  ];
  for (const title of titles) {
    const [, page = "0"] = new RegExp(`${title}\\s+(\\d+)`).exec(first ?? "") ?? [];
    expect(Number(page), title).toBeGreaterThan(1);
    expect(Number(page)).toBeLessThanOrEqual(pages);
    expect(pdf.text(Number(page))).toContain(title);
  }
  // No page but the last is nearly empty, and no day is written as a machine writes it.
  for (let page = 2; page < pages; page += 1) {
    const words = pdf.words(page);
    if (!/As-built drawing|Plan view/.test(pdf.text(page)))
      expect(words.length, `page ${page}`).toBeGreaterThan(120);
  }
  expect(pdf.text()).not.toMatch(/\d{4}-\d\d-\d\d/);
  const text = Array.from({ length: pages }, (_, at) => pdf.text(at + 1)).join("\n");
  expect(text).toContain("SS-26-0402");
  expect(text).toContain("replaced");
  for (const { amount } of tollgate.ledger.filter(({ kind }) => kind === "payment"))
    expect(text).toContain((amount / 100).toLocaleString("en-US", { minimumFractionDigits: 2 }));

  const open = composeCloseOut({
    file: ropewalk,
    report: reportOn(ropewalk, "2026-11-25"),
    office,
  });
  expect(open.missing.join(" ")).toContain("Not final: side sewer permit");
  // Work that nobody recorded as done is told once.
  expect(open.missing.join(" ").match(/recorded as done/g)).toHaveLength(1);
});

test("an as-built has a place to sign on its cover, and nobody’s name in it", async () => {
  const { office, tollgate } = await demoLines();
  const packet = composeAsBuilt({
    file: tollgate,
    report: reportOn(tollgate, "2026-11-25"),
    office,
  });
  const cover = readPdf(await renderPacket(packet, new Map())).text(1);
  expect(cover).toMatch(/Prepared by: name and signature\s+Date/);
});
