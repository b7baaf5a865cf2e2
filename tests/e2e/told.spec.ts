import { execFileSync } from "node:child_process";
import fs from "node:fs";
import os from "node:os";
import path from "node:path";
import { type Browser, expect, type Locator, type Page, test } from "@playwright/test";
import { LAUNCH } from "../playwright.config.ts";
import { aBounce, startMailbox } from "../support/imap-server.ts";
import { type Peer, startPeer } from "../support/smtp-server.ts";
import { open, reopen } from "./support/open.ts";
import { type OwnOffice, startOwnOffice } from "./support/own-office.ts";
import { paperId, readPaper } from "./support/paper.ts";
import { signedIn } from "./support/private-link.ts";
import { foundryRow, OWNER_LIST } from "./support/twelve-owners.ts";

// From a list of owners to the proof that each was told: a batch in two languages by email and by mail,
// two addresses that a server refuses, one message that comes back, an objection and a question from
// private pages, each dealt with by name, the roll-call on a phone, and what is printed of it all.

const REFUSED = ["gwen@example.com", "b@example.com"];
const RETURNED = "fola@example.com";
const POSTED = ["Ines Zamora", "Reed Holloway", "Celia Bustos", "June Pelletier"];
/** With check digits that fit, by the sums of tests/lib/domain/notices/tracking.test.ts. */
const NUMBERS = [
  ...["9407 5550 1000 0000 0000 04", "9407 5550 1000 0000 0000 11"],
  ...["9407 5550 1000 0000 0000 28", "9407 5550 1000 0000 0000 35"],
];
const PHONE = { viewport: { width: 390, height: 844 } };
const OUTSIDE = "office.example.com";

// Neighbors reach the office by its name, as the mail says it; here that name leads to this machine.
test.use({
  launchOptions: {
    ...LAUNCH,
    args: [...LAUNCH.args, `--host-resolver-rules=MAP ${OUTSIDE} 127.0.0.1`],
  },
});
test.setTimeout(400_000);

let office: OwnOffice;
let peer: Peer;
let mailbox: Awaited<ReturnType<typeof startMailbox>>;

test.beforeAll(async () => {
  test.setTimeout(240_000);
  peer = await startPeer((address) => (REFUSED.includes(address) ? 550 : null));
  mailbox = await startMailbox();
  office = await startOwnOffice({
    folder: fs.mkdtempSync(path.join(os.tmpdir(), "wyebook-told-")),
    worker: true,
    env: (port) => ({
      WYEBOOK_ADDRESS: `http://${OUTSIDE}:${port}`,
      WYEBOOK_SMTP_HOST: peer.smtp.host,
      WYEBOOK_SMTP_PORT: String(peer.smtp.port),
      WYEBOOK_IMAP_HOST: mailbox.imap.host,
      WYEBOOK_IMAP_PORT: String(mailbox.imap.port),
      WYEBOOK_IMAP_USER: mailbox.imap.user,
      WYEBOOK_IMAP_PASSWORD: mailbox.imap.password,
    }),
  });
});

test.afterAll(async () => {
  await office.stop();
  await peer.stop();
  await mailbox.stop();
});

test("twelve owners are told, each answer is dealt with, and what was done is proven", async ({
  browser,
}) => {
  const context = await browser.newContext({ baseURL: office.origin });
  await signedIn(office, context);
  const page = await context.newPage();
  const line = await test.step("a line, and a list of owners", () => bringIn(page));
  await test.step("a batch to all twelve, eight by email", () => emailBatch(page, line));
  await test.step("the mail server refuses two, one comes back", () => comeBack(page, line));
  await test.step("four go by certified mail, printed and numbered", () => mailBatch(page, line));
  await test.step("a question without scripts, an objection on a phone", () => answers(browser));
  await test.step("each is on the desk until it is dealt with", () => dealWithAll(page, line));
  await test.step("what came back goes another way", () => secondAttempts(page, line));
  await test.step("the roll-call on a phone", () => rollCall(browser, line));
  await test.step("the declaration and the proof are printed", () => proof(page, line));
  await context.close();
});

