import { type ChildProcess, fork } from "node:child_process";
import fs from "node:fs";
import path from "node:path";
import { chromium } from "@playwright/test";
import { composeLetter } from "#lib/domain/paper/compose.ts";
import type { Letter } from "#lib/domain/paper/letter.ts";
import { readPdf } from "#tests/support/pdf.ts";
import { sampleLine, sampleNotice } from "#tests/support/sample-line.ts";
import { CHROMIUM } from "./browser.ts";
import { goal } from "./goals.ts";
import { lettersAsHtml } from "./letter-html.ts";
import type { Served } from "./served.ts";

const LETTERS = 100;
const PROBE_MS = 20;

/** A hundred letters of two pages by our own way, in a process apart as the worker is. */
export async function printLetters(served: Served): Promise<void> {
  console.log("");
  if (!fs.existsSync(CHROMIUM)) return console.log("No Chromium: letters are not measured.");
  console.log(`${LETTERS} letters of two pages, each with its drawing`);
  const letters = hundredLetters();
  const [maker, starting] = [fork(MAKER, { execArgv: ["--import", "tsx"] }), performance.now()];
  await said(maker);
  console.log(`  the maker started in ${seconds(performance.now() - starting)}`);
  const asked = { letters: letters.map((letter) => JSON.stringify(letter)) };
  const quiet = await longestPause(served, rest(2_000));
  const start = performance.now();
  const done = said(maker, asked);
  const pause = await longestPause(served, done);
  const ours = performance.now() - start;
  const { file } = (await done) as { file: string };
  const pages = Number(readPdf(fs.readFileSync(file)).info()["Pages"]);
  fs.rmSync(path.dirname(file), { recursive: true });
  maker.kill();
  const theirs = await byChromium(letters);
  console.log(
    `  ours ${seconds(ours)} (${pages} pages, ${((LETTERS / ours) * 1000).toFixed(1)} letters a second), Chromium’s print of the same HTML ${seconds(theirs)}`,
  );
  console.log(
    `  longest wait for a small page meanwhile ${pause.toFixed(0)} ms, ${quiet.toFixed(0)} ms before`,
  );
  goal("100 two-page letters, drawn as the worker does", ours / theirs, {
    ...{ most: 1, unit: "times" },
    yardstick: `${seconds(theirs)} for Chromium’s print of the same HTML`,
  });
  goal("longest wait for a small page meanwhile", pause, {
    ...{ most: 50, unit: "ms" },
    yardstick: `${quiet.toFixed(0)} ms at rest`,
  });
}

const MAKER = new URL("./letters-maker.ts", import.meta.url);

function hundredLetters(): Letter[] {
  const { file, report, office } = sampleLine();
  const notice = sampleNotice("lodz", "p18", { kind: "finding" });
  const letter = composeLetter({ file, report, office, notice });
  return Array.from({ length: LETTERS }, (_, at) => ({
    ...letter,
    to: [`Reader ${at + 1}`, ...letter.to.slice(1)],
    reference: `${letter.reference}-${at + 1}`,
  }));
}

function said(child: ChildProcess, asked?: object): Promise<unknown> {
  return new Promise((resolve, reject) => {
    child.once("message", resolve);
    child.once("exit", (code) => reject(new Error(`The maker ended with ${code}`)));
    if (asked !== undefined) child.send(asked);
  });
}

function rest(ms: number): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, ms));
}

/** The longest that the sign-in page took, asked again and again until something is done. */
async function longestPause({ base }: Served, until: Promise<unknown>): Promise<number> {
  let [longest, over] = [0, false];
  const ended = until.then(() => {
    over = true;
  });
  while (!over) {
    const start = performance.now();
    await (await fetch(`${base}/sign-in`)).text();
    longest = Math.max(longest, performance.now() - start);
    await rest(PROBE_MS);
  }
  await ended;
  return longest;
}

async function byChromium(letters: readonly Letter[]): Promise<number> {
  const html = lettersAsHtml(letters);
  const browser = await chromium.launch({
    executablePath: CHROMIUM,
    args: ["--no-sandbox", "--disable-gpu"],
  });
  const page = await browser.newPage();
  const start = performance.now();
  await page.setContent(html, { waitUntil: "load" });
  await page.pdf({ format: "Letter", preferCSSPageSize: true });
  const took = performance.now() - start;
  await browser.close();
  return took;
}

function seconds(ms: number): string {
  return `${(ms / 1000).toFixed(1)} s`;
}
