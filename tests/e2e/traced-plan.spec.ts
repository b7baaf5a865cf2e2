import { expect, type Locator, type Page, test } from "@playwright/test";
import sharp from "sharp";
import { DEMO_OFFICE } from "../playwright.config.ts";
import { open, reopen } from "./support/open.ts";
import { openNewLine, signIn } from "./support/sign-in.ts";

test.use({ baseURL: DEMO_OFFICE });

const SIZE = { width: 1_200, height: 800 };

/** A plat of a house: ten pixels to a foot, its scale bar from 150 to 650, the main at 150, 620. */
async function aPlat(): Promise<Buffer> {
  const drawn = `<svg xmlns="http://www.w3.org/2000/svg" width="1200" height="800">
    <rect width="1200" height="800" fill="#fff"/>
    <rect x="330" y="300" width="230" height="130" fill="none" stroke="#000" stroke-width="3"/>
    <path d="M150 760H650" stroke="#000" stroke-width="2"/>
    <circle cx="150" cy="620" r="10" fill="none" stroke="#000" stroke-width="3"/></svg>`;
  return await sharp(Buffer.from(drawn)).png().toBuffer();
}

/** Presses a pixel of the picture. */
async function press(stage: Locator, x: number, y: number): Promise<void> {
  const box = await stage.boundingBox();
  if (box === null) throw new Error("The picture is not shown");
  await stage.click({
    position: { x: (x / SIZE.width) * box.width, y: (y / SIZE.height) * box.height },
  });
}

function traceOn(page: Page): { trace: Locator; stage: Locator } {
  const trace = page.getByRole("region", { name: "Trace over a plan" });
  return { trace, stage: trace.getByRole("application") };
}

/** Opens the parts that are worked on: they are closed until they are asked for. */
async function unfold(page: Page): Promise<void> {
  for (const name of ["Trace over a plan", "Buildings, lot lines, streets"])
    await page.getByRole("region", { name }).getByRole("heading", { name }).click();
}

/** The outline in a row of the table of shapes, as numbers. */
async function outlineIn(page: Page, row: number): Promise<number[]> {
  const grid = page.getByRole("region", { name: "Buildings, lot lines, streets" });
  const cell = grid.locator(`[data-place="${row}:3"]`);
  await expect(cell).toHaveValue(/,/);
  return ((await cell.inputValue()).match(/-?\d+(\.\d+)?/g) ?? []).map(Number);
}

function expectNear(outline: readonly number[], wanted: readonly number[]): void {
  expect(outline).toHaveLength(wanted.length);
  for (const [index, feet] of wanted.entries())
    expect(Math.abs((outline[index] ?? Number.NaN) - feet)).toBeLessThan(0.5);
}

test("a house and a street are pressed over the picture of a plat, by mouse and by keyboard", async ({
  page,
  browser,
}) => {
  await signIn(page);
  const line = await openNewLine(page, "Plat Lane");
  await open(page, `${line}/camera/plan`);
  const { trace, stage } = traceOn(page);
  await unfold(page);
  await trace
    .getByLabel("Picture of the plan")
    .setInputFiles({ name: "plat.png", mimeType: "image/png", buffer: await aPlat() });

  await press(stage, 150, 760);
  await press(stage, 650, 760);
  await trace.getByLabel("From A to B").fill("50");
  await trace.getByRole("button", { name: "Save and trace" }).click();
  await expect(trace.getByText("Click the main connection on the picture.")).toBeVisible();
  await press(stage, 150, 620);
  await trace.getByRole("button", { name: "Save and trace" }).click();

  await expect(trace.getByText("No corners yet.")).toBeVisible();
  await press(stage, 330, 300);
  await press(stage, 560, 300);
  await trace.getByRole("button", { name: "Save the shape" }).click();
  await expect(trace.getByText("Click at least 3 corners of the building.")).toBeVisible();
  await press(stage, 560, 430);
  await press(stage, 900, 700);
  await trace.getByRole("button", { name: "Undo last corner" }).click();
  await press(stage, 330, 430);
  await trace.getByLabel("Name").fill("House");
  await trace.getByRole("button", { name: "Save the shape" }).click();
  await expect(trace.getByText("The shape was added to the plan")).toBeVisible();
  expectNear(await outlineIn(page, 0), [18, 32, 41, 32, 41, 19, 18, 19]);

  await trace.getByLabel("Trace a").selectOption("street-edge");
  await stage.focus();
  // The cross begins in the middle, at 600, 400; a step is a sixtieth of the width.
  for (const key of ["ArrowRight", "Enter", "ArrowDown", "Enter", "Backspace", "ArrowLeft"])
    await page.keyboard.press(key);
  await page.keyboard.press("Enter");
  await expect(trace.getByText(/^2 corners; the last one 45\.\d ft east/)).toBeVisible();
  await trace.getByRole("button", { name: "Save the shape" }).click();
  await expect(trace.getByText("No corners yet.")).toBeVisible();
  expectNear(await outlineIn(page, 1), [47, 22, 45, 20]);

  await reopen(page);
  await unfold(page);
  expectNear(await outlineIn(page, 0), [18, 32, 41, 32, 41, 19, 18, 19]);
  page.once("dialog", (dialog) => dialog.accept());
  await trace.getByRole("button", { name: "Remove it from the plan" }).click();
  await expect(trace.getByLabel("A picture that is on file")).toBeVisible();
  expectNear(await outlineIn(page, 1), [47, 22, 45, 20]);

  const still = await browser.newContext({
    javaScriptEnabled: false,
    baseURL: DEMO_OFFICE,
    storageState: await page.context().storageState(),
  });
  const plain = await still.newPage();
  await plain.goto(`${line}/camera/plan`);
  await unfold(plain);
  await expect(plain.getByText("Without them, type the corners below.")).toBeVisible();
  await expect(plain.getByRole("region", { name: "Buildings, lot lines, streets" })).toBeVisible();
  await still.close();
});
