import fs from "node:fs";
import os from "node:os";
import path from "node:path";
import AxeBuilder from "@axe-core/playwright";
import { expect, type Locator, type Page, test } from "@playwright/test";
import { open } from "./support/open.ts";
import {
  builtActions,
  callAction,
  type OwnOffice,
  signInTo,
  startOwnOffice,
} from "./support/own-office.ts";
import { signedIn } from "./support/private-link.ts";

// A drain shutdown of today, door by door on a phone: who was told stays told, who was not stays loud
// on the desk and the line until the office goes ahead without them by name, with a reason.

const LINE = "ropewalk-0001";
const CALL = `/lines/${LINE}/schedule/roll-call`;

let office: OwnOffice;

test.beforeAll(async () => {
  test.setTimeout(240_000);
  const folder = fs.mkdtempSync(path.join(os.tmpdir(), "wyebook-roll-call-"));
  office = await startOwnOffice({ folder, worker: true });
  await planShutdown();
});

test.afterAll(async () => await office.stop());

/** The event “drain shutdown” of today in place of the demo’s, as its table saves it. */
async function planShutdown(): Promise<void> {
  const { cookie } = await signInTo(office, "demo@example.com");
  const action = builtActions().find(({ name }) => name === "saveRowsAction");
  if (action === undefined) throw new Error("There is no action that saves rows");
  const base = office.db
    .prepare("select revision from revisions where line_id = ? and table_name = 'events'")
    .pluck()
    .get(LINE);
  const there = office.db
    .prepare(
      "select id from dated_events where line_id = ? and event <> 'drains-paused' order by position",
    )
    .pluck()
    .all(LINE);
  const row = {
    ...{ id: "shutdown-today", event: "drains-paused", on: "2026-11-25", at: "08:00" },
    ...{ until: "12:00", lastOn: null, reference: "", note: "" },
  };
  const answer = await callAction(office, {
    ...{ action, cookie, path: `/lines/${LINE}/schedule` },
    args: [LINE, "events", Number(base ?? 0), [row], [...there, row.id]],
  });
  expect(answer.status).toBe(200);
}

test("a roll-call on a phone: told, not reached, needs help, agreed, waived by name; then once more", async ({
  browser,
}) => {
  const context = await browser.newContext({
    baseURL: office.origin,
    viewport: { width: 390, height: 844 },
  });
  await signedIn(office, context);
  const page = await context.newPage();
  await open(page, CALL);
  const off = page.locator("#drains-off");
  await expect(off.getByRole("heading", { level: 2 })).toContainText("4 of 4 not reached");
  await isClean(page);

  await press(off, 0, "Not reached");
  await expect(door(off, "Tried, not reached")).toHaveCount(1);
  await press(off, 0, "Agreed");
  await expect(off.getByRole("heading", { level: 2 })).toContainText("3 of 4 not reached");
  const unit = off.getByRole("listitem").filter({ hasText: "5 Ropewalk Lane, Unit 1" });
  await unit.getByRole("button", { name: "Needs help" }).click();
  await expect(unit).toContainText("Enter what help they need");
  await unit.getByLabel("What was said").fill("Uses a walker; wants a hand with buckets");
  await unit.getByRole("button", { name: "Needs help" }).click();
  await expect(off.getByRole("heading", { level: 2 })).toContainText(
    "2 of 4 not reached, 1 needs help",
  );
  const loud = "2 of 4 not reached, 1 needs help";
  await test.step("that is loud on the line and on the desk", async () => {
    await open(page, `/lines/${LINE}/schedule`);
    await expect(page.getByText(loud).first()).toBeVisible();
    await expect(async () => {
      await open(page, "/");
      await expect(page.getByText(loud).first()).toBeVisible({ timeout: 2_000 });
    }).toPass({ timeout: 30_000 });
  });
  await test.step("until they are reached, or waived by name with a reason", async () => {
    await open(page, CALL);
    await press(off, 0, "Aware");
    await expect(off.getByRole("heading", { level: 2 })).toContainText("2 of 4 not reached");
    await press(off, 0, "Aware");
    await expect(off.getByRole("heading", { level: 2 })).toContainText("1 of 4 not reached");
    await off.getByText("Go ahead without reaching them").first().click();
    const waive = off.getByRole("form", { name: /^Waive / }).first();
    await waive
      .getByLabel(/^Why, in the name of/)
      .fill("House is empty; water is off at the meter");
    await waive.getByRole("button", { name: "Waive this door" }).click();
    await expect(off.getByRole("heading", { level: 2 })).toContainText("waived");
    await expect(off).toContainText("“House is empty; water is off at the meter” Waived by");
  });
  await test.step("the same doors hear that drains are back on", async () => {
    const on = page.locator("#drains-on");
    await expect(on.getByRole("heading", { level: 2 })).toContainText("4 of 4 not told");
    await expect(on.getByRole("button", { name: "Agreed" })).toHaveCount(0);
    await press(on, 0, "Aware");
    await expect(on.getByRole("heading", { level: 2 })).toContainText("3 of 4 not told");
    await on.getByRole("link", { name: /You may use your drains again/ }).click();
    await expect(page).toHaveURL(/notices\/write\?kind=drains-back/);
    await expect(page.getByRole("button", { name: "Create drafts" })).toBeVisible();
  });
  await context.close();
});

/** The doors of a roll-call in one state. */
function door(call: Locator, state: string): Locator {
  return call.locator(".tag", { hasText: state });
}

async function press(call: Locator, at: number, words: string): Promise<void> {
  await call.getByRole("button", { name: words, exact: true }).nth(at).click();
}

async function isClean(page: Page): Promise<void> {
  const { violations } = await new AxeBuilder({ page }).analyze();
  expect(violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`)).toEqual([]);
  const over = await page.evaluate(
    () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
  );
  expect(over).toBeLessThanOrEqual(0);
}
