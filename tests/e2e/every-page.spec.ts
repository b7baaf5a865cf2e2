import fs from "node:fs";
import path from "node:path";
import AxeBuilder from "@axe-core/playwright";
import { expect, test } from "@playwright/test";
import { DEMO_OFFICE } from "../playwright.config.ts";
import { open } from "./support/open.ts";
import { signIn } from "./support/sign-in.ts";

test.use({ baseURL: DEMO_OFFICE });
test.setTimeout(900_000);

const FENNEL = "/lines/fennel-0001";
/** A paper that is shown whole is as long as it is. */
const PAPER = "/lines/ropewalk-0001/cost/statements/rw-h2";
const QUESTIONS = [
  "",
  "/who",
  "/record",
  "/camera",
  "/reconcile",
  "/responsibility",
  "/cost",
  "/notices",
  "/authority",
  "/schedule",
  "/history",
];
const PAGES = [
  "/",
  "/lines/new",
  "/lines/import",
  "/office",
  "/account",
  "/office/reports",
  "/office/wording",
  "/office/wording/finding",
  "/office/authorities/authority-quillhaven",
  "/office/authorities/authority-quillhaven/forms/qh-0010",
  "/lines",
  "/not-allowed",
  "/search?for=fennel",
  ...QUESTIONS.map((question) => `${FENNEL}${question}`),
  `${FENNEL}/authority/application`,
  `${FENNEL}/authority/forms`,
  `${FENNEL}/authority/forms/qh-0010`,
  `${FENNEL}/authority/corrections`,
  `${FENNEL}/authority/fees`,
  `${FENNEL}/notices/write`,
  `${FENNEL}/notices/write?kind=finding`,
  `${FENNEL}/notices/batch`,
  `${FENNEL}/notices/batch?kind=finding`,
  `${FENNEL}/notices/statutory`,
  `${FENNEL}/notices/deliveries`,
  `${FENNEL}/notices/facts`,
  `${FENNEL}/notices/consents`,
  `${FENNEL}/notices/refusal`,
  `${FENNEL}/notices/meeting`,
  `${FENNEL}/camera/narration?run=fr-run2`,
  `${FENNEL}/camera/log?run=fr-run2`,
  `${FENNEL}/camera/tie-ins`,
  `${FENNEL}/camera/pipe`,
  `${FENNEL}/camera/capacity`,
  `${FENNEL}/camera/plan`,
  `${FENNEL}/schedule/reconnections`,
  `${FENNEL}/schedule/roll-call`,
  `${FENNEL}/schedule/dig-card`,
  "/lines/ropewalk-0001/schedule/dig-card",
  "/lines/ropewalk-0001/schedule/reconnections",
  `${FENNEL}/bring-in`,
  `${FENNEL}/bring-in?table=observations&to=fr-run1`,
  `${FENNEL}/who/by-property`,
  `${FENNEL}/who/duplicates`,
  `${FENNEL}/who/land`,
  `${FENNEL}/who/calls`,
  `${FENNEL}/reconcile?in=es`,
  `${FENNEL}/reconcile/line-up`,
  `${FENNEL}/reconcile/match`,
  `${FENNEL}/reconcile/undocumented`,
  `${FENNEL}/reconcile/test-day`,
  `${FENNEL}/reconcile/test-day?day=fennel-0089`,
  "/lines/ropewalk-0001",
  ...["", "/options", "/compare", "/compare/portion-used", "/choose", "/statements", "/money"].map(
    (part) => `${FENNEL}/cost${part}`,
  ),
  "/lines/ropewalk-0001/cost",
  "/lines/ropewalk-0001/cost/compare",
  "/lines/ropewalk-0001/cost/choose",
  "/lines/ropewalk-0001/cost/statements",
  PAPER,
  "/lines/ropewalk-0001/cost/money",
  "/lines/ropewalk-0001/cost/money/rw-h2",
  "/lines/ropewalk-0001/authority/permits",
  "/lines/ropewalk-0001/authority/fees",
  "/n",
  "/n/no-such-link",
  "/lines/tollgate-0001/authority",
  "/lines/tollgate-0001/authority/as-built",
];

/**
 * At 1280 x 900, before anything is opened: three screens, a line's front page a screen and a half.
 * The desk is as high as the office has lines, and other journeys open some.
 */
const TALLEST = 2_700;
const FRONT: Readonly<Record<string, number>> = { [FENNEL]: 1_350 };

