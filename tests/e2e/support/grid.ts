import { expect, type Locator, type Page } from "@playwright/test";

/** A table on the page, by what it says it is. */
export function table(page: Page, label: string): Locator {
  return page.getByRole("grid", { name: label });
}

/** Types one new row into a table, cell by cell, the way a person does: text, tab, text, tab. */
export async function typeRow(
  page: Page,
  grid: Locator,
  { word, cells }: { word: string; cells: Readonly<Record<string, string>> },
): Promise<void> {
  const row = (await grid.locator("tr[data-row-id]").count()) + 1;
  const [first] = Object.keys(cells);
  let at = `new ${word}`;
  for (const [title, text] of Object.entries(cells)) {
    const cell = grid.getByLabel(`${title}, ${at}`, { exact: true });
    if (!(await hasFocus(cell, title === first ? 0 : 500))) await cell.click();
    await page.keyboard.type(text);
    await page.keyboard.press("Tab");
    at = `row ${row}`;
  }
}

/** Whether the key before led here, as soon as it shows; a person looks, too, before they press. */
async function hasFocus(cell: Locator, patience: number): Promise<boolean> {
  const focused = () => cell.evaluate((input) => input === document.activeElement);
  if (patience === 0) return await focused();
  return await expect(cell)
    .toBeFocused({ timeout: patience })
    .then(() => true, focused);
}

/** Pastes rows out of a spreadsheet into a table's empty row. */
export async function pasteRows(
  page: Page,
  grid: Locator,
  { first, rows }: { first: string; rows: readonly (readonly string[])[] },
): Promise<void> {
  await page.evaluate(
    (text) => navigator.clipboard.writeText(text),
    rows.map((row) => row.join("\t")).join("\n"),
  );
  await grid.getByLabel(first, { exact: true }).click();
  await page.keyboard.press("ControlOrMeta+V");
}

/** Waits until a table says that everything in it is kept. */
export async function saved(page: Page, label: string): Promise<void> {
  const box = table(page, label).locator(
    "xpath=ancestor::*[.//button[normalize-space()='Save now']][1]",
  );
  const save = box.getByRole("button", { name: "Save now" });
  await save.click();
  await expect(box.locator('p[role="status"]')).toHaveText(/^(Saved \d|All saved)/);
}
