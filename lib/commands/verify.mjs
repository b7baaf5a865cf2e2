// npm run verify: installs, finds a browser, runs every check and test, and counts them.
import { spawn } from "node:child_process";
import fs from "node:fs";
import os from "node:os";
import path from "node:path";
import { stripVTControlCharacters } from "node:util";
import { build, install, ROOT, requireNode, run, say, stop } from "./house.mjs";
import { making } from "./making.mjs";

const BROWSERS = [
  process.env.WYEBOOK_CHROMIUM,
  "/usr/bin/chromium",
  "/usr/bin/chromium-browser",
  "/usr/bin/google-chrome",
  "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
  "/Applications/Chromium.app/Contents/MacOS/Chromium",
];

requireNode();
await making({ dataFolder: "" }, install);
const browser = findTools();
const scratch = fs.mkdtempSync(path.join(os.tmpdir(), "wyebook-verify-"));
const tally = { passed: 0, failed: 0, failures: [] };

/** Two things at a time where there are two cores: what one waits for, the other works through. */
const atOnce = os.availableParallelism() > 1;

await both(
  () => check("types", "npm", ["run", "-s", "types"]),
  async () => {
    await check("lint", "npm", ["run", "-s", "lint"]);
    await check("boundaries", "npm", ["run", "-s", "boundaries"]);
    await check("unused", "npm", ["run", "-s", "unused"]);
  },
);
await both(allUnitTests, async () => {
  await making({ dataFolder: "" }, build);
  await journeys();
});

fs.rmSync(scratch, { recursive: true, force: true });
for (const failure of tally.failures) say(`failed: ${failure}`);
say(`${tally.passed} passed, ${tally.failed} failed`);
process.exit(tally.failed === 0 ? 0 : 1);

/** Counts what a step came to; `named` are the tests of it that failed, each with its first words. */
function count(passed, failed, words, named = []) {
  tally.passed += passed;
  tally.failed += failed;
  if (failed > 0) tally.failures.push(words, ...named.map((name) => `  ${name}`));
}

async function both(one, other) {
  if (atOnce) return Promise.all([one(), other()]);
  await one();
  await other();
}

/** Runs a program whose output is shown whole when it is done, so that two never mix. */
async function told(name, command, args, env = {}) {
  const file = path.join(scratch, `${name.replaceAll(/\W+/g, "-")}.txt`);
  const out = fs.openSync(file, "w");
  say(`Running ${name} …`);
  const started = Date.now();
  const child = spawn(command, args, {
    cwd: ROOT,
    env: { ...process.env, NEXT_TELEMETRY_DISABLED: "1", ...env },
    stdio: ["ignore", out, out],
  });
  const status = await new Promise((resolve) => {
    child.once("error", () => resolve(1));
    child.once("close", (code) => resolve(code ?? 1));
  });
  fs.closeSync(out);
  const seconds = Math.round((Date.now() - started) / 1000);
  say(`\n== ${name} (${seconds} s)\n${fs.readFileSync(file, "utf8").trimEnd()}`);
  return status;
}

async function check(name, command, args) {
  const status = await told(name, command, args);
  count(status === 0 ? 1 : 0, status === 0 ? 0 : 1, name);
}

async function allUnitTests() {
  // Each test in one of two zones on either side of UTC; what computes with days in two more.
  for (const [at, zone] of ["America/Los_Angeles", "Pacific/Auckland"].entries())
    await unitTests(`tests, half ${at + 1} in ${zone}`, [`--shard=${at + 1}/2`], {
      WYEBOOK_TEST_ZONE: zone,
    });
  for (const zone of ["UTC", "Pacific/Honolulu"]) {
    await unitTests(
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
}

async function unitTests(name, only, env = {}) {
  const file = path.join(scratch, `${name.replaceAll(/\W+/g, "-")}.json`);
  const status = await told(
    name,
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
    env,
  );
  const report = readReport(file);
  const failed = report?.numFailedTests ?? 0;
  const named = (report?.testResults ?? []).flatMap(failuresOf);
  count(report?.numPassedTests ?? 0, status !== 0 && failed === 0 ? 1 : failed, name, named);
}

async function journeys() {
  const file = path.join(scratch, "journeys.json");
  const status = await told(
    "journeys in a browser",
    process.execPath,
    ["node_modules/@playwright/test/cli.js", "test", "--config", "tests/playwright.config.ts"],
    { WYEBOOK_CHROMIUM: browser, WYEBOOK_JOURNEYS_JSON: file },
  );
  const report = readReport(file);
  const failed = (report?.stats.unexpected ?? 0) + (report?.stats.flaky ?? 0);
  const named = journeysThatFailed(report?.suites ?? []);
  count(report?.stats.expected ?? 0, status !== 0 && failed === 0 ? 1 : failed, "journeys", named);
}

/** The tests of a file that failed; the file itself where it could not be run. */
function failuresOf({ name, status, message, assertionResults }) {
  const failed = assertionResults.filter((each) => each.status === "failed");
  const file = path.relative(ROOT, name);
  if (failed.length === 0 && status === "failed") return [`${file}: ${firstWords(message)}`];
  return failed.map(
    (each) => `${file} › ${each.fullName}: ${firstWords(each.failureMessages.join(" "))}`,
  );
}

/** The journeys that failed, or passed only when tried again. */
function journeysThatFailed(suites) {
  return suites.flatMap((suite) => [
    ...journeysThatFailed(suite.suites ?? []),
    ...(suite.specs ?? [])
      .filter(({ tests }) => tests.some(({ status }) => /unexpected|flaky/.test(status)))
      .map(({ file, title, tests }) => {
        const errors = tests.flatMap(({ results }) => results.flatMap((each) => each.errors ?? []));
        return `${file} › ${title}: ${firstWords(errors[0]?.message)}`;
      }),
  ]);
}

function firstWords(message = "") {
  return stripVTControlCharacters(message).replaceAll(/\s+/g, " ").trim().slice(0, 300);
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
