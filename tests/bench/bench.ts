import { spawnSync } from "node:child_process";
import fs from "node:fs";
import os from "node:os";
import path from "node:path";
import { parseArgs } from "node:util";
import { answersOn } from "#lib/domain/desk/answers.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { ScopeItem } from "#lib/domain/facts/scope.ts";
import { SPLIT_RULES } from "#lib/domain/facts/split.ts";
import type { Report } from "#lib/domain/findings/report.ts";
import { parseTree } from "#lib/domain/line/tree.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { drawStrip, drawStrips } from "#lib/domain/strip/draw.ts";
import { layStrip } from "#lib/domain/strip/layout.ts";
import {
  aFile,
  anAnchor,
  anObservation,
  aProperty,
  aRun,
  aScopeItem,
  aTieIn,
} from "#tests/support/file.ts";
import { printBrowser } from "./browser.ts";
import { goal, printGoals } from "./goals.ts";
import { printLetters } from "./letters.ts";
import { theLongLine } from "./long-line.ts";
import { printMemory } from "./memory.ts";
import { printNarrations } from "./narration.ts";
import { printPages } from "./pages.ts";
import { printPairing } from "./pairing.ts";
import { printPeople } from "./people.ts";
import { serveLongLine } from "./served.ts";
import { printWeights } from "./weights.ts";

// What it costs to compute, as ratios within this run, and how often the reconciliation is right.
// Times vary from machine to machine; ratios and rates are what to compare.

// With `-- --minutes 60`, nothing but how the memory holds under so many minutes of light load.

const TODAY = "2026-11-25";

const { minutes } = parseArgs({ options: { minutes: { type: "string" } } }).values;
if (minutes !== undefined) {
  const office = await serveLongLine();
  try {
    await printMemory(office, Number(minutes));
  } finally {
    office.stop();
  }
  printGoals();
  process.exit(0);
}

console.log("How the work grows (median of 5; ratio to the first row)");
grow("tree, tie-ins in one chain", [200, 2_000, 20_000], (size) => {
  const rows = Array.from({ length: size }, (_, at) => ({
    id: `t${at}`,
    parentId: at === 0 ? null : `t${at - 1}`,
    station: at,
  }));
  return () => parseTree(rows, { upperEnd: null });
});
grow("whole report, tie-ins on one line", [12, 40, 200], (size) => {
  const file = longLine(size, 20);
  return () => reportOn(file, TODAY);
});
grow(
  `report with ${SPLIT_RULES.length} rules, 200 properties, items of scope`,
  [1_000, 2_000, 10_000],
  (size) => {
    const file = longLine(200, size);
    return () => reportOn(file, TODAY);
  },
);

grow("strip laid out, tie-ins on one line", [10, 40, 160], (size) => {
  const file = longLine(size, 20);
  const drawing = drawStrip(file, reportOn(file, TODAY), "all");
  return () => layStrip(drawing, { width: 1200, size: "large", zoom: 1 });
});

console.log("");
printLongLine();

console.log("");
await import("./split.ts");

await import("./reconcile.ts");
printPairing();

await import("./desk.ts");

printNarrations();

printCommand();
const served = await serveLongLine();
try {
  await printPages(served);
  await printBrowser(served);
  await printWeights(served);
  await printPeople(served);
  await printLetters(served);
} finally {
  served.stop();
}
printGoals();

function longLine(tieIns: number, items: number): LineFile {
  const at = (index: number) => 500 + index * 400;
  const indices = Array.from({ length: tieIns }, (_, index) => index);
  const end = at(tieIns);
  return aFile({
    line: { upperEnd: end },
    properties: indices.map((index) => aProperty(`p${index}`)),
    tieIns: indices.map((index) =>
      aTieIn(`t${index}`, { propertyId: `p${index}`, kind: "building", settledReason: "bench" }),
    ),
    runs: [aRun("run", { looks: "upstream", fromCounter: 0, toCounter: end })],
    anchors: [anAnchor("run", { counter: 0, station: 0 })],
    observations: indices.map((index) =>
      anObservation(`o${index}`, { counter: at(index), clock: 9, tieInId: `t${index}` }),
    ),
    scope: Array.from(
      { length: items },
      (_, index): ScopeItem =>
        aScopeItem(`s${index}`, {
          place: "stretch",
          from: (index * 37) % end,
          to: Math.min(end, ((index * 37) % end) + 600),
          quantity: 600,
          unit: "ft",
          rate: 10_000 + index,
        }),
    ),
  });
}

/** What a page of the longest line waits for, beside the same of a line of four houses. */
function printLongLine(): void {
  console.log("The longest line that is taken, against a line of four houses (median of 5)");
  const files = [longLine(4, 8), theLongLine("long")] as const;
  const steps: readonly [string, (file: LineFile) => () => unknown][] = [
    ["report", (file) => () => reportOn(file, TODAY)],
    ["ten answers", withReport((file, report) => answersOn(file, report))],
    ["strip drawn", withReport((file, report) => drawStrips(file, report))],
    [
      "strip laid out",
      (file) => {
        const drawing = drawStrip(file, reportOn(file, TODAY), "all");
        return () => layStrip(drawing, { width: 1200, size: "large", zoom: 1 });
      },
    ],
  ];
  for (const [name, make] of steps) {
    const [few = 0, many = 0] = files.map((file) => median(5, make(file)));
    const ratio = `x${(many / few).toFixed(1)}`;
    console.log(
      `  ${pad(name, 18)}${pad(`${few.toFixed(1)} ms`, 13)}${pad(`${many.toFixed(1)} ms`, 13)}${ratio}`,
    );
  }
}

/** The report command as a person runs it, beside Node alone. */
function printCommand(): void {
  const line = (...args: string[]) => spawnSync("npm", ["run", "-s", "line", "--", ...args]).stdout;
  const file = path.join(fs.mkdtempSync(path.join(os.tmpdir(), "wyebook-bench-")), "example.json");
  fs.writeFileSync(file, line("example"));
  const bare = median(5, () => spawnSync("npm", ["exec", "-c", "node --version"]));
  const took = median(5, () => line("report", file));
  fs.rmSync(path.dirname(file), { recursive: true });
  goal("the report command on the example line", took / 1000, {
    ...{ most: 0.6, unit: "s" },
    yardstick: `${(bare / 1000).toFixed(1)} s for npm and Node alone`,
  });
}

function withReport(job: (file: LineFile, report: Report) => unknown) {
  return (file: LineFile) => {
    const report = reportOn(file, TODAY);
    return () => job(file, report);
  };
}

function grow(name: string, sizes: readonly number[], make: (size: number) => () => unknown): void {
  let first = 0;
  console.log(name);
  for (const size of sizes) {
    const job = make(size);
    const time = median(5, job);
    if (first === 0) first = time;
    const perSize = time / first / (size / (sizes[0] ?? size));
    console.log(
      `  ${pad(String(size), 8)}${pad(`${time.toFixed(1)} ms`, 13)}x${pad((time / first).toFixed(2), 9)}(${perSize.toFixed(2)} of linear)`,
    );
  }
}

function median(times: number, job: () => unknown): number {
  job();
  const took = Array.from({ length: times }, () => {
    const start = performance.now();
    job();
    return performance.now() - start;
  }).sort((a, b) => a - b);
  return took[Math.floor(times / 2)] ?? 0;
}

function pad(text: string, width: number): string {
  return text.padEnd(width);
}
