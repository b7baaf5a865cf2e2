import { PDFDocument, StandardFonts } from "@cantoo/pdf-lib";
import { expect, type Locator, type Page, test } from "@playwright/test";
import { DEMO_OFFICE } from "../playwright.config.ts";
import { pasteRows, saved, table, typeRow } from "./support/grid.ts";
import { open } from "./support/open.ts";
import { paperId, readPaper } from "./support/paper.ts";
import { DISTRICT, permitLine } from "./support/permit-line.ts";
import { signIn } from "./support/sign-in.ts";

// The last third of a job, by screen: from the counter's own form to the closed file.

test.use({ baseURL: DEMO_OFFICE, permissions: ["clipboard-read", "clipboard-write"] });
test.setTimeout(600_000);

const COMMENTS = "Comments of the corrections letters";

test("a permit goes from the authority’s form over two rounds of corrections to a closed file", async ({
  page,
}) => {
  await signIn(page);
  const line = await test.step("a line that is ready for its permit", () => bringIn(page));
  await test.step("the district’s form is added, and its fields decided", () => addForm(page));
  await test.step("the packet begins with the form, filled in", () => fillForm(page, line));
  await test.step("two rounds of corrections, answered item by item", () => correct(page, line));
  await test.step("811, its utilities, and the branches to keep", () => prepare(page, line));
  await test.step("an inspection fails, the next one passes", () => inspect(page));
  await test.step("the as-built is measured, drawn, accepted", () => drawAsBuilt(page, line));
  await test.step("the file is closed on what was built", () => closeFile(page, line));
});

async function bringIn(page: Page): Promise<string> {
  await open(page, "/lines/import");
  await page.getByLabel("Or paste it here").fill(permitLine(`Dunmore Row ${Date.now()}`));
  await page.getByRole("button", { name: "Import" }).click();
  await expect(page).toHaveURL(/\/lines\/(?!import)[^/]+$/);
  return new URL(page.url()).pathname;
}

async function counterForm(): Promise<Buffer> {
  const document = await PDFDocument.create();
  const font = await document.embedFont(StandardFonts.Helvetica);
  const page = document.addPage([612, 792]);
  page.drawText("Dunmore side sewer application", { x: 54, y: 740, size: 14, font });
  const form = document.getForm();
  for (const [at, name] of ["Applicant Name", "Owner 1 Name", "Lot"].entries()) {
    page.drawText(name, { x: 54, y: 704 - at * 30, size: 9, font });
    form
      .createTextField(name)
      .addToPage(page, { x: 180, y: 698 - at * 30, width: 300, height: 18 });
  }
  return Buffer.from(await document.save());
}

async function addForm(page: Page) {
  await open(page, `/office/authorities/${DISTRICT}`);
  await page.getByLabel("Add a form (PDF)").setInputFiles({
    name: "Dunmore application.pdf",
    mimeType: "application/pdf",
    buffer: await counterForm(),
  });
  await expect(page).toHaveURL(/\/forms\/[^/]+$/);
  await page.getByRole("button", { name: "Take 2 suggestions" }).click();
  await expect(page.getByText("1 page, 3 fields, 1 not decided")).toBeVisible();
  await page.getByLabel("What goes into Lot").selectOption("typed");
  await page.getByRole("button", { name: "Save the table" }).click();
  await expect(page.getByText("1 page, 3 fields, all decided")).toBeVisible();
}

async function fillForm(page: Page, line: string) {
  await open(page, `${line}/authority/forms`);
  await page.getByRole("link", { name: "Dunmore application" }).click();
  await page.getByLabel("3. Lot").fill("Lot 7, Block 2");
  await page.getByRole("button", { name: "Save what is typed" }).click();
  await expect(page.getByText(/ 0 empty/)).toBeVisible();
  await open(page, `${line}/authority/permits`);
  const add = page.getByRole("form", { name: "Add a permit" });
  await add.getByLabel(/^Kind/).selectOption("side-sewer");
  await add.getByRole("button", { name: "Add permit", exact: true }).click();
  await expect(page.getByText("Side sewer permit, no number yet")).toBeVisible();
  await open(page, `${line}/authority`);
  await page.getByRole("button", { name: "Build the packet" }).click();
  const built = page.locator("#packet").getByRole("link", { name: "Open it" }).first();
  const packet = await readPaper(page, await idBehind(built));
  expect(packet.complaints).toBe("");
  expect(packet.text).toContain("Dunmore side sewer application");
  expect(packet.text).toMatch(/Lot\s+Lot 7, Block 2/);
  expect(packet.text).toContain("Odalys Marchetti");
}

