import AxeBuilder from "@axe-core/playwright";
import { type Browser, expect, type Page, test } from "@playwright/test";
import { DEMO_OFFICE } from "../playwright.config.ts";
import { saved, table, typeRow } from "./support/grid.ts";
import { open, reopen } from "./support/open.ts";
import { signIn } from "./support/sign-in.ts";
import { threeHouses } from "./support/three-houses.ts";

// From scope to a signed, superseded, signed again and paid split. The sums are worked by hand:
// tie-ins at 20, 40 and 60 ft; 10 to 50 ft at $100.00 a foot, each foot shared by those whose flow
// passes it: 1000/3; 1000/3 + 2000/2; 1000/3 + 2000/2 + 1000, the odd cent to the farthest upstream.
// Then $300.00 more at 15 ft, where all three pass.
const FIRST = { a: "$333.33", b: "$1,333.33", c: "$2,333.34" };
const SECOND = { a: "$433.33", b: "$1,433.33", c: "$2,433.34" };

test.use({ baseURL: DEMO_OFFICE });
test.setTimeout(600_000);

test("a split is signed, superseded, signed again and paid", async ({ page, browser }) => {
  await signIn(page);
  const line = await test.step("a line that is settled is brought in", () => bringIn(page));
  await test.step("the work is priced and split", () => price(page, line));
  const first = await test.step("the owner gets a private link", () => letterLink(page, line));
  await test.step("and signs it", () => sign(browser, first, FIRST.a));
  await test.step("more work supersedes the amount", () => supersede(page, line));
  const second = await test.step("a new letter, a new link", () => letterLink(page, line));
  await test.step("the old link says so, the new one is signed", async () => {
    await looksSuperseded(browser, first);
    await sign(browser, second, SECOND.a);
  });
  await test.step("the shares are invoiced and paid", () => pay(page, line));
  await test.step("an answer by phone to an invoice waits", () => answerByPhone(page, line));
});

async function bringIn(page: Page): Promise<string> {
  await open(page, "/lines/import");
  await page.getByLabel("Or paste it here").fill(threeHouses(`Larkmoor Row ${Date.now()}`));
  await page.getByRole("button", { name: "Import" }).click();
  await expect(page).toHaveURL(/\/lines\/line-larkmoor/);
  return new URL(page.url()).pathname;
}

async function typeWork(page: Page, cells: Readonly<Record<string, string>>) {
  await typeRow(page, table(page, "Priced work"), { word: "item", cells });
  await saved(page, "Priced work");
  await reopen(page);
}

async function choosePortion(page: Page, line: string, why: string) {
  await open(page, `${line}/cost/choose`);
  const choose = page.getByRole("form", { name: "Choose a rule" });
  await choose.getByRole("radio", { name: /^By portion used/ }).check();
  await choose.getByLabel("Why this rule").fill(why);
  await choose.getByRole("button", { name: "Choose this rule" }).click();
}

async function price(page: Page, line: string) {
  await open(page, `${line}/cost`);
  await typeWork(page, {
    Item: "Dig and replace",
    Location: "section",
    "From, ft": "10",
    "To, ft": "50",
    Quantity: "40",
    Unit: "ft",
    "Rate, $": "100",
  });
  await choosePortion(page, line, "All three owners asked for it");
  for (const amount of Object.values(FIRST))
    await expect(page.getByText(amount).first()).toBeVisible();
  await test.step("an amount opens into its calculation, which is fetched then", async () => {
    await open(page, `${line}/cost/compare`);
    const steps = page.getByRole("cell", { name: /10\.0–20\.0 ft/ });
    await expect(steps).toHaveCount(0);
    await page.getByRole("button", { name: /^\$333\.33 .*By portion used: show/ }).click();
    await expect(steps.first()).toBeVisible();
    await expect(page.getByText("Total $333.33 + 1/3 ¢, rounded to cents")).toBeVisible();
  });
}

