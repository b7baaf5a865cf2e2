import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { SPLIT_RULES, type SplitChoice, type SplitRule } from "#lib/domain/facts/split.ts";
import type { Found } from "#lib/domain/sharing/ground.ts";
import { splitOutcome, splitOutcomes } from "#lib/domain/split/outcomes.ts";
import { aFinding } from "#tests/support/answers.ts";
import { aFile, anAgreement, aProperty, aScopeItem, aTieIn } from "#tests/support/file.ts";

// What dividing costs, by rule, as ratios within this run. `npx tsx tests/bench/split.ts`

const ITEMS = 1_000;
const SIZES = [200, 2_000, 10_000];

const lines = SIZES.map(aLongLine);
console.log(
  `Each of ${SPLIT_RULES.length} rules with the stand-alone test, ${ITEMS} items, ${SIZES.join(", ")} properties`,
);
for (const rule of SPLIT_RULES) {
  const choice = choiceOf(rule);
  print(
    rule,
    timesAt((line) => splitOutcome(line.file, line.found, choice)),
  );
}
print(
  "all rules",
  timesAt((line) => splitOutcomes(line.file, line.found)),
);

interface Line {
  readonly file: LineFile;
  readonly found: Found;
}

/** A line of so many properties, one tie-in each, with work over stretches, points and branches. */
function aLongLine(size: number): Line {
  const at = (index: number) => 500 + index * 100;
  const end = at(size);
  const indices = Array.from({ length: size }, (_, index) => index);
  const tieIns = indices.map((index) =>
    aFinding(aTieIn(`t${index}`, { propertyId: `p${index}`, station: at(index) })),
  );
  const file = aFile({
    line: { upperEnd: end },
    properties: indices.map((index) => ({ ...aProperty(`p${index}`), weight: 1 + (index % 7) })),
    tieIns: tieIns.map(({ tieIn }) => tieIn),
    agreements: [
      anAgreement("deed", {
        recordedOn: "1998-04-01",
        shares: indices.map((index) => ({ propertyId: `p${index}`, parts: 1 + (index % 3) })),
      }),
    ],
    scope: Array.from({ length: ITEMS }, (_, index) => {
      const from = Math.floor((index * end) / ITEMS / 2);
      return aScopeItem(`s${index}`, {
        from,
        to: Math.min(at(size - 1), from + 600),
        quantity: 600,
        rate: 10_000 + index,
      });
    }),
  });
  const bare = { tieIns, extent: end };
  return { file, found: { ...bare, reaches: [] } };
}

function choiceOf(rule: SplitRule): SplitChoice {
  return { rule, faultStation: 600, payerId: "p0", unknownShares: "held-apart" };
}

function timesAt(job: (line: Line) => unknown): number[] {
  const times: number[] = [];
  for (const line of lines) {
    job(line);
    const took = [1, 2, 3].map(() => {
      const began = performance.now();
      job(line);
      return performance.now() - began;
    });
    times.push(took.sort((a, b) => a - b)[1] ?? 0);
  }
  return times;
}

function print(name: string, times: readonly number[]): void {
  const first = times[0] ?? 1;
  const cells = times.map((time, at) => {
    const ratio = time / first;
    const linear = ratio / ((SIZES[at] ?? 1) / (SIZES[0] ?? 1));
    return `${time.toFixed(1)} ms x${ratio.toFixed(1)} (${linear.toFixed(2)} of linear)`.padEnd(38);
  });
  console.log(`  ${name.padEnd(20)}${cells.join("")}`);
}