async function bringIn(page: Page): Promise<string> {
  await open(page, "/lines/import");
  await page.getByLabel("Or paste it here").fill(foundryRow("Larkmoor Row"));
  await page.getByRole("button", { name: "Import" }).click();
  await expect(page).toHaveURL(/\/lines\/line-larkmoor/);
  const line = new URL(page.url()).pathname.replace(/^(\/lines\/[^/]+).*/, "$1");
  await open(page, `${line}/who`);
  await page.getByRole("link", { name: "Import a list of owners" }).click();
  await page.locator('input[type="file"]').setInputFiles({
    ...{ name: "owners.csv", mimeType: "text/csv", buffer: Buffer.from(OWNER_LIST) },
  });
  await page.getByLabel(/^No column is “Order of names/).selectOption({ index: 1 });
  await expect(page.getByRole("table", { name: "Ready: properties and people" })).toContainText(
    "Marisol Aguirre, owner",
  );
  await page.getByRole("button", { name: /^Import 9/ }).click();
  await expect(page.getByText(/9 rows imported into/)).toBeVisible();
  return line;
}

const batchOf = (line: string) => `${line}/notices/batch?kind=finding`;

async function emailBatch(page: Page, line: string): Promise<void> {
  await open(page, batchOf(line));
  await expect(page.getByText("12 letters: 12 not written")).toBeVisible();
  await page.getByRole("button", { name: "Write 12 drafts" }).click();
  const send = page.getByRole("form", { name: "Send the batch" });
  await expect(send.getByRole("checkbox", { name: /^Shared-line finding to / })).toHaveCount(12);
  await expect(send.getByRole("row", { name: /Marisol Aguirre/ })).toContainText("Spanish");
  for (const name of POSTED) await boxOf(send, name).uncheck();
  await send.getByLabel("Delivery method").selectOption({ label: "email" });
  await send.getByRole("button", { name: "Record as sent and print" }).click();
  await expect(boxOf(send, "Marisol Aguirre")).toHaveCount(0);
  await expect(send.getByRole("checkbox", { name: /^Shared-line finding to / })).toHaveCount(4);
}

function boxOf(form: Locator, name: string): Locator {
  return form.getByRole("checkbox", { name: `Shared-line finding to ${name}`, exact: true });
}

/** The page once it says so: what the worker does meanwhile is shown to whoever looks again. */
async function untilIt(page: Page, says: (page: Page) => Promise<void>): Promise<void> {
  await expect(async () => {
    await reopen(page);
    await says(page);
  }).toPass({ timeout: 150_000 });
}

async function comeBack(page: Page, line: string): Promise<void> {
  await open(page, `${line}/notices`);
  await untilIt(page, async () => {
    const outbox = page.locator("#outbox");
    for (const address of REFUSED)
      await expect(outbox.getByRole("row", { name: address })).toContainText("not sent", {
        timeout: 500,
      });
    await expect(outbox.getByRole("row")).toHaveCount(REFUSED.length + 1, { timeout: 500 });
  });
  expect(peer.received).toHaveLength(6);
  expect(new Set(peer.received.map(({ attachments }) => attachments[0]?.filename)).size).toBe(2);
  mailbox.add(aBounce({ messageId: mailTo(RETURNED).messageId ?? "", to: RETURNED }));
}

function mailTo(address: string) {
  const mail = peer.received.find(({ to }) => JSON.stringify(to).includes(address));
  if (mail === undefined) throw new Error(`Nothing came to ${address}`);
  return mail;
}

async function mailBatch(page: Page, line: string): Promise<void> {
  await open(page, batchOf(line));
  const send = page.getByRole("form", { name: "Send the batch" });
  for (const name of POSTED) await expect(boxOf(send, name)).toBeChecked();
  await send.getByLabel("Delivery method").selectOption({ label: "certified mail" });
  await send.getByRole("button", { name: "Record as sent and print" }).click();
  const numbers = page.getByRole("form", { name: "Certified mail numbers" });
  const fields = numbers.getByRole("textbox");
  await expect(fields).toHaveCount(4);
  for (const [at, number] of NUMBERS.entries())
    await fields.nth(at).fill(at === 2 ? "9407 5550" : number);
  await numbers.getByRole("button", { name: "Save numbers" }).click();
  await expect(numbers.getByText(/has 20 or 22 digits/)).toBeVisible();
  await expect(fields.nth(3)).toHaveValue(NUMBERS[3] ?? "");
  await fields.nth(2).fill(NUMBERS[2] ?? "");
  await numbers.getByRole("button", { name: "Save numbers" }).click();
  await expect(page.locator("#numbers")).toContainText("all 4 entered");
  const print = page.locator("#prints").getByRole("link", { name: "Open the print" });
  await untilIt(page, async () => await expect(print).toBeVisible({ timeout: 500 }));
  const answer = await page.request.get((await print.getAttribute("href")) ?? "");
  const text = textOf(await answer.body()).replaceAll(/\s+/g, " ");
  for (const words of ["INES ZAMORA", "900 SIGNAL HILL", "CELIA BUSTOS", "JUNE PELLETIER"])
    expect(text.toUpperCase()).toContain(words);
  expect(text.match(/\b\w{4}-\w{4}-\w{4}\b/g)).toHaveLength(4);
  expect(text).toContain("What the camera found in a shared sewer pipe");
  expect(text).toContain("Lo que vio la cámara en el desagüe compartido");
}

