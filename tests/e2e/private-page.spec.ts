import fs from "node:fs";
import os from "node:os";
import path from "node:path";
import AxeBuilder from "@axe-core/playwright";
import { type Browser, type BrowserContext, expect, type Page, test } from "@playwright/test";
import { open } from "./support/open.ts";
import { type OwnOffice, startOwnOffice } from "./support/own-office.ts";
import { privateLink } from "./support/private-link.ts";
import { strangersOf } from "./support/strangers.ts";

// What a neighbor opens from their letter: on a phone, in either language, with scripts off, and with
// nothing of anyone else in what the office's machine sends.

const PHONE = { viewport: { width: 390, height: 844 } };

let office: OwnOffice;

test.beforeAll(async () => {
  test.setTimeout(240_000);
  const folder = fs.mkdtempSync(path.join(os.tmpdir(), "wyebook-private-"));
  office = await startOwnOffice({ folder, worker: true });
});

test.afterAll(async () => await office.stop());

/** The letter of a kind to one address. */
function letterTo(propertyId: string, kind: string): { lineId: string; noticeId: string } {
  return office.db
    .prepare(
      "select line_id as lineId, id as noticeId from notices where property_id = ? and kind = ? and state = 'sent'",
    )
    .get(propertyId, kind) as { lineId: string; noticeId: string };
}

const KEPT = "select kind, words from replies where taken_by = 'private link' order by rowid";

test("a neighbor reads and answers with scripts off, on a phone, in both languages", async ({
  browser,
}) => {
  const link = await privateLink(office, letterTo("fr-12", "finding"));
  const context = await browser.newContext({
    ...PHONE,
    baseURL: office.origin,
    javaScriptEnabled: false,
  });
  const page = await context.newPage();
  await page.goto(link);
  await expect(page.getByRole("heading", { level: 1 })).toHaveText(/^A letter to you from/);
  await page.getByText("read it on this page").click();
  await expect(page.getByText("Dear Ottilie Brandvold:")).toBeVisible();
  await isNoWider(page);

  await page.getByRole("link", { name: "En español" }).click();
  await expect(page.getByRole("heading", { level: 1 })).toHaveText(/^Una carta para usted de/);
  await say(page, {
    choice: "Quiero esta carta en papel",
    words: "",
    send: "Enviarlo a la oficina",
  });
  await expect(page.getByText("Enviado. Su respuesta aparece más arriba")).toBeVisible();
  await expect(page.getByRole("region", { name: "Lo que nos ha dicho" })).toContainText(
    "Quiero esta carta en papel",
  );
  await page.getByRole("link", { name: "In English" }).click();
  await expect(page.getByRole("heading", { level: 1 })).toHaveText(/^A letter to you from/);

  await test.step("nothing is chosen, then nothing is said: told beside it, and what was typed stays", async () => {
    await say(page, { choice: null, words: "Is my drain on it?" });
    await expect(page.getByText("Choose a reply.")).toBeVisible();
    await expect(page.getByLabel("In your own words")).toHaveValue("Is my drain on it?");
    await say(page, { choice: "I have a question", words: "" });
    await expect(page.getByText("Enter a few words so the office knows").first()).toBeVisible();
    await expect(page.getByRole("radio", { name: "I have a question" })).toBeChecked();
  });
  const said = page.getByRole("region", { name: "What you have said so far" });
  for (const [choice, words] of [
    ["I have a question", "Is my drain on it?"],
    ["I agree with the letter", ""],
    ["I do not agree", "I have my own sewer"],
    ["The day in the letter does not work for me", "I work nights"],
  ] as const) {
    await say(page, { choice, words });
    await expect(page.getByText("Sent. Your reply is shown above")).toBeVisible();
    await expect(said).toContainText(words === "" ? choice : words);
  }
  expect(office.db.prepare(KEPT).all()).toEqual([
    { kind: "wants-paper", words: "" },
    { kind: "asks", words: "Is my drain on it?" },
    { kind: "agrees", words: "" },
    { kind: "disagrees", words: "I have my own sewer" },
    { kind: "wants-another-day", words: "I work nights" },
  ]);
  await context.close();
});

