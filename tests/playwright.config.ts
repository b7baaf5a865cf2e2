import fs from "node:fs";
import os from "node:os";
import path from "node:path";
import { defineConfig } from "@playwright/test";
import { freePort } from "./e2e/support/free-port.ts";

const ROOT = path.resolve(import.meta.dirname, "..");
/** A folder of this run alone; the journeys' own processes learn of it through the environment. */
process.env["WYEBOOK_JOURNEY_FOLDER"] ??= fs.mkdtempSync(
  path.join(os.tmpdir(), "wyebook-journeys-"),
);
const SCRATCH = process.env["WYEBOOK_JOURNEY_FOLDER"];

// Chosen once a run: the journeys' own processes read them from the environment.
process.env["WYEBOOK_JOURNEY_PORTS"] ??= `${await freePort()} ${await freePort()}`;
const [EMPTY_PORT = 0, DEMO_PORT = 0] = process.env["WYEBOOK_JOURNEY_PORTS"].split(" ").map(Number);

/** Journeys run on an empty office and on the demo, each with a data folder of its own. */
export const EMPTY_OFFICE = `http://localhost:${EMPTY_PORT}`;
export const DEMO_OFFICE = `http://localhost:${DEMO_PORT}`;
export const EMPTY_FOLDER = path.join(SCRATCH, "empty");
const DEMO_FOLDER = path.join(SCRATCH, "demo");

function office(command: string, port: number, folder: string) {
  return {
    command: `node lib/commands/${command}`,
    cwd: ROOT,
    url: `http://localhost:${port}/sign-in`,
    timeout: 600_000,
    reuseExistingServer: false,
    gracefulShutdown: { signal: "SIGTERM" as const, timeout: 5000 },
    env: {
      PORT: String(port),
      WYEBOOK_DATA: folder,
      WYEBOOK_TODAY: "2026-11-25",
      // One after the other, so that a page opened at once after a press has what was pressed;
      // kept-running.spec.ts serves an office by two.
      WYEBOOK_PAGE_SERVERS: "1",
    },
  };
}

const json = process.env["WYEBOOK_JOURNEYS_JSON"];

/** How the browser is started. */
export const LAUNCH = {
  executablePath: process.env["WYEBOOK_CHROMIUM"] ?? "/usr/bin/chromium",
  args: [
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
  ],
};

export default defineConfig({
  testDir: "e2e",
  outputDir: "../test-results",
  fullyParallel: false,
  workers: 1,
  timeout: 240_000,
  expect: { timeout: 30_000 },
  reporter: json ? [["list"], ["json", { outputFile: json }]] : [["list"]],
  use: {
    screenshot: "only-on-failure",
    actionTimeout: 30_000,
    navigationTimeout: 60_000,
    locale: "en-US",
    timezoneId: "America/Los_Angeles",
    viewport: { width: 1280, height: 900 },
    launchOptions: LAUNCH,
  },
  // One after the other: the first one builds, the second one finds it built.
  webServer: [
    office("start.mjs", EMPTY_PORT, EMPTY_FOLDER),
    office("demo.mjs", DEMO_PORT, DEMO_FOLDER),
  ],
});
