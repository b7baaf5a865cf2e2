import { expect, test } from "vitest";
import { renderClerkSheet } from "#lib/documents/clerk-sheet.tsx";
import { feeSheet } from "#lib/domain/paper/fee-sheet.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { aFee, aFile, anAuthority, anOffice, aPermit } from "#tests/support/file.ts";
import { readPdf } from "#tests/support/pdf.ts";
import { aFeeEntry } from "#tests/support/permit.ts";

const FILE = aFile({
  authority: anAuthority({ fees: [aFee("base", { title: "Repair", amount: 28_000 })] }),
  permits: [aPermit("permit", { number: "SS-1" }), aPermit("other", { kind: "street-use" })],
  permitFees: [
    aFeeEntry("back", { kind: "refunded", amount: 3_000, on: "2026-11-24", receipt: "R-9" }),
    aFeeEntry("paid", { receipt: "R-55-0102", by: "Dana Okafor, check 2214", feeId: "base" }),
    aFeeEntry("bare", { amount: 4_000, on: "2026-11-22" }),
    aFeeEntry("elsewhere", { permitId: "other", amount: 99_900 }),
  ],
});

function sheetOf(permitId: string) {
  return feeSheet(
    { file: FILE, office: anOffice(), report: reportOn(FILE, "2026-11-25") },
    permitId,
  );
}

test("feeSheet() says of each amount when it passed, for what, by which receipt and who paid", () => {
  const tables = (sheetOf("permit")?.blocks ?? []).flatMap((block) =>
    block.kind === "table" ? [block.rows] : [],
  );
  expect(tables[0]).toEqual([
    ["November 20, 2026", "paid", "Repair", "R-55-0102", "Dana Okafor, check 2214", "–", "$310.00"],
    ["November 22, 2026", "paid", "all fees", "–", "–", "–", "$40.00"],
    ["November 24, 2026", "returned to us", "all fees", "R-9", "–", "–", "$30.00"],
  ]);
  expect(sheetOf("permit")?.about).toContainEqual(["Paid, less what came back", "$320.00"]);
  expect(sheetOf("gone")).toBe(null);
});

test("feeSheet() names a payment without receipt number or payer before all else", () => {
  expect(sheetOf("permit")?.blocks[0]).toMatchObject({
    kind: "caution",
    text: "$40.00 on November 22, 2026: receipt number and who paid.",
  });
});

test("renderClerkSheet() prints the fees of one permit as a sound PDF", async () => {
  const sheet = sheetOf("permit");
  if (sheet === null) throw new Error("no sheet");
  const pdf = readPdf(await renderClerkSheet(sheet));
  pdf.check();
  for (const words of ["Permit fees paid", "R-55-0102", "$280.00", "is what proves a payment"])
    expect(pdf.text().replaceAll(/\s+/g, " ")).toContain(words);
  expect(pdf.text()).not.toContain("$999.00");
});