async function say(
  page: Page,
  { choice, words, send = "Send this to the office" }: Saying,
): Promise<void> {
  const form = page.locator("#say form");
  if (!(await form.isVisible())) await page.locator("#say summary").click();
  if (choice !== null) await form.getByRole("radio", { name: choice }).check();
  await form.locator("textarea").fill(words);
  await form.getByRole("button", { name: send }).click();
}

interface Saying {
  readonly choice: string | null;
  readonly words: string;
  readonly send?: string;
}

async function isNoWider(page: Page): Promise<void> {
  const over = await page.evaluate(
    () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
  );
  expect(over).toBeLessThanOrEqual(0);
}

test("where a code is typed, everything in Spanish is Spanish", async ({ browser }) => {
  const context = await browser.newContext({ ...PHONE, baseURL: office.origin });
  const page = await context.newPage();
  await open(page, "/n");
  await expect(page.locator('[lang="es"]')).toContainText("Código de su carta obligatorio");
  await expect(page.locator('[lang="es"]')).not.toContainText("required");
  await isClean(page);
  await context.close();
});

async function isClean(page: Page): Promise<void> {
  const { violations } = await new AxeBuilder({ page }).analyze();
  expect(violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`)).toEqual([]);
  await isNoWider(page);
}

for (const [propertyId, kind] of [
  ["fr-14", "finding"],
  ["rw-h2", "proposed-split"],
] as const)
  test(`nothing of others stands in anything that is sent to the reader of the ${kind}`, async ({
    browser,
  }) => {
    const letter = letterTo(propertyId, kind);
    const link = await privateLink(office, letter);
    const bodies = [
      ...(await everythingSent(browser, link)),
      ...(await everythingSent(browser, link, false)),
    ];
    const strangers = strangersOf(office.db, letter);
    expect(strangers.length).toBeGreaterThan(30);
    for (const { from, text } of bodies)
      expect(
        strangers.filter((one) => text.includes(one)),
        from,
      ).toEqual([]);
  });

interface Sent {
  readonly from: string;
  readonly text: string;
}

/** Every response with words in it to somebody who opens the page in both languages and answers. */
async function everythingSent(browser: Browser, link: string, scripts = true): Promise<Sent[]> {
  const context = await browser.newContext({
    ...PHONE,
    baseURL: office.origin,
    javaScriptEnabled: scripts,
  });
  const page = await context.newPage();
  const sent = await heard(context);
  await page.goto(`${link}?lang=es`);
  await page.getByRole("link", { name: "In English" }).click();
  await expect(page.getByRole("heading", { level: 1 })).toHaveText(/^A letter to you from/);
  if (scripts) {
    for (const fold of await page.locator("#letter summary, #say summary").all())
      await fold.click();
    await isClean(page);
    await page.locator("#say summary").click();
  }
  await say(page, { choice: "I want this letter on paper", words: "Large, please" });
  await expect(page.getByText("Large, please").first()).toBeVisible();
  const raw = await page.request.get(link, { headers: { RSC: "1" } });
  const bodies = [...sent, { from: "RSC", text: await raw.text() }];
  await context.close();
  expect(bodies.some(({ from }) => from.startsWith("POST"))).toBe(true);
  return bodies;
}

/** The responses to a browser as they come, forms and fetches too; the program's own files aside. */
async function heard(context: BrowserContext): Promise<Sent[]> {
  const sent: Sent[] = [];
  await context.route("**/n/**", async (route) => {
    const request = route.request();
    const response = await route.fetch({ maxRedirects: 0 });
    const from = `${request.method()} ${new URL(request.url()).pathname}`;
    sent.push({ from, text: await response.text() });
    await route.fulfill({ response });
  });
  return sent;
}