test("every page is readable by everybody, light and dark, and at most three screens high", async ({
  page,
}) => {
  await signIn(page);
  const said: string[] = [];
  for (const path of PAGES) {
    await open(page, path);
    const height = await page.evaluate(() => document.documentElement.scrollHeight);
    if (path !== PAPER && height > (FRONT[path] ?? TALLEST))
      said.push(`${path}: ${height} px high`);
    for (const colorScheme of ["light", "dark"] as const) {
      await page.emulateMedia({ colorScheme });
      // No page holds another within it, so that each is looked at where it stands.
      const look = new AxeBuilder({ page }).setLegacyMode(true);
      // Light and dark differ in their colors alone.
      if (colorScheme === "dark") look.withRules(["color-contrast"]);
      const { violations } = await look.analyze();
      said.push(
        ...violations.map(({ id, nodes }) => `${path}, ${colorScheme}: ${id}: ${nodes[0]?.html}`),
      );
    }
    await page.emulateMedia({ colorScheme: "light" });
  }
  expect(said).toEqual([]);
});

test("every page fits a phone: nothing sideways, long parts folded, its sentence on the first screen", async ({
  page,
}) => {
  await page.setViewportSize({ width: 390, height: 844 });
  await signIn(page);
  const long: string[] = [];
  for (const path of PAGES) {
    await open(page, path);
    const over = await page.evaluate(
      () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
    );
    expect(over, path).toBeLessThanOrEqual(0);
    const height = await page.evaluate(() => document.documentElement.scrollHeight);
    if (path !== "/" && path !== PAPER && height > TALLEST) long.push(`${path}: ${height} px high`);
    const said = await page.locator(".display").first().boundingBox();
    const end = (said?.y ?? 844) + (said?.height ?? 844);
    if (end > 844) long.push(`${path}: its sentence ends at ${end} px`);
  }
  expect(long).toEqual([]);
});

test("a wrong password is told so without saying whether the account exists", async ({ page }) => {
  for (const email of ["demo@example.com", "nobody@example.com"]) {
    await open(page, "/sign-in");
    await page.getByLabel("Email address").fill(email);
    await page.getByLabel("Password").fill("not the password");
    await page.getByRole("button", { name: "Sign in" }).click();
    await expect(page.getByText(/email or password/i).last()).toBeVisible();
  }
});

test("a page of the office leads a stranger to the sign-in, and on to that page", async ({
  page,
}) => {
  await open(page, `${FENNEL}/cost`);
  await expect(page).toHaveURL(/\/sign-in/);
  const answer = await page.request.get(`${DEMO_OFFICE}${FENNEL}/uploads/anything`);
  expect(answer.status()).toBeGreaterThanOrEqual(400);
  for (const password of ["not the password", "demo-office-2026"]) {
    await page.getByLabel("Email address").fill("demo@example.com");
    await page.getByLabel("Password").fill(password);
    await page.getByRole("button", { name: "Sign in" }).click();
    if (password !== "demo-office-2026")
      await expect(page.getByText(/email or password is incorrect/)).toBeVisible();
  }
  await expect(page).toHaveURL(`${DEMO_OFFICE}${FENNEL}/cost`);
});

test("a page tells a stranger not even its name", async ({ page }) => {
  const path = "/office/authorities/authority-quillhaven";
  const answer = await page.request.get(path, { maxRedirects: 0 });
  expect(await answer.text()).not.toContain("Quillhaven");
  await open(page, path);
  await expect(page).toHaveTitle(/^Sign in/);
});

test("no route of the office answers a stranger", async ({ page }) => {
  const routes = fs
    .readdirSync("app", { recursive: true, encoding: "utf8" })
    .filter((file) => path.basename(file) === "route.ts")
    .map((file) => `/${path.dirname(file)}`)
    // A private link is its reader's own key, and so is a calendar's address.
    .filter((route) => !route.startsWith("/n/") && !route.startsWith("/calendar/"));
  expect(routes.length).toBeGreaterThan(8);
  for (const route of routes) {
    const at = route.replace("[lineId]", "fennel-0001").replaceAll(/\[\w+\]/g, "x");
    for (const method of ["GET", "PUT"]) {
      const answer = await page.request.fetch(`${at}?of=people&topic=who`, {
        method,
        maxRedirects: 0,
        headers: { origin: DEMO_OFFICE },
      });
      const told = `${method} ${at}: ${answer.status()}`;
      expect([401, 405], told).toContain(answer.status());
      expect(await answer.text(), told).not.toMatch(/Fennel|Quillhaven/);
    }
  }
});
