// npm run explore [-- MINUTES [FILE …]]: runs the property tests on fresh seeds and counts what they find.
import { randomInt } from "node:crypto";
import fs from "node:fs";
import path from "node:path";
import { ROOT, requireNode, run, say, stop } from "./house.mjs";

/** Cases for each property that names no number of its own. */
const RUNS = 1_000;

requireNode();
const [minutesGiven = "10", ...only] = process.argv.slice(2);
const minutes = Number(minutesGiven);
if (!(minutes > 0)) stop("Say for how many minutes, for example: npm run explore -- 10");

const files = only.length > 0 ? only : propertyTests();
const until = Date.now() + minutes * 60_000;
const found = [];
let rounds = 0;
do {
  const seed = randomInt(2 ** 31);
  say(`\n== seed ${seed}`);
  const { status, output } = run(
    process.execPath,
    [
      "node_modules/vitest/vitest.mjs",
      "run",
      "--config",
      "tests/vitest.config.ts",
      "--reporter=dot",
      ...files,
    ],
    { env: { WYEBOOK_SEED: String(seed), WYEBOOK_RUNS: String(RUNS) }, quiet: true },
  );
  rounds += 1;
  say(status === 0 ? "nothing found" : output);
  if (status !== 0) found.push(seed);
} while (Date.now() < until);

say(`\n${rounds} rounds over ${files.length} files, ${found.length} with something found`);
if (found.length > 0)
  say(
    `Seeds: ${found.join(", ")}. The path of each case stands above; make it an example in a test.`,
  );
process.exit(found.length === 0 ? 0 : 1);

/** Test files that draw their cases. */
function propertyTests() {
  return fs
    .readdirSync(path.join(ROOT, "tests"), { recursive: true })
    .map((name) => path.join("tests", String(name)))
    .filter((file) => /\.test\.tsx?$/.test(file))
    .filter((file) => fs.readFileSync(path.join(ROOT, file), "utf8").includes('from "fast-check"'))
    .sort();
}
