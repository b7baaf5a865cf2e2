import { expect, type Page, test } from "@playwright/test";
import { DEMO_OFFICE } from "../playwright.config.ts";
import { pasteRows, saved, table, typeRow } from "./support/grid.ts";
import { open, reopen } from "./support/open.ts";
import { openNewLine, signIn } from "./support/sign-in.ts";
import { CARD, HOUSES, NARRATION, TRUTH } from "./support/twelve-tie-ins.ts";

// A line of twelve tie-ins reconciled from a pasted card, a pasted narration and one recording, by
// somebody who reads what the pages say. Wrong input of each kind is tried on the way.

test.use({ baseURL: DEMO_OFFICE, permissions: ["clipboard-read", "clipboard-write"] });
test.setTimeout(600_000);

test("twelve tie-ins are reconciled from a card, a narration and a recording", async ({ page }) => {
  await signIn(page);
  const line = await openNewLine(page, "Tansy Court, 1 to 10");
  await test.step("the properties", () => enterHouses(page, line));
  await test.step("the card, pasted", () => enterCard(page, line));
  await test.step("the run", () => enterRun(page, line));
  await test.step("what was said, drafted and accepted", () => enterNarration(page, line));
  await test.step("the recording", () => addRecording(page, line));
  await test.step("do they agree", () => reconcile(page, line));
});

async function enterHouses(page: Page, line: string) {
  await open(page, `${line}/who`);
  await pasteRows(page, table(page, "One property a line"), {
    first: "Street address, new property",
    rows: [
      ["Street address", "City", "State", "ZIP", "Connection"],
      ...HOUSES.map((house) => [house, "Quillhaven", "WA", "98000", "connected"]),
    ],
  });
  await saved(page, "One property a line");
}

async function enterCard(page: Page, line: string) {
  await open(page, `${line}/record`);
  await typeRow(page, table(page, "One record a line"), {
    word: "record",
    cells: { Kind: "card", Title: "Side sewer card", Number: "88", "Measured from": "the main" },
  });
  await saved(page, "One record a line");
  await reopen(page);
  await pasteRows(page, table(page, "One entry a line"), {
    first: "Entry, new entry",
    rows: CARD,
  });
  await saved(page, "One entry a line");
  await expect(table(page, "One entry a line").locator("tr[data-row-id]")).toHaveCount(10);
}

async function enterRun(page: Page, line: string) {
  await open(page, `${line}/camera`);
  await typeRow(page, table(page, "One run a line"), {
    word: "run",
    cells: {
      Run: "Run 1",
      Day: "11/20/2026",
      Operator: "Lou Castellane",
      "Access point": "Upper cleanout behind 10",
      Direction: "downstream",
      "Zero at": "center of the cleanout",
      "Start footage, ft": "0",
      "End footage, ft": "212",
    },
  });
  await saved(page, "One run a line");
}

async function enterNarration(page: Page, line: string) {
  await open(page, `${line}/camera/log`);
  await page.getByRole("link", { name: "Draft the log from the narration" }).click();
  const form = page.getByRole("form", { name: "Add a transcript" });
  const draft = () => page.getByRole("button", { name: "Draft the log" }).click();
  await draft();
  await expect(form.getByText(/Paste the transcript, or choose a file/)).toBeVisible();
  await form.getByLabel("A transcript").setInputFiles({
    name: "run.vtt",
    mimeType: "text/vtt",
    buffer: Buffer.from([0x00, 0xff, 0xd8, 0x00, 0x01, 0x02, 0x00, 0xfe]),
  });
  await expect(form.getByText(/run\.vtt is not a text file/)).toBeVisible();
  await form.getByLabel("Or paste the text").fill(NARRATION);
  await draft();
  const rows = table(page, "Draft rows");
  await expect(rows).toBeVisible();
  await page.getByRole("button", { name: /Tie Run 1 there: 212\.0 is station 0\.0/ }).click();
  await expect(page.getByRole("button", { name: /Tie Run 1 there/ })).toHaveCount(0);

  // What was read out is taken as it is; the one that was placed by time is looked at first.
  await page.getByRole("button", { name: /Select all rows with a spoken footage/ }).click();
  await page.getByRole("button", { name: /^Accept \d+ selected rows/ }).click();
  await expect(page.getByText(/\d+ accepted/).first()).toBeVisible();
  const between = rows.getByRole("checkbox", { name: /another one/ });
  await between.check();
  await page.getByRole("button", { name: /^Accept 1 selected row/ }).click();
  await expect(between).toHaveCount(0);
  // A row taken back is open again, and can be accepted again.
  await rows.getByRole("button", { name: /Undo: “Five feet/ }).click();
  await expect(rows.getByRole("checkbox", { name: /Five feet/ })).toBeVisible();

  await open(page, `${line}/camera/log`);
  const log = table(page, "One observation a line");
  await expect(log.locator("tr[data-row-id]").filter({ hasText: "" })).not.toHaveCount(0);
}

