import { type ChildProcess, execFileSync, spawn } from "node:child_process";
import { once } from "node:events";
import fs from "node:fs";
import os from "node:os";
import path from "node:path";
import { type Browser, expect, type Page, test } from "@playwright/test";
import { freePort } from "./support/free-port.ts";
import { open } from "./support/open.ts";

// What two people do at one moment, over the command that an office starts, with its two page servers.

const PORT = await freePort();
const ORIGIN = `http://localhost:${PORT}`;
const MATCH = "/lines/fennel-0001/reconcile/match";

let folder: string;
let command: ChildProcess;

test.beforeAll(async () => {
  test.setTimeout(240_000);
  folder = fs.mkdtempSync(path.join(os.tmpdir(), "wyebook-two-"));
  const env = { ...process.env, WYEBOOK_DATA: folder, WYEBOOK_TODAY: "2026-11-25" };
  execFileSync(process.execPath, ["--import", "tsx", "seed/index.ts"], { env });
  command = spawn(process.execPath, ["lib/commands/start.mjs"], {
    env: { ...env, PORT: String(PORT), WYEBOOK_PAGE_SERVERS: "2" },
    stdio: ["ignore", "ignore", "inherit"],
  });
  const answers = () =>
    fetch(`${ORIGIN}/sign-in`).then(
      ({ ok }) => ok,
      () => false,
    );
  await expect.poll(answers, { timeout: 200_000 }).toBe(true);
});

test.afterAll(async () => {
  command.kill("SIGTERM");
  await once(command, "exit");
  fs.rmSync(folder, { recursive: true, force: true });
});

/** Somebody of the office in a browser of their own, at a page. */
async function somebodyAt(browser: Browser, place: string): Promise<Page> {
  const page = await (await browser.newContext({ baseURL: ORIGIN })).newPage();
  await open(page, `/sign-in?for=${encodeURIComponent(place)}`);
  await page.getByLabel("Email address").fill("demo@example.com");
  await page.getByLabel("Password").fill("demo-office-2026");
  await page.getByRole("button", { name: "Sign in" }).click();
  await expect(page).toHaveURL(`${ORIGIN}${place}`);
  return page;
}

/** Fills in the first form that matches an entry with another tie-in. */
async function fillMatch(page: Page) {
  const folded = page.locator("details", { has: page.getByLabel("Match with") }).first();
  await folded.locator("summary").click();
  await folded.getByLabel("Match with").selectOption({ index: 1 });
  await folded.getByRole("combobox", { name: "Reason" }).selectOption({ index: 1 });
  return folded.getByRole("button", { name: "Match" });
}

test("whoever decides second is told, although the form is gone from the page by then", async ({
  browser,
}) => {
  const [first, second] = await Promise.all([
    somebodyAt(browser, MATCH),
    somebodyAt(browser, MATCH),
  ]);
  const [match, again] = [await fillMatch(first), await fillMatch(second)];
  await match.click();
  await expect(match).toHaveCount(0);
  await again.click();
  await expect(second.getByText("someone else changed this in the meantime")).toBeVisible();
});

test("of two who settle one tie-in the second is told, and still sees what was typed", async ({
  browser,
}) => {
  const place = "/lines/fennel-0001/reconcile/undocumented";
  const people = [await somebodyAt(browser, place), await somebodyAt(browser, place)] as const;
  const [first, second] = people;
  const name = await first
    .getByRole("form", { name: /^Settle T/, includeHidden: true })
    .first()
    .getAttribute("aria-label");
  const forms = await Promise.all(
    people.map(async (page, at) => {
      const folded = page.locator("details", {
        has: page.getByRole("form", { name: name ?? "", exact: true, includeHidden: true }),
      });
      await folded.last().locator("> summary").click();
      const form = page.getByRole("form", { name: name ?? "", exact: true });
      await form.getByLabel("Owner", { exact: true }).selectOption({ index: at + 1 });
      await form.getByLabel("Reason (type it)").fill(`Evidence of person ${at + 1}`);
      return form;
    }),
  );
  await forms[0]?.getByRole("button", { name: /^Settle/ }).click();
  await expect(first.getByText("Evidence of person 1").first()).toBeAttached();
  await forms[1]?.getByRole("button", { name: /^Settle/ }).click();
  await expect(second.getByText("saved this since you opened it").first()).toBeVisible();
  await expect(
    second.getByRole("form", { name: name ?? "", exact: true }).getByLabel("Reason (type it)"),
  ).toHaveValue("Evidence of person 2");
});

test("of two admins who save one wording the second is told, and keeps the text", async ({
  browser,
}) => {
  const place = "/office/wording/finding";
  const pages = [await somebodyAt(browser, place), await somebodyAt(browser, place)] as const;
  const [first, second] = pages;
  const box = (page: Page) => page.getByLabel("Wording", { exact: true });
  const saves = (page: Page) => page.getByRole("button", { name: "Save and preview" });
  await box(first).fill("Words of the first.\n\n{facts}");
  await box(second).fill("Words of the second.\n\n{facts}");
  await saves(first).click();
  await expect(first.getByText("Version 1 is saved")).toBeVisible();
  await saves(second).click();
  await expect(second.getByText("saved this since you opened it")).toBeVisible();
  await expect(box(second)).toHaveValue("Words of the second.\n\n{facts}");
  await expect(second.getByText("Words of the first.").first()).toBeAttached();
  await saves(second).click();
  await expect(second.getByText("Version 2 is saved")).toBeVisible();
});
