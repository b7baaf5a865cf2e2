import AxeBuilder from "@axe-core/playwright";
import { PDFDocument, StandardFonts } from "@cantoo/pdf-lib";
import { expect, type Page, test } from "@playwright/test";
import { DEMO_OFFICE } from "../playwright.config.ts";
import { open, reopen } from "./support/open.ts";
import { paperId, readPaper } from "./support/paper.ts";
import { signIn } from "./support/sign-in.ts";

// An authority's own form, from the counter's PDF to the one that is handed in.

test.use({ baseURL: DEMO_OFFICE });
test.setTimeout(400_000);

const LINE = "/lines/fennel-0001";

/** A form as a counter hands it out: words, a choice, a check box, and a place to sign. */
async function counterForm(): Promise<Buffer> {
  const document = await PDFDocument.create();
  const font = await document.embedFont(StandardFonts.Helvetica);
  const page = document.addPage([612, 792]);
  page.drawText("Quillhaven side sewer application", { x: 54, y: 740, size: 14, font });
  const form = document.getForm();
  for (const [at, name] of ["Applicant Name", "Owner 1 Name", "Inspector Area", "Lot"].entries()) {
    page.drawText(name, { x: 54, y: 704 - at * 30, size: 9, font });
    form
      .createTextField(name)
      .addToPage(page, { x: 180, y: 698 - at * 30, width: 300, height: 18 });
  }
  page.drawText("Repair", { x: 54, y: 560, size: 9, font });
  form.createCheckBox("Box A").addToPage(page, { x: 180, y: 556, width: 14, height: 14 });
  return Buffer.from(await document.save());
}

