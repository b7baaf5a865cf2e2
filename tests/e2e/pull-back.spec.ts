import { expect, type Page, test } from "@playwright/test";
import { DEMO_OFFICE } from "../playwright.config.ts";
import { table } from "./support/grid.ts";
import { open } from "./support/open.ts";
import { paperId, readPaper } from "./support/paper.ts";
import { pullBackLine, TALK, TRUTH } from "./support/pull-back.ts";
import { signIn } from "./support/sign-in.ts";

// The commonest run there is: in at the house, down to the main, zeroed there, and told while the
// camera comes back, looking downstream all the way. Held against a card that was measured from the
// house. Of the five branches one was placed by time, and one is on no record.

test.use({ baseURL: DEMO_OFFICE });
test.setTimeout(600_000);

test("a pull-back from the main, told as captions, is held against a card from the house", async ({
  page,
}) => {
  await signIn(page);
  const line = await test.step("a line with its card is brought in", () => bringIn(page));
  await test.step("the run, as its technician tells it", () => addRun(page, line));
  await test.step("the talk becomes the log", () => acceptTalk(page, line));
  await test.step("stations, sides and winds are right", () => lookAtCamera(page, line));
  await test.step("do they agree", () => reconcile(page, line));
  await test.step("the schedule as a spreadsheet", () => takeOut(page, line));
  await test.step("the letter tells feet from the city’s pipe", () => readLetter(page, line));
  await test.step("the schedule tells it too", () => readSchedule(page, line));
});

async function bringIn(page: Page): Promise<string> {
  await open(page, "/lines/import");
  await page.getByLabel("Or paste it here").fill(pullBackLine(`Alder Street ${Date.now()}`));
  await page.getByRole("button", { name: "Import" }).click();
  await expect(page).toHaveURL(/\/lines\/line-alder/);
  return new URL(page.url()).pathname;
}

async function addRun(page: Page, line: string) {
  await open(page, `${line}/camera`);
  const form = page.getByRole("form", { name: "Add a run" });
  await expect(form).toBeVisible();
  await form.getByLabel("Access point").fill("House cleanout at 916");
  await form.getByLabel("End footage").fill("70");
  await form.getByRole("radio", { name: /^Toward the main/ }).check();
  await expect(form.getByText(/31\.5 ft from where the camera went in/)).toBeVisible();
  await form.getByRole("radio", { name: /^At the main/ }).check();
  await expect(form.getByText("31.5 ft on the counter is 31.5 ft from the main.")).toBeVisible();
  await expect(
    form.getByRole("img", { name: /looks toward the main; the footage is measured from the main/ }),
  ).toBeVisible();
  await form
    .getByRole("group", { name: "Self-leveling head?" })
    .getByRole("radio", { name: "yes" })
    .check();
  await form.getByRole("button", { name: "Add the run" }).click();
  await expect(
    page
      .getByRole("main")
      .getByText(/^Went in at House cleanout at 916 and pulled back/)
      .last(),
  ).toContainText("looking downstream, from 0.0 ft to 70.0 ft");
  await expect(page.getByText(/isn’t tied to the line/)).toHaveCount(0);
}

async function acceptTalk(page: Page, line: string) {
  await open(page, `${line}/camera/log`);
  await page.getByRole("link", { name: "Draft the log from the narration" }).click();
  const form = page.getByRole("form", { name: "Add a transcript" });
  await form.getByLabel("A transcript").setInputFiles({
    name: "alder.vtt",
    mimeType: "text/vtt",
    buffer: Buffer.from(TALK),
  });
  await page.getByRole("button", { name: "Draft the log" }).click();
  const rows = table(page, "Draft rows");
  await expect(rows).toBeVisible();
  // The footage is from the main already: nothing is to be tied.
  await expect(page.getByRole("button", { name: /^Tie Run 1 there/ })).toHaveCount(0);
  await page.getByRole("button", { name: /Select all rows with a spoken footage/ }).click();
  await page.getByRole("button", { name: /^Accept \d+ selected rows/ }).click();
  await expect(page.getByText(/\d+ accepted/).first()).toBeVisible();
  const between = rows.getByRole("checkbox", { name: /another wye on the left/ });
  await between.check();
  await page.getByRole("button", { name: /^Accept 1 selected row/ }).click();
  await expect(between).toHaveCount(0);
}

async function lookAtCamera(page: Page, line: string) {
  await open(page, `${line}/camera/log`);
  const log = table(page, "One observation a line");
  // A house number, the day or the time of day never became a footage.
  const counters = log.getByRole("textbox", { name: /^Counter, ft, row \d+$/ });
  const read = await counters.evaluateAll((cells) =>
    cells.map((cell) => Number((cell as HTMLInputElement).value)),
  );
  expect(Math.max(...read)).toBeLessThanOrEqual(70);
  await open(page, `${line}/camera/tie-ins`);
  const found = page.getByRole("main");
  for (const { station, side, compass } of TRUTH) {
    const row = found
      .getByRole("row")
      .filter({ has: page.getByRole("cell", { name: near(station) }) })
      .first();
    await expect(row, String(station)).toContainText(side);
    await expect(row, String(station)).toContainText(compass);
  }
}

