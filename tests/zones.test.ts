import fs from "node:fs";
import path from "node:path";
import { expect, test } from "vitest";

// Days are the office's and moments are UTC: which zone the machine stands in may decide nothing. So
// that no test need run in every zone, the code is kept from asking the machine.

const ROOT = path.resolve(import.meta.dirname, "..");

/** What asks the machine for its zone: parts of a local date, and formats without a zone of their own. */
const LOCAL = [
  /\.(?:get|set)(?:FullYear|Month|Date|Day|Hours|Minutes)\(/,
  /\.getTimezoneOffset\(/,
  /\.to(?:LocaleDate|LocaleTime|Date|Time)String\(/,
  /new Date\([^()]*,[^()]*\)/,
  /DateTimeFormat\(\)/,
  /DateTimeFormat\((?![^;]*?timeZone)/,
];

/** Where the machine's zone is the one that is meant. */
const MEANT: Readonly<Record<string, string>> = {
  "app/_components/grid/conflict.client.tsx": "the clock of who looks at the page",
  "app/_components/grid/status-line.client.tsx": "the clock of who looks at the page",
  "lib/operations/office-day.ts": "there is no office yet that has a zone",
};

test("nothing asks the machine for its zone, but where that is meant", () => {
  const files = ["app", "lib", "db", "seed"].flatMap((folder) =>
    fs
      .readdirSync(path.join(ROOT, folder), { recursive: true, encoding: "utf8" })
      .filter((name) => /\.tsx?$/.test(name))
      .map((name) => path.posix.join(folder, name)),
  );
  expect(files.length).toBeGreaterThan(800);
  const asking = files.filter((file) => {
    const text = fs.readFileSync(path.join(ROOT, file), "utf8");
    return LOCAL.some((each) => each.test(text));
  });
  expect(asking.sort()).toEqual(Object.keys(MEANT).sort());
});

test.each([
  ["new Date(2026, 10, 25)", true],
  ["at.getHours()", true],
  ["new Intl.DateTimeFormat('en-US', { dateStyle: 'long' }).format(at);", true],
  ["new Intl.DateTimeFormat('en-US', { dateStyle: 'long', timeZone: 'UTC' }).format(at);", false],
  ["at.getUTCHours()", false],
  ["new Date(Date.parse(at) + 60)", false],
])("%s asks the machine: %s", (code, asks) => {
  expect(LOCAL.some((each) => each.test(code))).toBe(asks);
});
