import { expect, test } from "@playwright/test";
import { DEMO_OFFICE } from "../playwright.config.ts";
import { saved, table, typeRow } from "./support/grid.ts";
import { open, reopen } from "./support/open.ts";
import { openNewLine, signIn } from "./support/sign-in.ts";

// An assessor's export becomes properties and people; who is there twice is merged, and parted again.

const EXPORT = `Parcel ID,Owner Name,Situs Address,Mail Address,Mail City State Zip
77-1,BRANDVOLD OTTILIE & EINAR,21 YARROW LN,C/O DUNMORE TAX PO BOX 118,QUILLHAVEN WA 98000
77-2,PENA JESUS ET UX,23 YARROW LN,23 YARROW LN,QUILLHAVEN WA 98000
77-3,WINFIELD FAMILY TRUST,25 YARROW LN,900 SIGNAL HILL RD,QUILLHAVEN ZZ 98000
,HALE NORA,,,
`;

test.use({ baseURL: DEMO_OFFICE });

test("an owner list is looked over, imported, and a duplicate merged and parted", async ({
  page,
}) => {
  await signIn(page);
  const line = await openNewLine(page, "Yarrow Lane, owners");
  await open(page, `${line}/who`);
  await typeRow(page, table(page, "One property a line"), {
    word: "property",
    cells: { "Street address": "19 Yarrow Lane" },
  });
  await saved(page, "One property a line");
  await reopen(page);
  await typeRow(page, table(page, "One person a line"), {
    word: "person",
    cells: { Name: "Jesús R. Peña", Role: "owner", Property: "19 Yarrow Lane" },
  });
  await saved(page, "One person a line");
  await reopen(page);
  await page.getByRole("link", { name: "Import a list of owners" }).click();
  await page.locator('input[type="file"]').setInputFiles({
    name: "export.csv",
    mimeType: "text/csv",
    buffer: Buffer.from(EXPORT),
  });
  await page.getByLabel(/^No column is “Order of names/).selectOption({ index: 1 });
  const ready = page.getByRole("table", { name: "Ready: properties and people" });
  await expect(ready).toContainText("Einar Brandvold, owner");
  await expect(ready).toContainText("wife, not named");
  await expect(ready).toContainText("Same name, written differently.");
  await page.getByRole("button", { name: /^Import 2/ }).click();
  await expect(page.getByText(/2 rows imported into/)).toBeVisible();

  await open(page, `${line}/who/duplicates`);
  const form = page.getByRole("form", { name: /same person\?/ });
  await form.getByLabel("They are").selectOption({ index: 1 });
  await form.getByRole("button", { name: "Save decision" }).click();
  await expect(page.getByText("No likely duplicate", { exact: true })).toBeVisible();
  await page.getByRole("button", { name: "Undo merge" }).click();
  await expect(page.getByText("1 likely duplicate to decide")).toBeVisible();
});