async function correct(page: Page, line: string) {
  await open(page, `${line}/authority/permits`);
  for (const state of ["submitted", "in-review", "corrections"]) await step(page, state);
  await test.step("no resubmission before the letter’s comments are entered", () =>
    isRefused(page, "submitted", /enter the comments of the corrections letter/));
  await open(page, `${line}/authority/corrections`);
  await pasteRows(page, table(page, COMMENTS), {
    first: "No., new comment",
    rows: [
      ["No.", "Sheet", "Comment", "Answer", "Answered by"],
      ["1", "S1", "Show the depth at the main", "7.2 ft, added to the drawing", "Marek Sandoval"],
      ["2", "S1", "Show the house number", "", ""],
    ],
  });
  await saved(page, COMMENTS);
  await open(page, `${line}/authority/permits`);
  await test.step("nor while one is not answered", () =>
    isRefused(page, "submitted", /1 comment not answered: no\. 2/));
  await open(page, `${line}/authority/corrections`);
  await fillCells(page, COMMENTS, {
    "Answer, row 2": "3 Larkmoor Row, added",
    "Answered by, row 2": "Marek Sandoval",
  });
  await page.getByRole("button", { name: "Answer sheet as PDF" }).click();
  const made = page.getByRole("status").getByRole("link", { name: "Open it" });
  const sheet = await readPaper(page, await idBehind(made));
  expect(sheet.complaints).toBe("");
  for (const words of ["Show the depth at the main", "3 Larkmoor Row, added"])
    expect(sheet.text.replaceAll(/\s+/g, " ")).toContain(words);

  await open(page, `${line}/authority/permits`);
  for (const state of ["submitted", "in-review", "corrections"]) await step(page, state);
  await open(page, `${line}/authority/corrections`);
  const round = table(page, COMMENTS);
  await round.getByLabel("No., new comment", { exact: true }).waitFor();
  await typeRow(page, round, {
    word: "comment",
    cells: {
      "No.": "1",
      Sheet: "S1",
      Comment: "Replace the whole lateral",
      "Not changed because": "Sound from 50 ft up, video at 4:10",
      "Answered by": "Marek Sandoval",
    },
  });
  await saved(page, COMMENTS);
  await test.step("what the first round asked for is accepted before the second is answered", async () => {
    await open(page, `${line}/authority/permits`);
    await isRefused(page, "submitted", /of an earlier round/);
    await open(page, `${line}/authority/corrections`);
    await fillCells(page, COMMENTS, {
      "Accepted, row 1": "11/25/2026",
      "Accepted, row 2": "11/25/2026",
    });
  });
  await open(page, `${line}/authority/permits`);
  for (const state of ["submitted", "in-review", "issued"]) await step(page, state);
  const printed = page.getByRole("form", { name: "What is printed on the permit" });
  await printed.getByLabel("Number").fill("DS-26-41");
  await printed.getByRole("button", { name: "Save number and dates" }).click();
  await expect(page.getByRole("heading", { name: "Side sewer permit DS-26-41" })).toBeVisible();
}

async function prepare(page: Page, line: string) {
  await test.step("no pipe is taken out before the branch under it is measured from both ends", () =>
    isRefused(page, "working", /TB at 40\.0 ft is active and not measured/));
  await open(page, `${line}/schedule/reconnections`);
  await pasteRows(page, table(page, "One branch a line"), {
    first: "Branch, new branch",
    rows: [
      ["Branch", "Lower access", "Up to it", "Upper access", "Down to it", "Measured by", "On"],
      ["TB", "0", "40.0", "60", "20.0", "Sami Orlov", "11/24/2026"],
    ],
  });
  await saved(page, "One branch a line");
  await open(page, `${line}/authority/permits`);
  await typeRow(page, table(page, "Locate tickets"), {
    word: "ticket",
    cells: { Ticket: "26-330441", "Called in": "11/18/2026" },
  });
  await saved(page, "Locate tickets");
  const responses = "Utilities’ responses";
  await typeRow(page, table(page, responses), {
    word: "utility",
    cells: { Ticket: "26-330441", Utility: "Tern Gas", Lines: "gas", Response: "no response yet" },
  });
  await saved(page, responses);
  await test.step("nor anything dug before each utility has answered", () =>
    isRefused(page, "working", /Tern Gas/));
  await fillCells(page, responses, {
    "Response, row 1": "marked",
    "Responded, row 1": "11/20/2026",
    "Marks good until, row 1": "12/18/2026",
  });
  await step(page, "working");
}

async function inspect(page: Page) {
  await step(page, "inspection-requested");
  await typeRow(page, table(page, "Inspections"), {
    word: "inspection",
    cells: {
      Inspection: "Open trench",
      "Scheduled for": "11/24/2026",
      Result: "failed",
      Note: "Bedding is short at the wye",
      Kind: "Open trench",
    },
  });
  await saved(page, "Inspections");
  await test.step("nothing is backfilled on an inspection that failed", () =>
    isRefused(page, "passed-may-backfill", /Open trench/));
  await step(page, "inspection-failed");
  await step(page, "inspection-requested");
  await typeRow(page, table(page, "Inspections"), {
    word: "inspection",
    cells: {
      Inspection: "Open trench, again",
      "Scheduled for": "11/25/2026",
      Result: "passed",
      Kind: "Open trench",
    },
  });
  await saved(page, "Inspections");
  await step(page, "passed-may-backfill");
}