async function reconcile(page: Page, line: string) {
  await open(page, `${line}/reconcile/match`);
  await page.getByRole("button", { name: "Accept all 4" }).click();
  await expect(page.getByText("4 matches accepted.")).toBeVisible();
  await open(page, `${line}/reconcile`);
  await expect(page.getByText(/4 agree, 1 undocumented/).first()).toBeVisible();
  const standings = page.locator("#standings");
  for (const { station, house } of TRUTH) {
    const row = standings
      .getByRole("row")
      .filter({ has: page.getByRole("cell", { name: near(station) }) })
      .first();
    await expect(row, String(station)).toContainText(
      house === null ? "undocumented" : "on record and seen",
    );
    if (house !== null) await expect(row).toContainText(`House ${house}`);
  }
}

/** What the office sends on: with how far off each station may be, its side by the compass, and its basis. */
async function takeOut(page: Page, line: string) {
  await open(page, `${line}/reconcile`);
  const link = page.getByRole("link", { name: "Schedule of connections, CSV" });
  const answer = await page.request.get(String(await link.getAttribute("href")));
  expect(answer.headers()["content-disposition"]).toContain("Schedule of connections 2026-11-25");
  const csv = await answer.text();
  for (const words of [
    /^T\d,12,1,"Run 1: 12\.0 ft on the counter, read, ± 1\.0 ft",left,south,.*House 904,"?Side sewer card, No\. 377"?,12,/m,
    /^T\d,21\.9,2\.9,"Run 1: 21\.9 ft on the counter, worked out by time, ± 2\.9 ft",right,north,.*House 906,/m,
    /^T\d,31\.5,1,.*,right,north,.*"?seen, not on record"?,/m,
  ]) {
    expect(csv).toMatch(words);
  }
  const book = await page.request.get(`${line}/tables/log?as=xlsx`);
  expect(book.headers()["content-type"]).toContain("spreadsheetml");
}

async function readLetter(page: Page, line: string) {
  await open(page, `${line}/notices/write?kind=tie-in-inquiry`);
  await page.getByLabel("Reply by").fill("2026-12-10");
  await page.getByRole("button", { name: "Create drafts" }).click();
  await expect(page.getByRole("form", { name: "Send selected letters" })).toBeVisible();
  await page
    .locator("a[href*='/notices/letter/']")
    .filter({ hasText: /inquiry/i })
    .first()
    .click();
  const letter = page.getByRole("article").first();
  await expect(letter).toContainText(
    "a branch that joins the shared sewer pipe 31.5 ft ± 1.0 ft from the city’s main, on the north side of the pipe",
  );
}

async function readSchedule(page: Page, line: string) {
  await open(page, `${line}/authority/permits`);
  const add = page.getByRole("form", { name: "Add a permit" });
  await add.getByLabel(/^Kind/).selectOption("side-sewer");
  await add.getByLabel("Number").fill("SS-26-3770");
  await add.getByRole("button").click();
  await expect(page.getByRole("form", { name: "Record today for the permit" })).toBeVisible();
  await open(page, `${line}/authority`);
  await page.getByRole("button", { name: "Build the packet" }).click();
  const finished = page.locator("#packet").getByRole("link", { name: "Open it" }).first();
  await expect(finished).toBeVisible({ timeout: 90_000 });
  const packet = await readPaper(page, paperId(await finished.getAttribute("href")));
  expect(packet.complaints).toBe("");
  // Mark, station, how far off, entry, as recorded from the main, side.
  for (const words of [
    /T\d\s+12\.0 ± 1\.0\s+House 904\s+12\.0\s+left, south/,
    /T\d\s+21\.9 ± 2\.9\s+House 906\s+22\.0\s+right, north/,
    /T\d\s+31\.5 ± 1\.0\s+none\s+–\s+right, north/,
    /T\d\s+52\.0 ± 1\.0\s+House 912\s+52\.0\s+right, north/,
    /T\d\s+63\.0 ± 1\.0\s+House 916\s+63\.0\s+left, south/,
  ]) {
    expect(packet.text).toMatch(words);
  }
}

/** A station as shown, or three tenths of a foot either way where it was placed by time. */
function near(station: number): RegExp {
  const around = [-3, -2, -1, 0, 1, 2, 3].map((by) => (station + by / 10).toFixed(1));
  return new RegExp(`^(${around.join("|").replaceAll(".", "\\.")}) ±`);
}
