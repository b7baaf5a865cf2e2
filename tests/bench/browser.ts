import fs from "node:fs";
import { type BrowserContext, chromium, type Page } from "@playwright/test";
import { goal } from "./goals.ts";
import { LONG, type Served, SMALL } from "./served.ts";

export const CHROMIUM = process.env["WYEBOOK_CHROMIUM"] ?? "/usr/bin/chromium";
const CELLS = 5;

/** In a browser, on the longest line: a cell saved until the page shows it, and zooming the strip. */
export async function printBrowser(served: Served): Promise<void> {
  console.log("");
  if (!fs.existsSync(CHROMIUM)) return console.log("No Chromium: nothing measured in a browser.");
  console.log("In a browser, on the longest line");
  const browser = await chromium.launch({
    executablePath: CHROMIUM,
    args: ["--no-sandbox", "--disable-gpu"],
  });
  const context = await browser.newContext({ viewport: { width: 1280, height: 900 } });
  const [name = "", value = ""] = served.cookie.split("=");
  await context.addCookies([{ name, value, url: served.base }]);
  await printFonts(await context.newPage(), served.base);
  const page = await context.newPage();
  await printSaving(page, served.base);
  await printZooming(page, served.base);
  await printTyping(context, served.base);
  await browser.close();
}

/** Typefaces that a first visit fetches: the sign-in and a line's page. */
async function printFonts(page: Page, base: string): Promise<void> {
  let bytes = 0;
  page.on("requestfinished", async (request) => {
    if (request.resourceType() === "font") bytes += (await request.sizes()).responseBodySize;
  });
  for (const path of ["/sign-in", `/lines/${SMALL}`])
    await page.goto(base + path, { waitUntil: "networkidle" });
  console.log(`  typefaces of a first visit ${(bytes / 1024).toFixed(0)} KB`);
  goal("typefaces of a first visit", bytes / 1024, {
    ...{ most: 120, unit: "KB" },
    yardstick: "as sent",
  });
}

/** Ctrl+Enter saves nothing by itself; the table saves a while after the last key, which is not counted. */
async function printSaving(page: Page, base: string): Promise<void> {
  const sizes: { up: number; down: number }[] = [];
  page.on("requestfinished", async (request) => {
    if (request.method() !== "POST") return;
    const all = await request.sizes();
    sizes.push({ up: all.requestBodySize, down: all.responseBodySize });
  });
  await page.goto(`${base}/lines/${LONG}/camera/log?run=run0`);
  await page.waitForSelector("table[role=grid]:not([inert])");
  const times: number[] = [];
  for (let at = 0; at < CELLS; at += 1) {
    const cell = page.locator(`[data-place="${at + 2}:0"]`).first();
    await cell.click();
    const sent = page.waitForRequest((request) => request.method() === "POST");
    await cell.fill(`${20 + at}.3`);
    const request = await sent;
    const start = performance.now();
    await request.response();
    await page
      .getByText(`${20 + at}.3 ± `)
      .first()
      .waitFor();
    times.push(performance.now() - start);
  }
  const middle = times.toSorted((one, other) => one - other)[Math.floor(CELLS / 2)] ?? 0;
  const most = (of: "up" | "down") => Math.max(...sizes.map((each) => each[of])) / 1024;
  console.log(
    `  a cell saved ${middle.toFixed(0)} ms, ${most("up").toFixed(0)} KB up, ${most("down").toFixed(0)} KB down`,
  );
  const yardstick = "the wait before it saves by itself not counted";
  goal("a cell saved, until the page is answered", middle, { most: 300, unit: "ms", yardstick });
  goal("a saved cell, up", most("up"), { most: 50, unit: "KB", yardstick: "as sent" });
  goal("a saved cell, down", most("down"), { most: 50, unit: "KB", yardstick: "as sent, gzip" });
}

async function printZooming(page: Page, base: string): Promise<void> {
  await page.goto(`${base}/lines/${LONG}/reconcile`);
  const drawing = page.locator("figure[data-size] svg").first();
  const box = await drawing.boundingBox();
  await page.mouse.move((box?.x ?? 0) + 500, (box?.y ?? 0) + 60);
  const [idle, zoomed] = [await frames(page, 0), await frames(page, 60)];
  console.log(
    `  frames at rest p95 ${idle.toFixed(1)} ms, while the strip is zoomed ${zoomed.toFixed(1)} ms`,
  );
  goal("zooming the strip, p95 of frames", zoomed, {
    ...{ most: Math.max(17, idle * 1.05), unit: "ms" },
    yardstick: `${idle.toFixed(1)} ms at rest`,
  });
}

const PASTED = 1_000;
const KEYS = 12;

/** A key in a table of a thousand pasted rows, until the frame after it is there. */
async function printTyping(context: BrowserContext, base: string): Promise<void> {
  await context.grantPermissions(["clipboard-read", "clipboard-write"]);
  const page = await context.newPage();
  await page.goto(`${base}/lines/${LONG}/camera/log?run=run1`);
  await page.waitForSelector("table[role=grid]:not([inert])");
  const rows = Array.from({ length: PASTED }, (_, at) => `${(at / 10).toFixed(1)}\tnote`);
  await page.evaluate((text) => navigator.clipboard.writeText(text), rows.join("\n"));
  const cell = page.locator("table[role=grid] tr:last-child input").first();
  await cell.click();
  await page.keyboard.press("ControlOrMeta+V");
  const place = page.locator('[data-place$=":0"]').last();
  await place.click();
  await page.evaluate(KEY_TIMES);
  for (let key = 0; key < KEYS; key += 1) {
    await page.keyboard.press("1");
    await page.evaluate(UNTIL_PAINTED);
  }
  const times = await page.evaluate<number[]>("window.keyTimes.took");
  const middle = times.toSorted((one, other) => one - other)[Math.floor(times.length / 2)] ?? 0;
  console.log(`  a key among ${PASTED} pasted rows, until painted ${middle.toFixed(0)} ms`);
  goal("a key in a table of 1,000 pasted rows, until painted", middle, {
    ...{ most: 50, unit: "ms" },
    yardstick: "to the task behind its frame",
  });
}

const UNTIL_PAINTED = `new Promise((done) => {
  (function look() {
    if (window.keyTimes.waiting === 0) done();
    else setTimeout(look, 5);
  })();
})`;

/** From the key to the task behind the frame that shows it. */
const KEY_TIMES = `(() => {
  const times = { took: [], waiting: 0 };
  window.keyTimes = times;
  addEventListener("keydown", () => {
    const start = performance.now();
    times.waiting += 1;
    requestAnimationFrame(() => setTimeout(() => {
      times.took.push(performance.now() - start);
      times.waiting -= 1;
    }));
  }, true);
})()`;

/** As text, since what compiles this file would put helpers of its own into a function. */
const TIME_FRAMES = `new Promise((done) => {
  const took = [];
  let last = performance.now();
  const end = last + 2000;
  requestAnimationFrame(function tick() {
    const now = performance.now();
    took.push(now - last);
    last = now;
    if (now < end) requestAnimationFrame(tick);
    else done(took.sort((one, other) => one - other));
  });
})`;

/** The 95th percentile of the time between frames while the wheel turns so many times. */
async function frames(page: Page, turns: number): Promise<number> {
  const timed = page.evaluate<number[]>(TIME_FRAMES);
  await page.keyboard.down("Control");
  for (let turn = 0; turn < turns; turn += 1) await page.mouse.wheel(0, turn < 40 ? -40 : 40);
  await page.keyboard.up("Control");
  const took = await timed;
  return took[Math.floor(took.length * 0.95)] ?? 0;
}
