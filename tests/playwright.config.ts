import fs from "node:fs";
import os from "node:os";
import path from "node:path";
import { defineConfig } from "@playwright/test";

const ROOT = path.resolve(import.meta.dirname, "..");
/** A folder of this run alone; the journeys' own processes learn of it through the environment. */
process.env["WYEBOOK_JOURNEY_FOLDER"] ??= fs.mkdtempSync(
  path.join(os.tmpdir(), "wyebook-journeys-"),
);
const SCRATCH = process.env["WYEBOOK_JOURNEY_FOLDER"];

/** Journeys run on an empty office and on the demo, each with a data folder of its own. */
export const EMPTY_OFFICE = "http://localhost:3291";
export const DEMO_OFFICE = "http://localhost:3292";

function office(port: number, command: string) {
  return {
    command: `node lib/commands/${command}`,
    cwd: ROOT,
    url: `http://localhost:${port}/sign-in`,
    timeout: 180_000,
    reuseExistingServer: false,
    gracefulShutdown: { signal: "SIGTERM" as const, timeout: 5000 },
    env: {
      PORT: String(port),
      WYEBOOK_DATA: path.join(SCRATCH, String(port)),
      WYEBOOK_TODAY: "2026-11-25",
    },
  };
}

const json = process.env["WYEBOOK_JOURNEYS_JSON"];

export default defineConfig({
  testDir: "e2e",
  outputDir: "../test-results",
  fullyParallel: false,
  workers: 1,
  timeout: 240_000,
  expect: { timeout: 15_000 },
  reporter: json ? [["list"], ["json", { outputFile: json }]] : [["list"]],
  use: {
    screenshot: "only-on-failure",
    actionTimeout: 15_000,
    navigationTimeout: 30_000,
    locale: "en-US",
    timezoneId: "America/Los_Angeles",
    viewport: { width: 1280, height: 900 },
    launchOptions: {
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
    },
  },
  webServer: [office(3291, "start.mjs"), office(3292, "demo.mjs")],
});