function textOf(pdf: Buffer): string {
  return execFileSync("pdftotext", ["-layout", "-", "-"], { input: pdf, encoding: "utf8" });
}

/** The link that a message carries. */
function linkIn(address: string): string {
  const link = new RegExp(`http://${OUTSIDE}:\\d+/n/[\\w-]{43}`).exec(mailTo(address).text ?? "");
  if (link === null) throw new Error(`No link in the message to ${address}`);
  return link[0];
}

async function answers(browser: Browser): Promise<void> {
  const plain = await browser.newContext({ ...PHONE, javaScriptEnabled: false });
  const page = await plain.newPage();
  await page.goto(linkIn("pieter@example.com"));
  await say(page, {
    choice: "I have a question",
    words: "When will you dig?",
    send: "Send this to the office",
    sent: "Sent. Your reply is shown above",
  });
  await plain.close();
  const phone = await browser.newContext(PHONE);
  const lit = await phone.newPage();
  await open(lit, linkIn("marisol@example.com"));
  await say(lit, {
    choice: "No estoy de acuerdo",
    words: "Mi casa tiene su propio desagüe",
    send: "Enviarlo a la oficina",
    sent: "Enviado. Su respuesta aparece más arriba",
  });
  await phone.close();
}

interface Saying {
  readonly choice: string;
  readonly words: string;
  readonly send: string;
  readonly sent: string;
}

async function say(page: Page, { choice, words, send, sent }: Saying): Promise<void> {
  const form = page.locator("#say form");
  if (!(await form.isVisible())) await page.locator("#say summary").click();
  await form.getByRole("radio", { name: choice }).check();
  await form.locator("textarea").fill(words);
  await form.getByRole("button", { name: send }).click();
  await expect(page.getByText(sent)).toBeVisible();
}

async function dealWithAll(page: Page, line: string): Promise<void> {
  await open(page, "/due/due");
  await untilIt(page, async () => {
    for (const words of ["When will you dig?", "Mi casa tiene su propio desagüe"])
      await expect(page.getByText(words).first()).toBeVisible({ timeout: 500 });
  });
  await open(page, `${line}/notices`);
  const waiting = page.locator("#replies");
  await expect(waiting).toContainText("It counts as a refusal until someone has dealt with it");
  for (const [words, done] of [
    ["Mi casa tiene su propio desagüe", "Called her: she sends the plan of her own sewer."],
    ["When will you dig?", "Told him the day on the phone."],
  ] as const) {
    const card = waiting.getByRole("article").filter({ hasText: words });
    const form = card.getByRole("form", { name: /^Deal with this reply/ });
    if (!(await form.isVisible())) await card.getByText("Deal with it", { exact: true }).click();
    await form.getByLabel(/^How you dealt with it/).selectOption({ label: "called back" });
    await form.getByLabel(/^What was said or done/).fill(done);
    await form.getByRole("button", { name: "Mark as dealt with" }).click();
    await expect(card).toHaveCount(0);
  }
  await expect(waiting).toHaveCount(0);
  await open(page, "/due/due");
  await untilIt(page, async () => {
    await expect(page.getByText("When will you dig?")).toHaveCount(0, { timeout: 500 });
  });
}