test("a form is added, decided, typed into and made for a line", async ({ page }) => {
  await signIn(page);
  await test.step("the PDF is added and its fields are listed", async () => {
    await open(page, "/office/authorities/authority-quillhaven");
    await page.getByLabel("Add a form (PDF)").setInputFiles({
      name: "Side_sewer application.pdf",
      mimeType: "application/pdf",
      buffer: await counterForm(),
    });
    await expect(page).toHaveURL(/\/forms\/[^/]+$/);
    await expect(page.getByText("1 page, 5 fields, 5 not decided")).toBeVisible();
    await expect(
      page.getByText("page 1, 2.49 in from the left, 1.05 in from the top"),
    ).toBeVisible();
  });
  await test.step("suggestions are taken in one press, the rest by hand", async () => {
    await page.getByRole("button", { name: "Take 3 suggestions" }).click();
    await expect(page.getByText("1 page, 5 fields, 2 not decided")).toBeVisible();
    await expect(page.getByLabel("What goes into Applicant Name")).toHaveValue(
      "fact:contractor.name",
    );
    await page.getByLabel("What goes into Lot").selectOption("typed");
    await page.getByLabel("What goes into Box A").selectOption({ label: "Kinds of work" });
    await page.getByLabel("Spot repair").check();
    await page.getByRole("button", { name: "Save the table" }).click();
    await expect(page.getByText("1 page, 5 fields, all decided")).toBeVisible();
  });
  await test.step("a box is placed by inches; one off the page is refused beside its field", async () => {
    await page.getByText("Boxes", { exact: true }).click();
    const box = page.getByRole("form", { name: "Place a box" });
    await box.getByLabel(/^What the box is for/).fill("Stamp line");
    await box.getByLabel("From the left").fill("8");
    await box.getByLabel("From the top").fill("9");
    await box.getByLabel("Width").fill("3");
    await box.getByRole("button", { name: "Place the box" }).click();
    await expect(box.getByText(/does not lie on the page/)).toBeVisible();
    await box.getByLabel("From the left").fill("2.5");
    await box.getByRole("button", { name: "Place the box" }).click();
    await expect(page.getByText("1 page, 6 fields, 1 not decided")).toBeVisible();
    await page.getByLabel("What goes into Stamp line").selectOption("words");
    await page.getByLabel("Always in Stamp line").fill("Counter 4");
    await page.getByRole("button", { name: "Save the table" }).click();
    await expect(page.getByText("1 page, 6 fields, all decided")).toBeVisible();
  });
  await test.step("a box is drawn on the page, by pointer and by keys, and its numbers are entered", async () => {
    await page.getByText("The page, with its fields numbered").click();
    const box = page.getByRole("form", { name: "Place a box" });
    const picture = page.locator("#picture canvas");
    await picture.scrollIntoViewIfNeeded();
    const frame = await picture.boundingBox();
    if (frame === null) throw new Error("The page is not shown");
    const inch = frame.width / 8.5;
    await page.mouse.move(frame.x + inch, frame.y + 2 * inch);
    await page.mouse.down();
    await page.mouse.move(frame.x + 3 * inch, frame.y + 2.5 * inch, { steps: 4 });
    await page.mouse.up();
    const drawn = page.getByRole("button", { name: /^New box, (1\.9|2).* by 0?\.(49|5)/ });
    await expect(drawn).toBeVisible();
    expect(Number(await box.getByLabel("From the left").inputValue())).toBeCloseTo(1, 1);
    expect(Number(await box.getByLabel("From the top").inputValue())).toBeCloseTo(2, 1);
    await page.getByRole("button", { name: "New box", exact: true }).press("Enter");
    const first = page.getByRole("button", { name: /^New box, 2 by 0\.25 in/ });
    await first.press("ArrowRight");
    await expect(box.getByLabel("From the left")).toHaveValue("3.31");
    await first.press("Shift+ArrowDown");
    await expect(box.getByLabel("Height")).toHaveValue("0.31");
    await page.getByRole("button", { name: "Name this box" }).click();
    await expect(box.getByLabel(/^What the box is for/)).toBeFocused();
  });
  await test.step("everybody can read the page", () => isReadable(page));
  const form = new URL(page.url()).pathname.split("/").at(-1);
  await test.step("the packet counts what is empty", async () => {
    await open(page, `${LINE}/authority`);
    await page.getByText(/items? missing$/).click();
    await expect(page.getByText("Side sewer application: 1 field is empty (Lot).")).toBeVisible();
  });
  await test.step("on the line the empty field is typed, and the PDF made", async () => {
    await open(page, `${LINE}/authority/forms`);
    await page.getByRole("link", { name: "Side sewer application" }).click();
    await expect(page).toHaveURL(new RegExp(`/forms/${form}$`));
    await page.getByLabel("4. Lot").fill("Lot 7, Block 2");
    await page.getByRole("button", { name: "Save what is typed" }).click();
    await expect(page.getByText(/ 0 empty, 1 left empty on purpose\.$/)).toBeVisible();
    await isReadable(page);
    await page.getByRole("button", { name: "Make the PDF" }).click();
    const made = page.getByRole("status").getByRole("link", { name: "Open it" });
    await expect(made).toBeVisible({ timeout: 120_000 });
    const paper = await readPaper(page, paperId(await made.getAttribute("href")));
    expect(paper.complaints).toBe("");
    expect(paper.text).toMatch(/Applicant Name\s+\S+/);
    expect(paper.text).toContain("Lot 7, Block 2");
    expect(paper.text).toContain("Counter 4");
    await expect(page.getByText(/^Version 5 of the form/)).toBeVisible();
  });
  await test.step("taken out of use it is gone from the line", async () => {
    await open(page, `/office/authorities/authority-quillhaven/forms/${form}#about`);
    await page.getByLabel("No longer used").check();
    await page.getByRole("button", { name: "Save", exact: true }).click();
    await expect(page.getByText("No longer used on any line.")).toBeVisible();
    await open(page, `${LINE}/authority/forms`);
    await expect(page.getByRole("link", { name: "District form 12" })).toBeVisible();
    await expect(page.getByRole("link", { name: "Side sewer application" })).toHaveCount(0);
  });
});

/** In light and dark, on a desk and on a phone, as every-page has it for the pages that the demo has. */
async function isReadable(page: Page) {
  for (const colorScheme of ["light", "dark"] as const) {
    await page.emulateMedia({ colorScheme });
    await reopen(page);
    const { violations } = await new AxeBuilder({ page }).analyze();
    expect(violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`)).toEqual([]);
  }
  await page.emulateMedia({ colorScheme: "light" });
  const height = await page.evaluate(() => document.documentElement.scrollHeight);
  expect(height).toBeLessThanOrEqual(2_700);
  await page.setViewportSize({ width: 390, height: 844 });
  const over = await page.evaluate(
    () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
  );
  expect(over).toBeLessThanOrEqual(0);
  await page.setViewportSize({ width: 1280, height: 900 });
}
