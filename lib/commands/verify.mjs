// npm run verify: installs, finds a browser, runs every check and test, and counts them.
import fs from "node:fs";
import os from "node:os";
import path from "node:path";
import { build, install, requireNode, run, say, stop } from "./house.mjs";

const BROWSERS = [
  process.env.WYEBOOK_CHROMIUM,
  "/usr/bin/chromium",
  "/usr/bin/chromium-browser",
  "/usr/bin/google-chrome",
  "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
  "/Applications/Chromium.app/Contents/MacOS/Chromium",
];

requireNode();
install();
const browser = findTools();
const scratch = fs.mkdtempSync(path.join(os.tmpdir(), "wyebook-verify-"));
const tally = { passed: 0, failed: 0, failures: [] };

check("lint", "npm", ["run", "-s", "lint"]);
check("types", "npm", ["run", "-s", "types"]);
check("boundaries", "npm", ["run", "-s", "boundaries"]);
check("unused", "npm", ["run", "-s", "unused"]);
unitTests("tests", []);
for (const zone of ["Pacific/Auckland", "Pacific/Honolulu"]) {
  unitTests(
    `calendar tests in ${zone}`,
    [
      "tests/lib/domain/time",
      "tests/lib/domain/calendar",
      "tests/lib/domain/clocks",
      "tests/app/lines/clock-calendar.test.ts",
      "tests/published/calendar.test.ts",
    ],
    { WYEBOOK_TEST_ZONE: zone },
  );
}
build();
journeys();

fs.rmSync(scratch, { recursive: true, force: true });
for (const failure of tally.failures) say(`failed: ${failure}`);
say(`${tally.passed} passed, ${tally.failed} failed`);
process.exit(tally.failed === 0 ? 0 : 1);

function count(passed, failed, words) {
  tally.passed += passed;
  tally.failed += failed;
  if (failed > 0) tally.failures.push(words);
}

function check(name, command, args) {
  say(`\n== ${name}`);
  const { status } = run(command, args);
  count(status === 0 ? 1 : 0, status === 0 ? 0 : 1, name);
}

function unitTests(name, only, env = {}) {
  say(`\n== ${name}`);
  const file = path.join(scratch, `unit-${tally.passed}.json`);
  const { status } = run(
    process.execPath,
    [
      "node_modules/vitest/vitest.mjs",
      "run",
      "--config",
      "tests/vitest.config.ts",
      "--reporter=default",
      "--reporter=json",
      `--outputFile.json=${file}`,
      ...only,
    ],
    { env },
  );
  const report = readReport(file);
  const failed = report?.numFailedTests ?? 0;
  count(report?.numPassedTests ?? 0, status !== 0 && failed === 0 ? 1 : failed, name);
}

function journeys() {
  say("\n== journeys in a browser");
  const file = path.join(scratch, "journeys.json");
  const { status } = run(
    process.execPath,
    ["node_modules/@playwright/test/cli.js", "test", "--config", "tests/playwright.config.ts"],
    { env: { WYEBOOK_CHROMIUM: browser, WYEBOOK_JOURNEYS_JSON: file } },
  );
  const stats = readReport(file)?.stats;
  const failed = (stats?.unexpected ?? 0) + (stats?.flaky ?? 0);
  count(stats?.expected ?? 0, status !== 0 && failed === 0 ? 1 : failed, "journeys");
}

function readReport(file) {
  return fs.existsSync(file) ? JSON.parse(fs.readFileSync(file, "utf8")) : null;
}

/** Chromium, and the programs that read our PDFs back. Installs what Debian has. */
function findTools() {
  const missing = [];
  if (!BROWSERS.some((file) => file && fs.existsSync(file)))
    missing.push("chromium", "fonts-liberation");
  if (!isThere("pdftotext")) missing.push("poppler-utils");
  if (!isThere("qpdf")) missing.push("qpdf");
  if (missing.length > 0) installFromDebian(missing);
  const found = BROWSERS.find((file) => file && fs.existsSync(file));
  if (!found) {
    stop(
      "No Chromium was found and none could be installed. Install Chromium, or name one: WYEBOOK_CHROMIUM=/path/to/chromium npm run verify",
    );
  }
  return found;
}

function isThere(program) {
  return run("which", [program], { quiet: true }).status === 0;
}

function installFromDebian(packages) {
  const words = `These programs are missing and could not be installed: ${packages.join(", ")}. Install them with your system's package manager and run the command again.`;
  if (!isThere("apt-get")) stop(words);
  const root = process.getuid?.() === 0;
  const [command, ...before] = root ? ["apt-get"] : ["sudo", "-n", "apt-get"];
  say(`Installing ${packages.join(", ")} …`);
  run(command, [...before, "update"], { quiet: true });
  run(command, [...before, "install", "-y", "--no-install-recommends", ...packages], {
    quiet: true,
    words,
    env: { DEBIAN_FRONTEND: "noninteractive" },
  });
}
