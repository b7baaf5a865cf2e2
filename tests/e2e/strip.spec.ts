import { expect, type Page, test } from "@playwright/test";
import { DEMO_OFFICE } from "../playwright.config.ts";
import { open } from "./support/open.ts";
import { signIn } from "./support/sign-in.ts";

// The strip over every page of a line: it stays in view, says what its marks are, and follows rows.

test.use({ baseURL: DEMO_OFFICE });

const FENNEL = "/lines/fennel-0001";
/** Pages about the camera, as high as they may be before something is opened. */
const CAMERA = ["", "/log", "/narration?run=fr-run2", "/tie-ins", "/pipe", "/plan", "/capacity"];

/** The figure that holds the drawing. */
function strip(page: Page) {
  return page.locator("figure[data-size]").first();
}

function mark(page: Page, name: RegExp) {
  return strip(page).getByRole("button", { name }).first();
}

test("the strip stays in view, slim, on the pages where it is small and where it is large", async ({
  page,
}) => {
  await signIn(page);
  for (const question of ["/camera", "/reconcile", "/cost"]) {
    await open(page, `${FENNEL}${question}`);
    await page.mouse.wheel(0, 900);
    await expect(strip(page)).toHaveAttribute("data-size", "slim");
    const box = await strip(page).boundingBox();
    expect(box?.y ?? -1, question).toBeGreaterThanOrEqual(0);
    expect((box?.y ?? 0) + (box?.height ?? 999), question).toBeLessThanOrEqual(150);
    await page.mouse.wheel(0, -2_000);
    await expect(strip(page)).not.toHaveAttribute("data-size", "slim");
  }
});

test("a mark says what it is under the pointer and under the focus, a defect too", async ({
  page,
}) => {
  await signIn(page);
  await open(page, `${FENNEL}/camera`);
  const said = strip(page)
    .locator("div[aria-hidden]")
    .getByText(/^Crack, 14\.9 ft/);
  await mark(page, /^Crack/).hover();
  await expect(said).toBeVisible();
  await page.mouse.move(640, 800);
  await expect(said).toHaveCount(0);
  await mark(page, /^T1 at/).click();
  await page.keyboard.press("ArrowRight");
  await page.keyboard.press("ArrowLeft");
  await expect(
    strip(page)
      .locator("div[aria-hidden]")
      .getByText(/^T1 at/),
  ).toBeVisible();
});

test("what is chosen is let go on bare paper, on an empty row and on another page", async ({
  page,
}) => {
  await signIn(page);
  await open(page, `${FENNEL}/camera/tie-ins`);
  const chosen = strip(page).locator("[aria-pressed='true']");
  const row = page
    .getByRole("main")
    .getByRole("row")
    .filter({ has: page.getByRole("rowheader", { name: /^T4/ }) })
    .first();
  await row.getByRole("cell", { name: /^54\.2/ }).click();
  await expect(mark(page, /^T4 at/)).toHaveAttribute("aria-pressed", "true");
  await page.getByRole("heading", { level: 1 }).click();
  await expect(chosen).toHaveCount(0);
  await mark(page, /^T4 at/).click();
  await expect(row).toHaveAttribute("data-selected", "true");
  await page.getByRole("link", { name: "Runs", exact: true }).click();
  await expect(page).toHaveURL(/\/camera$/);
  await expect(chosen).toHaveCount(0);
});

test("each page about the camera does one job, in at most three screens", async ({ page }) => {
  await signIn(page);
  for (const path of CAMERA) {
    await open(page, `${FENNEL}/camera${path}`);
    const height = await page.evaluate(() => document.documentElement.scrollHeight);
    expect(height, path).toBeLessThanOrEqual(2_700);
  }
});
