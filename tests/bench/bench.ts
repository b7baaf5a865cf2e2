import type { LineFile } from "#lib/domain/file/line-file.ts";
import { reportOn } from "#lib/domain/file/report-on.ts";
import { parseTree } from "#lib/domain/line/tree.ts";
import type { ScopeItem } from "#lib/domain/split/scope.ts";
import { SPLIT_RULES } from "#lib/domain/split/split.ts";
import { drawStrip } from "#lib/domain/strip/draw.ts";
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
import { printNarrations } from "./narration.ts";
import { type KnownLine, knownLine, numbers } from "./truth.ts";

// What it costs to compute, as ratios within this run, and how often the reconciliation is right.
// Times vary from machine to machine; ratios and rates are what to compare.

const TODAY = "2026-11-25";

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
await import("./split.ts");

console.log("\nUndocumented tie-ins found, 400 made-up lines a row");
console.log(
  "Certain: called undocumented outright. Undecided: called undocumented “unless the record has another",
);
console.log(
  "zero” or with a conflict to explain; the numbers do not tell, and a person is asked. All: both.",
);
console.log(
  "                           certain              undecided  all                  nearest entry",
);
console.log(
  "shift   stretch  noise     precision  recall    share      precision  recall    precision  recall",
);
for (const [shift, scale, noise] of [
  [0, 0, 25],
  [300, 0, 25],
  [800, 0, 50],
  [0, 0.04, 50],
  [800, 0.04, 50],
] as const) {
  const next = numbers(20_261_125);
  const lines = Array.from({ length: 400 }, () => knownLine(next, { shift, scale, noise }));
  const told = lines.map((line) => ({ line, ...undocumentedByReport(line) }));
  const certain = rate(
    told.map(({ line, certain: said, undecided }) => ({
      said,
      truth: [...line.undocumented].filter((id) => !undecided.includes(id)),
    })),
  );
  const all = rate(
    told.map(({ line, certain: sure, undecided }) => ({
      said: [...sure, ...undecided],
      truth: [...line.undocumented],
    })),
  );
  const plain = rate(
    lines.map((line) => ({ said: undocumentedByNearest(line), truth: [...line.undocumented] })),
  );
  const setting = `${pad(`${shift / 100} ft`, 8)}${pad(`${scale * 100} %`, 9)}${pad(`${noise / 100} ft`, 10)}`;
  console.log(`${setting}${certain}  ${pad(share(told), 11)}${all}  ${plain}`);
}

printNarrations();

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
    runs: [aRun("run", { direction: "upstream", fromCounter: 0, toCounter: end })],
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

interface Told {
  readonly certain: readonly string[];
  readonly undecided: readonly string[];
}

function undocumentedByReport({ file }: KnownLine): Told {
  const undocumented = reportOn(file, TODAY).tieIns.filter(
    ({ standing }) => standing === "undocumented",
  );
  const idsOf = (decided: boolean) =>
    undocumented.filter((each) => each.decided === decided).map(({ tieIn }) => tieIn.id);
  return { certain: idsOf(true), undecided: idsOf(false) };
}

/** How much of what is called undocumented is left to a person. */
function share(told: readonly Told[]): string {
  const certain = told.reduce((sum, each) => sum + each.certain.length, 0);
  const undecided = told.reduce((sum, each) => sum + each.undecided.length, 0);
  return (undecided / Math.max(certain + undecided, 1)).toFixed(4);
}

/** What a person with a ruler does: no entry within 5 ft on the card as it stands, so not on record. */
function undocumentedByNearest({ file, card }: KnownLine): string[] {
  return file.observations
    .filter(({ counter }) => !card.some((distance) => Math.abs(distance - counter) <= 500))
    .map(({ tieInId }) => tieInId ?? "");
}

function rate(judged: readonly { said: readonly string[]; truth: readonly string[] }[]): string {
  let right = 0;
  let said = 0;
  let true_ = 0;
  for (const each of judged) {
    said += each.said.length;
    true_ += each.truth.length;
    right += each.said.filter((id) => each.truth.includes(id)).length;
  }
  const precision = said === 0 ? 1 : right / said;
  const recall = true_ === 0 ? 1 : right / true_;
  return `${pad(precision.toFixed(4), 11)}${pad(recall.toFixed(4), 8)}`;
}

function pad(text: string, width: number): string {
  return text.padEnd(width);
}
