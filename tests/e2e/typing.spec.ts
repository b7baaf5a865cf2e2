import AxeBuilder from "@axe-core/playwright";
import { expect, type Page, test } from "@playwright/test";
import { DEMO_OFFICE } from "../playwright.config.ts";
import { pasteRows, saved, table, typeRow } from "./support/grid.ts";
import { open, reopen } from "./support/open.ts";
import { openNewLine, signIn } from "./support/sign-in.ts";

// What is typed, pasted and pressed is what is meant, in a real browser.

test.use({ baseURL: DEMO_OFFICE, permissions: ["clipboard-read", "clipboard-write"] });

const ENTRIES = "One entry a line";

/** A new line with one card, ready for its entries. */
async function openCard(page: Page, name: string): Promise<string> {
  await signIn(page);
  const line = await openNewLine(page, name);
  await open(page, `${line}/record`);
  await typeRow(page, table(page, "One record a line"), {
    word: "record",
    cells: { Kind: "card", Title: "Side sewer card" },
  });
  await saved(page, "One record a line");
  await reopen(page);
  return line;
}

/** Where something is in the page, however far it is scrolled. */
function topOf(page: Page, selector: string): Promise<number> {
  return page
    .locator(selector)
    .first()
    .evaluate((each) => each.getBoundingClientRect().top + window.scrollY);
}

test("a word from the middle of a choice picks nothing and stays as it was typed", async ({
  page,
}) => {
  await openCard(page, "Yarrow Lane, typed");
  await typeRow(page, table(page, ENTRIES), {
    word: "entry",
    cells: { Entry: "House 21", "Distance, ft": "18", Side: "ft" },
  });
  const side = table(page, ENTRIES).getByLabel("Side, row 1", { exact: true });
  await expect(side).toHaveValue("ft");
  await expect(side).toHaveAttribute("aria-invalid", "true");
  await side.click();
  await page.keyboard.type("le");
  await page.keyboard.press("Tab");
  await expect(side).toHaveValue("left");
  await saved(page, ENTRIES);
});

test("Save now keeps a cell that cannot be read, and puts nothing in its place", async ({
  page,
}) => {
  const line = await openCard(page, "Yarrow Lane, unread");
  const records = table(page, "One record a line");
  await typeRow(page, records, {
    word: "record",
    cells: { Kind: "card", Title: "Second card", "Measured from": "somewhere" },
  });
  const from = records.getByLabel("Measured from, row 2", { exact: true });
  const box = records.locator("xpath=ancestor::*[.//button[normalize-space()='Save now']][1]");
  await box.getByRole("button", { name: "Save now" }).click();
  await expect(from).toBeFocused();
  await expect(box.locator('p[role="status"]')).toContainText("Not saved: 1 cell needs fixing");
  await open(page, "/");
  await open(page, `${line}/record`);
  await expect(from).toHaveValue("somewhere");
});

test("“seen” is seen, whether it is typed or pasted", async ({ page }) => {
  await signIn(page);
  await open(page, "/lines/fennel-0001/reconcile/undocumented");
  const tests = table(page, "Tests on T2");
  const rows = tests.locator("tr[data-row-id]");
  const before = await rows.count();
  await typeRow(page, tests, { word: "test", cells: { Date: "11/24/2026", Test: "dye" } });
  const result = tests.getByLabel(`Result, row ${before + 1}`, { exact: true });
  await result.click();
  await page.keyboard.type("seen");
  await page.keyboard.press("Tab");
  await expect(result).toHaveValue("seen");
  await pasteRows(page, tests, {
    first: "Date, new test",
    rows: [
      ["Day", "Test", "Result", "Control"],
      ["11/24/2026", "dye", "positive", "not seen"],
    ],
  });
  await expect(tests.getByLabel(`Result, row ${before + 2}`, { exact: true })).toHaveValue("seen");
  const control = tests.getByLabel(`Control, row ${before + 2}`, { exact: true });
  await expect(control).toHaveValue("not seen");
  await page.keyboard.press("Control+Z");
  await page.keyboard.press("Control+Z");
  await expect(rows).toHaveCount(before + 1);
  await tests.getByRole("button", { name: `Remove row ${before + 1}` }).focus();
  await page.keyboard.press("Enter");
  await expect(rows).toHaveCount(before);
  await saved(page, "Tests on T2");
});