/** Drafts and sends the proposed split to all owners; the private link of the first one's letter. */
async function letterLink(page: Page, line: string): Promise<string> {
  await open(page, `${line}/notices/write?kind=proposed-split`);
  await page.getByLabel("Reply by").fill("2026-12-10");
  await page.getByRole("button", { name: "Create drafts" }).click();
  const send = page.getByRole("form", { name: "Send selected letters" });
  await send.getByLabel("Delivery method").selectOption({ label: "certified mail" });
  await send.getByRole("button", { name: "Record selected as sent" }).click();
  await expect(page.getByText("3 letters recorded as sent")).toBeVisible();
  await open(page, `${line}/notices`);
  const letters = page.getByRole("link", { name: /Proposed split/ });
  const mine = page
    .getByRole("row")
    .filter({ hasText: "Odalys Marchetti" })
    .getByRole("link", { name: /Proposed split/ });
  await ((await mine.count()) > 0 ? mine : letters).last().click();
  const make = page.getByRole("form", { name: "Create a private link" });
  await make.getByRole("button").first().click();
  const link = page.getByLabel("Copy this link now; it won’t be shown again");
  await expect(link).toHaveValue(/\/n\/[\w-]{22,}$/);
  return new URL(await link.inputValue()).pathname;
}

async function sign(browser: Browser, link: string, amount: string) {
  const context = await browser.newContext({
    baseURL: DEMO_OFFICE,
    viewport: { width: 390, height: 844 },
  });
  const page = await context.newPage();
  const letter = page.getByRole("link", { name: "Open the letter as a PDF" }).first();
  await expect(async () => {
    await open(page, link);
    await expect(letter).toBeVisible({ timeout: 2_000 });
  }).toPass({ timeout: 120_000 });
  await expect(page.getByText(amount).first()).toBeVisible();
  await expect(page.getByText(FIRST.c)).toHaveCount(0);
  await isReadableOnAPhone(page);
  await page.getByRole("navigation").getByRole("link", { name: "Sign on screen" }).click();
  const form = page.getByRole("form", { name: "Sign on screen" });
  const signNow = form.getByRole("button", { name: "Sign now" });
  await signNow.click();
  await expect(form.getByText(/Open the letter’s PDF first|Check what you agree to/)).toBeVisible();
  const paper = await page.request.get((await letter.getAttribute("href")) ?? "");
  expect(paper.headers()["content-type"]).toContain("application/pdf");
  await form.getByRole("checkbox", { name: /I agree to pay/ }).check();
  await form.getByRole("checkbox", { name: /agree to sign this letter on screen/ }).check();
  await signNow.click();
  await expect(form.getByText("Enter your full name.")).toBeVisible();
  await form.getByRole("checkbox", { name: /I agree to pay/ }).check();
  await form.getByRole("checkbox", { name: /agree to sign this letter on screen/ }).check();
  await form.getByLabel("Your full name").fill("Odalys Marchetti");
  await signNow.click();
  await expect(page.getByRole("heading", { name: "What you have signed" })).toBeVisible();
  await expect(page.getByText("Valid.").first()).toBeVisible();
  await context.close();
}