async function drawAsBuilt(page: Page, line: string) {
  await test.step("no final without the as-built", () =>
    isRefused(page, "final", /still missing: “Dig and replace the sag”/));
  await page.locator("summary", { hasText: "What was built" }).first().click();
  await page.locator("summary", { hasText: "Record as done" }).first().click();
  const built = page.getByRole("form", { name: /^What was built: Dig and replace the sag/ });
  await built.getByLabel(/^Reported by/).fill("Sami Orlov");
  await built.getByLabel(/^What was built/).fill("6 in PVC, 30 to 50 ft, TB joined with a wye");
  await built.getByRole("button", { name: "Save" }).click();
  await expect(page.getByText(/Done .*per Sami Orlov/).first()).toBeVisible();
  await open(page, `${line}/authority/as-built`);
  await page.getByRole("button", { name: /^Add \d rows? for work recorded as done$/ }).click();
  const measured = page.locator("#measured").getByRole("grid");
  await expect(measured.locator("tr[data-row-id]").first()).toBeVisible();
  const label = (await measured.getAttribute("aria-label")) ?? "";
  await fillCells(page, label, {
    "From, ft, row 1": "30.0",
    "To, ft, row 1": "50.0",
    "Size, in, row 1": "6",
    "Material, row 1": "PVC",
    "Depth, ft, row 1": "7.2",
    "Measured by, row 1": "Sami Orlov",
    "On, row 1": "11/25/2026",
  });
  await page.getByRole("button", { name: "Make the as-built" }).click();
  const made = page.getByRole("status").getByRole("link", { name: "Open it" });
  const sheets = await readPaper(page, await idBehind(made));
  expect(sheets.complaints).toBe("");
  expect(sheets.text).toContain("DS-26-41");
  expect(sheets.text.replaceAll(/\s+/g, " ")).toMatch(/30\.0 (to|–) 50\.0 ft/);
  expect(sheets.text).toContain("Sami Orlov");
  await open(page, `${line}/authority/permits`);
  for (const state of ["as-built-submitted", "as-built-accepted", "final"]) await step(page, state);
  await expect(page.getByText("No further steps.")).toBeVisible();
}

async function closeFile(page: Page, line: string) {
  await open(page, `${line}/schedule`);
  const close = page.getByRole("form", { name: "Close the file" });
  await close
    .getByLabel(/^Reason/)
    .first()
    .fill("Permit final");
  for (const [label, words] of [
    [/^How you know that the branches are open/, "Sami Orlov filmed TB open on November 25"],
    [/^Why the balance stays as it is/, "The owner of No. 3 pays the contractor directly"],
  ] as const) {
    const field = close.getByLabel(label);
    if ((await field.count()) > 0) await field.fill(words);
  }
  await close.getByRole("button", { name: "Close the file" }).click();
  await expect(page.getByRole("heading", { name: "Closeout file" })).toBeVisible();
  await page.getByRole("button", { name: "Make the closeout file" }).click();
  const made = page.getByRole("status").getByRole("link", { name: "Open it" });
  const whole = await readPaper(page, await idBehind(made));
  expect(whole.complaints).toBe("");
  for (const words of ["DS-26-41", "Open trench", "Sami Orlov", "Permit final"])
    expect(whole.text).toContain(words);
  await test.step("the line file goes with it", async () => {
    const answer = await page.request.get(`${line}/export`);
    expect(await answer.text()).toContain("DS-26-41");
  });
}

function press(page: Page, state: string): Locator {
  return page.locator(`button[name="state"][value="${state}"]`);
}

/** The permit's next step, recorded as of today in one press. */
async function step(page: Page, state: string) {
  await press(page, state).click();
  await expect(press(page, state)).toHaveCount(0);
}

/** A step that may not be taken yet says why, beside its button. */
async function isRefused(page: Page, state: string, words: RegExp) {
  await press(page, state).click();
  await expect(page.getByRole("form", { name: /^Record today/ }).getByText(words)).toBeVisible();
}

/** Types into cells that are there, by their names, and saves the table. */
async function fillCells(page: Page, label: string, cells: Readonly<Record<string, string>>) {
  for (const [name, text] of Object.entries(cells)) {
    await table(page, label).getByLabel(name, { exact: true }).click();
    await page.keyboard.press("ControlOrMeta+A");
    await page.keyboard.type(text);
    await page.keyboard.press("Tab");
  }
  await saved(page, label);
}

/** The id of a paper, once it is made. */
async function idBehind(link: Locator): Promise<string> {
  await expect(link).toBeVisible({ timeout: 120_000 });
  return paperId(await link.getAttribute("href"));
}