test("a pasted column that no heading names is asked about, not dropped", async ({ page }) => {
  await openCard(page, "Yarrow Lane, pasted");
  const entries = table(page, ENTRIES);
  await pasteRows(page, entries, {
    first: "Entry, new entry",
    rows: [
      ["Conn.", "Dist.", "Mat'l", "Read by", "Sheet"],
      ["House 21", "18.5", "VCP", "K. Mori", "3"],
      ["House 23", "34", "conc", "K. Mori", "4"],
    ],
  });
  const question = page.getByRole("region", {
    name: /2 of the pasted columns are not in this table/,
  });
  await expect(question.getByLabel("Read by goes into")).toBeFocused();
  await expect(entries.locator("tr[data-row-id]")).toHaveCount(0);
  const paste = question.getByRole("button", { name: "Paste 2 rows" });
  await paste.click();
  await expect(question.getByLabel("Read by goes into")).toBeFocused();
  await question.getByLabel("Read by goes into").selectOption({ label: "Note" });
  await question.getByLabel("Sheet goes into").selectOption({ label: "skip this column" });
  await paste.click();
  await expect(entries.locator("tr[data-row-id]")).toHaveCount(2);
  await expect(entries.getByLabel("Material, row 1", { exact: true })).toHaveValue(
    "vitrified clay",
  );
  await expect(entries.getByLabel("Material, row 2", { exact: true })).toHaveValue("concrete");
  await expect(entries.getByLabel("Note, row 2", { exact: true })).toHaveValue("K. Mori");
  await saved(page, ENTRIES);
});

test("a list opens on F2, Alt+Down and Alt+Enter; what is undone can be done again", async ({
  page,
}) => {
  await openCard(page, "Yarrow Lane, by key");
  const entries = table(page, ENTRIES);
  await typeRow(page, entries, { word: "entry", cells: { Entry: "House 21" } });
  const side = entries.getByLabel("Side, row 1", { exact: true });
  const list = page.getByRole("listbox", { name: "Side, row 1" });
  for (const keys of ["F2", "Alt+ArrowDown", "Alt+Enter"]) {
    await side.focus();
    await page.keyboard.press(keys);
    await expect(list).toBeVisible();
    await page.keyboard.press("Escape");
    await expect(list).toHaveCount(0);
  }
  await page.keyboard.press("F2");
  await page.keyboard.press("ArrowUp");
  await page.keyboard.press("Enter");
  await expect(side).toHaveValue("top of pipe");
  // The row goes with the undo of its first letters, and the cursor stays in the table.
  await page.keyboard.press("Control+Z");
  await page.keyboard.press("Control+Z");
  await expect(entries.locator("tr[data-row-id]")).toHaveCount(0);
  await page.keyboard.press("Control+Y");
  await page.keyboard.press("Control+Y");
  await expect(side).toHaveValue("top of pipe");
  await saved(page, ENTRIES);
});

test("a long table draws what is near, and every row of it can be reached, typed in and printed", async ({
  page,
}) => {
  await openCard(page, "Yarrow Lane, long");
  const entries = table(page, ENTRIES);
  const rows = entries.locator("tr[data-row-id]");
  await pasteRows(page, entries, {
    first: "Entry, new entry",
    rows: Array.from({ length: 150 }, (_none, at) => [`House ${at + 1}`, String(at + 10)]),
  });
  await saved(page, ENTRIES);
  expect(await rows.count()).toBeLessThan(110);
  // To the last cell and back by key, typing in a row that was not drawn before.
  const first = entries.getByLabel("Entry, row 1", { exact: true });
  await first.focus();
  await page.keyboard.press("Control+End");
  await page.keyboard.press("ArrowUp");
  await page.keyboard.press("Home");
  await expect(entries.getByLabel("Entry, row 150", { exact: true })).toBeFocused();
  await page.keyboard.type("House 150 A");
  await page.keyboard.press("Enter");
  await page.keyboard.press("Control+Home");
  await expect(first).toBeFocused();
  // Scrolled by hand, the row with the cursor stays.
  await page.evaluate(() => window.scrollTo(0, document.body.scrollHeight));
  await expect(entries.getByLabel("Entry, row 149", { exact: true })).toBeVisible();
  await expect(first).toBeFocused();
  await saved(page, ENTRIES);
  await page.evaluate(() => window.dispatchEvent(new Event("beforeprint")));
  await expect(rows).toHaveCount(150);
  await page.evaluate(() => window.dispatchEvent(new Event("afterprint")));
  await reopen(page);
  await page.evaluate(() => window.scrollTo(0, document.body.scrollHeight));
  await expect(entries.getByLabel("Entry, row 150", { exact: true })).toHaveValue("House 150 A");
});