async function addRecording(page: Page, line: string) {
  await open(page, `${line}/camera/log`);
  await page.getByText("Add the video of Run 1").click();
  const choose = page.getByLabel("Video file", { exact: true });
  await choose.setInputFiles({
    name: "notes.mp4",
    mimeType: "video/mp4",
    buffer: Buffer.from("this is no recording at all, only words"),
  });
  await expect(page.locator(".mend").filter({ hasText: /MP4|WebM/ })).toBeVisible();
  await choose.setInputFiles("tests/support/run.webm");
  const player = page.getByRole("region", { name: "Video of Run 1" });
  await expect(player).toBeVisible({ timeout: 60_000 });
  const video = player.locator("video");
  await expect
    .poll(() => video.evaluate((each: HTMLVideoElement) => each.readyState), { timeout: 60_000 })
    .toBeGreaterThan(0);
  // The keys move through it, and a still becomes the picture of the chosen row.
  await page.keyboard.press("Escape");
  await video.focus();
  await page.keyboard.press("Shift+ArrowRight");
  await expect
    .poll(() => video.evaluate((each: HTMLVideoElement) => each.currentTime))
    .toBeGreaterThan(3);
  await table(page, "One observation a line")
    .getByLabel("Counter, ft, row 1", { exact: true })
    .click();
  await video.focus();
  await page.keyboard.press("g");
  await expect(table(page, "One observation a line").locator("img").first()).toBeVisible({
    timeout: 60_000,
  });
}

async function reconcile(page: Page, line: string) {
  await open(page, `${line}/reconcile/line-up`);
  await expect(
    page.getByText(/the card reads 3\.\d ft short|shorter throughout/i).first(),
  ).toBeVisible();
  const lineUp = page.getByRole("form", { name: /^Accept .*upstream/ });
  await lineUp.getByRole("button", { name: "Accept" }).click();
  await expect(lineUp.getByText(/Select a reason/)).toBeVisible();
  await lineUp.getByLabel("Reason", { exact: true }).selectOption({ index: 2 });
  await lineUp.getByRole("button", { name: "Accept" }).click();
  await expect(page.getByText(/accepted by Dana Okafor/).first()).toBeVisible();
  await open(page, `${line}/reconcile/match`);
  await page.getByRole("button", { name: "Accept all 10" }).click();
  await expect(page.getByText("10 matches accepted.")).toBeVisible();
  await open(page, `${line}/reconcile`);
  await expect(page.getByText(/10 agree, 2 undocumented/).first()).toBeVisible();

  // Held against the truth: every station within its uncertainty, and the right two on no record.
  const standings = page.locator("#standings");
  for (const { station, card } of TRUTH) {
    const row = standings
      .getByRole("row")
      .filter({ has: page.getByRole("cell", { name: near(station) }) })
      .first();
    await expect(row, station).toContainText(card === null ? "undocumented" : "on record and seen");
    if (card !== null) await expect(row, station).toContainText(card);
  }
  await page.getByRole("link", { name: /in Spanish/ }).click();
  await expect(standings.getByText(/ningún registro|registro/).first()).toBeVisible();
}

/** A station as shown, or a tenth of a foot either way. */
function near(station: string): RegExp {
  const tenths = Math.round(Number(station) * 10);
  const around = [-2, -1, 0, 1, 2].map((by) => ((tenths + by) / 10).toFixed(1));
  return new RegExp(`^(${around.join("|").replaceAll(".", "\\.")}) ±`);
}