async function isReadableOnAPhone(page: Page) {
  const { violations } = await new AxeBuilder({ page }).analyze();
  expect(violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`)).toEqual([]);
  const over = await page.evaluate(
    () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
  );
  expect(over).toBeLessThanOrEqual(0);
  // No table hides its last column, and the drawing can be read.
  const { hidden, smallest } = await page.evaluate(() => {
    const wide = [...document.querySelectorAll("main *")].filter(
      (each) => each.scrollWidth > each.clientWidth + 1 && each.clientWidth > 0,
    );
    const words = [...document.querySelectorAll<SVGTextElement>("main svg text")];
    const sizes = words.flatMap((each) => {
      const seen = each.getBoundingClientRect().width > 0 ? each.getScreenCTM() : null;
      if (seen === null) return [];
      return [Number.parseFloat(getComputedStyle(each).fontSize) * Math.hypot(seen.a, seen.b)];
    });
    return {
      hidden: wide
        .filter((each) => /auto|scroll|hidden/.test(getComputedStyle(each).overflowX))
        .filter((each) => each.querySelector("table") !== null)
        .map((each) => each.textContent?.slice(0, 60)),
      smallest: Math.min(...sizes),
    };
  });
  expect(hidden).toEqual([]);
  expect(smallest).toBeGreaterThanOrEqual(9);
}

async function looksSuperseded(browser: Browser, link: string) {
  const context = await browser.newContext({ baseURL: DEMO_OFFICE });
  const page = await context.newPage();
  await open(page, link);
  await expect(page.getByText(/Signed for an earlier amount/).first()).toBeVisible();
  await context.close();
}

async function supersede(page: Page, line: string) {
  await open(page, `${line}/notices/consents`);
  await expect(page.getByText(/Odalys Marchetti/).first()).toBeVisible();
  await open(page, `${line}/cost`);
  await typeWork(page, {
    Item: "Point repair at the crack",
    Location: "point",
    "From, ft": "15",
    Quantity: "1",
    Unit: "each",
    "Rate, $": "300",
  });
  await expect(page.getByText(/out of date|stale/i).first()).toBeVisible();
  await choosePortion(page, line, "The crack at 15 ft is repaired too");
  for (const amount of Object.values(SECOND))
    await expect(page.getByText(amount).first()).toBeVisible();
  await open(page, `${line}/notices/consents`);
  await expect(page.getByText(/earlier amount/i).first()).toBeVisible();
}

/** What a neighbor says on the phone about an invoice waits with all other replies. */
async function answerByPhone(page: Page, line: string) {
  await open(page, `${line}/cost/money#replies`);
  const call = page.getByRole("form", { name: "Record a reply" });
  await call.getByLabel("Invoice").selectOption({ index: 1 });
  await call.getByLabel(/^Reply/).selectOption({ label: "has a question" });
  await call.getByLabel("In their own words").fill("May I pay in two parts?");
  await call.getByRole("button", { name: "Record the reply" }).click();
  await expect(page.getByText("It waits until someone has dealt with it").first()).toBeVisible();
  await open(page, `${line}/notices`);
  await expect(page.getByText("“May I pay in two parts?”").first()).toBeVisible();
  const deal = page.getByRole("form", { name: /^Deal with this reply: .*has a question/ });
  await deal.getByLabel("How you dealt with it").selectOption({ label: "called back" });
  await deal.getByLabel("What was said or done").fill("Yes, half by December 15.");
  await deal.getByRole("button", { name: "Mark as dealt with" }).click();
  await expect(deal).toHaveCount(0);
}

async function pay(page: Page, line: string) {
  await open(page, `${line}/cost/money`);
  const invoice = page.getByRole("form", { name: "Create invoices" });
  await invoice.getByRole("button", { name: "Post and print invoices" }).click();
  await expect(page.getByText("$4,300.00").first()).toBeVisible();
  await open(page, `${line}/cost/money#enter`);
  const book = page.getByRole("form", { name: "Record a payment" });
  await book.getByLabel("Type").selectOption("payment");
  await book.getByLabel("Account").selectOption({ index: 1 });
  await book.getByLabel("Amount").fill("twelve");
  await book.getByLabel("Method").selectOption("check");
  await book.getByRole("button", { name: "Post to ledger" }).click();
  await expect(book.locator(".mend").first()).toBeVisible();
  await book.getByLabel("Amount").fill(SECOND.a);
  await book.getByLabel("Reference").fill("check 1042");
  await book.getByRole("button", { name: "Post to ledger" }).click();
  const account = page.getByRole("row").filter({ hasText: "1 Larkmoor Row" }).first();
  await expect(account).toContainText("$433.33");
  await expect(page.getByText("check 1042").first()).toBeVisible();

  const csv = await page.request.get(`${line}/cost/money/csv`);
  expect(await csv.text()).toContain("433.33");
  await open(page, `${line}/cost/money/a`);
  await expect(page.getByText("check 1042").first()).toBeVisible();
  await expect(page.getByText(SECOND.c)).toHaveCount(0);
}