test("what needs fixing is one press away", async ({ page }) => {
  await openCard(page, "Yarrow Lane, to fix");
  const entries = table(page, ENTRIES);
  await pasteRows(page, entries, {
    first: "Entry, new entry",
    rows: [
      ["House 21", "by the fence", "left"],
      ["House 23", "34", "west"],
    ],
  });
  const go = page.getByRole("button", { name: "2 cells need fixing" });
  await go.click();
  await expect(entries.getByLabel("Distance, ft, row 1", { exact: true })).toBeFocused();
  await go.click();
  await expect(entries.getByLabel("Side, row 2", { exact: true })).toBeFocused();
});

test("a press below a table that is typed in is not lost", async ({ page }) => {
  await signIn(page);
  await open(page, "/office/authorities/authority-quillhaven");
  for (const part of ["If a neighbor refuses", "Holidays"])
    await page.getByRole("heading", { name: part }).click();
  const steps = page.getByRole("grid", { name: /^Steps if a neighbor/ });
  await steps.getByLabel("Step, new step", { exact: true }).click();
  const fill = page.getByRole("button", { name: "Show the holidays" });
  const held = await topOf(page, "button:has-text('Show the holidays')");
  await fill.scrollIntoViewIfNeeded();
  const box = await fill.boundingBox();
  if (box === null) throw new Error("The button is not on the page");
  await page.mouse.move(box.x + box.width / 2, box.y + 3);
  await page.mouse.down();
  // The table is left, and nothing below it has moved.
  await expect(steps.locator(":focus")).toHaveCount(0);
  expect(await topOf(page, "button:has-text('Show the holidays')")).toBe(held);
  await page.mouse.up();
  // Which days a state keeps is shown first, each with where it is from, and then imported.
  const offered = page.getByRole("form", { name: "Holidays of 2026 to import" });
  const heritage = offered.getByRole("row", { name: /Native American Heritage Day/ });
  await expect(heritage).toContainText("RCW 1.16.050(1)");
  await expect(heritage.getByRole("checkbox")).toBeChecked();
  await offered.getByRole("button", { name: "Import the checked days" }).click();
  await expect(offered).toContainText("All of these were already there.");
});

test("a press counts also where the page moves under it", async ({ page }) => {
  await signIn(page);
  await open(page, "/lines/fennel-0001/reconcile/undocumented");
  const settle = page.locator("summary").filter({ hasText: "Settle what it carries" }).first();
  await settle.scrollIntoViewIfNeeded();
  const box = await settle.boundingBox();
  if (box === null) throw new Error("The summary is not on the page");
  await page.mouse.move(box.x + 20, box.y + 4);
  await page.mouse.down();
  await page.evaluate(() => {
    const first = document.querySelector("main h1");
    first?.insertAdjacentHTML("beforebegin", "<p style='height:40px'>a line that came</p>");
  });
  await page.mouse.up();
  await expect(page.getByRole("form", { name: /^Settle T/ }).first()).toBeVisible();
});

test("another question begins at its top after something was saved", async ({ page }) => {
  const line = await openCard(page, "Yarrow Lane, saved");
  await open(page, `${line}/camera/pipe`);
  const pipe = page.getByRole("form", { name: "The shared pipe" });
  await pipe.getByLabel("Upper end of the shared line").fill("120");
  await pipe.getByRole("button").first().click();
  await expect(pipe.locator(".form-done")).toBeVisible();
  await page.evaluate(() => window.scrollTo(0, document.body.scrollHeight));
  await page.getByRole("link", { name: "Who is on it?" }).first().click();
  await expect(page).toHaveURL(/\/who$/);
  await expect.poll(() => page.evaluate(() => window.scrollY)).toBe(0);
  await expect(page.getByRole("heading", { level: 1 })).toBeInViewport();
});

test("tables can be scrolled by keyboard before the scripts are there", async ({ page }) => {
  await signIn(page);
  await page.route(/\.js(\?|$)/, (route) => route.abort());
  await page.setViewportSize({ width: 1280, height: 900 });
  for (const path of [
    "/office/authorities/authority-quillhaven",
    "/lines/fennel-0001/camera",
    "/lines/fennel-0001/reconcile/undocumented",
    "/lines/fennel-0001/camera/log",
    "/lines/fennel-0001/cost",
    "/lines/fennel-0001/camera/narration?run=fr-run2",
  ]) {
    await page.goto(path);
    await expect(page.locator("[role='grid'][inert]").first()).toBeAttached();
    const { violations } = await new AxeBuilder({ page })
      .withRules(["scrollable-region-focusable"])
      .analyze();
    expect(violations.map(({ id, nodes }) => `${path}: ${id}: ${nodes[0]?.html}`)).toEqual([]);
  }
});