async function secondAttempts(page: Page, line: string): Promise<void> {
  await open(page, `${line}/notices`);
  const chase = page.locator("#chase");
  const back = chase.getByRole("row").filter({ hasText: "Next: first-class mail" });
  await untilIt(page, async () => await expect(back).toHaveCount(3, { timeout: 500 }));
  for (let left = 3; left > 0; left -= 1) {
    await back.first().getByRole("link", { name: "Shared-line finding" }).click();
    const form = page.getByRole("form", { name: "Add an attempt" });
    await page.getByText("Add an attempt", { exact: true }).click();
    await form.getByRole("button", { name: "Record the attempt" }).click();
    await expect(
      page.getByRole("heading", { name: /^First-class mail, .*: in transit/ }),
    ).toBeVisible();
    await open(page, `${line}/notices`);
    await expect(back).toHaveCount(left - 1);
  }
}

async function rollCall(browser: Browser, line: string): Promise<void> {
  const context = await browser.newContext({ ...PHONE, baseURL: office.origin });
  await signedIn(office, context);
  const page = await context.newPage();
  await open(page, `${line}/schedule/roll-call`);
  const off = page.locator("#drains-off");
  const head = off.getByRole("heading", { level: 2 });
  await expect(head).toContainText("6 of 6 not reached");
  const door = (street: string | RegExp) => off.getByRole("listitem").filter({ hasText: street });
  for (const [street, left] of [
    [/(^|\D)1 Larkmoor Row/, 5],
    [/(^|\D)3 Larkmoor Row/, 4],
    [/(^|\D)5 Larkmoor Row/, 3],
  ] as const) {
    await door(street).getByRole("button", { name: "Agreed", exact: true }).click();
    await expect(head).toContainText(`${left} of 6 not reached`);
  }
  const gone = door("7 Larkmoor Row");
  await gone.getByRole("button", { name: "Not reached", exact: true }).click();
  await expect(gone).toContainText("Tried, not reached");
  await gone.getByText("Go ahead without reaching them").click();
  await gone.getByLabel(/^Why, in the name of/).fill("Away until January; water is off");
  await gone.getByRole("button", { name: "Waive this door" }).click();
  await expect(off).toContainText("“Away until January; water is off” Waived by");
  await expect(head).toContainText("2 of 6 not reached");
  await open(page, `${line}/schedule`);
  await expect(page.getByText("2 of 6 not reached").first()).toBeVisible();
  await context.close();
}

async function proof(page: Page, line: string): Promise<void> {
  await open(page, `${line}/notices/deliveries`);
  await page.locator("#declaration summary").click();
  const form = page.getByRole("form", { name: "Declaration of delivery" });
  await form.getByRole("button", { name: "Print the declaration" }).click();
  const declared = form.getByRole("link", { name: "Open it" });
  await expect(declared).toBeVisible({ timeout: 90_000 });
  const declaration = await readPaper(page, paperId(await declared.getAttribute("href")));
  expect(declaration.complaints).toBe("");
  const text = declaration.text.replaceAll(/\s+/g, " ");
  // Eight emails, but for the three that were refused or came back; those three went by mail after.
  expect(text.match(/Sent by email/g)).toHaveLength(5);
  expect(text.match(/Mailed by certified mail/g)).toHaveLength(4);
  expect(text.match(/Mailed by first-class mail/g)).toHaveLength(3);
  for (const number of NUMBERS) expect(text).toContain(number);

  await open(page, `${line}/authority`);
  await page.getByRole("button", { name: "Build the packet" }).click();
  const built = page.locator("#packet").getByRole("link", { name: "Open it" }).first();
  await expect(built).toBeVisible({ timeout: 90_000 });
  const packet = await readPaper(page, paperId(await built.getAttribute("href")));
  expect(packet.complaints).toBe("");
  const proven = packet.text.replaceAll(/\s+/g, " ");
  // Who asked and who objected has been reached; mail that went out shows no arrival by itself.
  expect(proven).toContain("Nothing shows that a letter reached Gwen Tarrant");
  for (const name of ["Marisol Aguirre", "Pieter Van Dorn"])
    expect(proven).not.toContain(`Nothing shows that a letter reached ${name}`);
  expect(proven.match(/arrived: they answered/g)).toHaveLength(2);
  expect(proven.match(/failed November 25, 2026/g)).toHaveLength(3);
  expect(proven.match(/No\. 9407 5550 1000/g)).toHaveLength(4);
  expect(proven.match(/e-mail, November 25, 2026 sent; no proof of delivery/g)).toHaveLength(3);
}
