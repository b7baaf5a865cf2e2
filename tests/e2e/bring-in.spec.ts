import { expect, test } from "@playwright/test";
import { DEMO_OFFICE } from "../playwright.config.ts";
import { saved, table, typeRow } from "./support/grid.ts";
import { open, reopen } from "./support/open.ts";
import { openNewLine, signIn } from "./support/sign-in.ts";

// A file of record entries: looked over first, what is wrong named beside its cell, nothing lost.

const CARD = `Label;Dist. (ft);Side;Dia;Read by\r
House 21;18.5;left;4;K. Mori\r
House 23;thirty;right;4;K. Mori\r
House 25;52;left;4;\r
`;

test.use({ baseURL: DEMO_OFFICE });

test("rows of a file are looked over, fixed and imported", async ({ page }) => {
  await signIn(page);
  const line = await openNewLine(page, "Yarrow Lane, 21 to 25");
  await open(page, `${line}/record`);
  await typeRow(page, table(page, "One record a line"), {
    word: "record",
    cells: { Kind: "card", Title: "Side sewer card", Number: "19" },
  });
  await saved(page, "One record a line");
  await reopen(page);
  await page
    .getByRole("link", { name: /^Import/ })
    .first()
    .click();
  await expect(page).toHaveURL(/bring-in/);

  const choose = page.locator('input[type="file"]');
  await choose.setInputFiles({
    name: "card.pdf",
    mimeType: "application/pdf",
    buffer: Buffer.from("%PDF-1.7\n"),
  });
  await expect(page.locator(".mend").filter({ hasText: /PDF/ })).toBeVisible();
  await choose.setInputFiles({ name: "card.csv", mimeType: "text/csv", buffer: Buffer.from(CARD) });
  await expect(page.getByRole("table", { name: "Rows ready to import" })).toContainText("House 25");
  const toFix = table(page, "Rows to fix");
  const bad = toFix.getByLabel(/^Distance, ft/).first();
  await expect(bad).toHaveValue("thirty");
  await expect(bad).toHaveAttribute("aria-invalid", "true");
  await bad.fill("30");
  await page.keyboard.press("Tab");
  // A column that no heading names is neither dropped nor guessed.
  const bring = page.getByRole("button", { name: /^Import 3/ });
  await expect(bring).toHaveAttribute("aria-disabled", "true");
  await expect(page.getByText("Choose above what one column is")).toBeVisible();
  await page.getByLabel("Read by import as").selectOption({ label: "Note" });
  await bring.click();
  await expect(page.getByText(/3 rows imported into/)).toBeVisible();
  await open(page, `${line}/record`);
  const entries = table(page, "One entry a line");
  await expect(entries.locator("tr[data-row-id]")).toHaveCount(3);
  await expect(entries.getByLabel("Note, row 2", { exact: true })).toHaveValue("K. Mori");
});
