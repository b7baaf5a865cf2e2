import fs from "node:fs";
import path from "node:path";
import { draftViews } from "#app/lines/[lineId]/camera/narration/draft-views.ts";
import type { SpokenReading } from "#lib/domain/narration/footage/run-told.ts";
import type { Draft, DraftLog } from "#lib/domain/narration/log/draft.ts";
import { draftLog } from "#lib/domain/narration/log/draft-log.ts";

// How well logs are drafted from talk. The narrations were written, with the log that an experienced
// person would keep, before anything was tuned on them; those under held-out/ and checked/ (other
// writers, and ours) never were tuned on.

const FOLDER = path.resolve(import.meta.dirname, "../narrations");
/** A drafted row is right if one of its kind was expected within so many feet. */
const NEAR = 1.5;

/** A spoken distance is right if a true one lies within so many feet. */
const SAME_READING = 0.3;

/** One row of the log that an experienced person would write; feet from the main where the talk measures from there, else on the run's counter. */
interface ExpectedRow {
  readonly kind: string;
  readonly at: number;
  readonly to?: number;
  /** How near counts as right, feet, where the place is worked out by time. */
  readonly near?: number;
  readonly fault?: string;
  readonly material?: string;
  readonly fitting?: string;
  readonly clock?: number;
  readonly hedged?: boolean;
  readonly record?: boolean;
}

interface Expected {
  readonly speaker: string;
  readonly looks: "upstream" | "downstream";
  /** What the rows' feet are measured from. The program has to find that out from the talk. */
  readonly measuredFrom: "access" | "main";
  /** Whether material rows name what lies upstream, or (else) what begins there as the camera moves. */
  readonly materialNames?: "upstream";
  /** Feet; what the run's anchors know. */
  readonly mainCounter: number | null;
  /** Feet; what the speaker tells. */
  readonly main: number | null;
  /** Every true spoken distance, feet. */
  readonly readings?: readonly number[];
  /** Numbers spoken that are no distance, as somebody noted them; for the reader. */
  readonly notDistances?: readonly string[];
  readonly gaps?: readonly (readonly [number, number])[];
  readonly log: readonly ExpectedRow[];
}

export interface Narrated {
  readonly name: string;
  readonly text: string;
  readonly expected: Expected;
  readonly log: DraftLog;
}

export interface Score {
  readonly kind: string;
  readonly expected: number;
  readonly drafted: number;
  readonly right: number;
  /** Sum of feet by which the right ones are off. */
  readonly off: number;
}

/** The narrations of a set with their drafted logs. */
export function narrations(set: "tuned" | "checked" | "held-out"): Narrated[] {
  const folder = set === "tuned" ? FOLDER : path.join(FOLDER, set);
  const files = fs.readdirSync(folder).filter((name) => /\.(vtt|srt|txt)$/.test(name));
  return files.sort().map((file) => {
    const name = path.parse(file).name;
    const text = fs.readFileSync(path.join(folder, file), "utf8");
    const expected: Expected = JSON.parse(
      fs.readFileSync(path.join(folder, `${name}.json`), "utf8"),
    );
    const mainCounter = expected.mainCounter === null ? null : expected.mainCounter * 100;
    const { looks } = expected;
    const log = draftLog(text, { looks, measuredFrom: null, mainCounter });
    return { name, text, expected, log };
  });
}

/** Pairs of drafted and expected rows, nearest first, each used once; and what is left on both sides. */
function compared(narrated: Narrated): {
  pairs: { draft: Draft; row: ExpectedRow; off: number }[];
  extra: Draft[];
  missing: ExpectedRow[];
} {
  const { log, expected } = narrated;
  const near = log.drafts.flatMap((draft) =>
    expected.log.flatMap((row) => {
      const off = offBy(narrated, draft, row);
      return off === null ? [] : [{ draft, row, off }];
    }),
  );
  const pairs: { draft: Draft; row: ExpectedRow; off: number }[] = [];
  for (const pair of near.sort((a, b) => a.off - b.off)) {
    const free = pairs.every(({ draft, row }) => draft !== pair.draft && row !== pair.row);
    if (free) pairs.push(pair);
  }
  return {
    pairs,
    extra: log.drafts.filter((one) => !pairs.some(({ draft }) => draft === one)),
    missing: expected.log.filter((one) => !pairs.some(({ row }) => row === one)),
  };
}

/** Feet between the two, the other side of a tie-in counting as another place; null if they do not match. */
function offBy({ log, expected }: Narrated, draft: Draft, row: ExpectedRow): number | null {
  const feet = feetOf({ log, expected }, draft);
  if (feet === null || labelOf(draftedLabel(expected, draft)) !== labelOf(row)) return null;
  const off = Math.abs(feet - row.at);
  const side =
    draft.clock !== null && row.clock !== undefined && draft.clock !== row.clock ? 0.01 : 0;
  return off <= Math.max(NEAR, row.near ?? 0) ? off + side : null;
}

/** Where a drafted row lies, on the axis of the log that was expected; a way in at the main is the main. */
function feetOf({ log, expected }: Pick<Narrated, "log" | "expected">, draft: Draft) {
  const atMain = log.measuredFrom === "main" && expected.main === 0;
  if (log.measuredFrom === expected.measuredFrom || atMain)
    return draft.counter === null ? null : draft.counter / 100;
  return expected.measuredFrom === "main" && draft.fromMain !== null ? draft.fromMain / 100 : null;
}

function draftedLabel(expected: Expected, draft: Draft): Draft {
  return expected.materialNames === "upstream"
    ? { ...draft, material: draft.upstreamMaterial }
    : draft;
}

function labelOf(row: {
  readonly kind: string;
  readonly fault?: string | null;
  readonly material?: string;
}): string {
  if (row.kind === "fault") return `fault ${row.fault}`;
  return row.kind === "material" ? `material ${row.material?.replace("fibre", "fiber")}` : row.kind;
}

/**
 * Distances that the program uses as places and that nobody gave; none where nobody noted the true
 * ones. Every counter is zeroed somewhere, so a zero is given whether its writer listed it or not.
 */
export function misread({ log, expected }: Narrated): SpokenReading[] {
  const { readings } = expected;
  if (readings === undefined) return [];
  return log.readings.filter(({ counter }) =>
    [0, ...readings].every((reading) => Math.abs(counter / 100 - reading) > SAME_READING),
  );
}

/** Figures per kind over several narrations, and over all kinds. */
export function scores(narrated: readonly Narrated[]): Score[] {
  const all = narrated.map(compared);
  const kinds = [
    ...new Set(
      narrated.flatMap(({ log, expected }) =>
        [...log.drafts, ...expected.log].map(({ kind }) => kind),
      ),
    ),
  ];
  const byKind = kinds.sort().map((kind): Score => {
    const is = (row: { readonly kind: string }) => row.kind === kind;
    const pairs = all.flatMap((one) => one.pairs).filter(({ row }) => is(row));
    return {
      kind,
      expected: narrated.flatMap(({ expected }) => expected.log).filter(is).length,
      drafted: narrated.flatMap(({ log }) => log.drafts).filter(is).length,
      right: pairs.length,
      off: pairs.reduce((sum, { off }) => sum + off, 0),
    };
  });
  return [...byKind, total(byKind)];
}

function total(rows: readonly Score[]): Score {
  const sum = (of: (row: Score) => number) => rows.reduce((all, row) => all + of(row), 0);
  return {
    kind: "all",
    expected: sum((row) => row.expected),
    drafted: sum((row) => row.drafted),
    right: sum((row) => row.right),
    off: sum((row) => row.off),
  };
}

export function precision({ right, drafted }: Score): number {
  return drafted === 0 ? 1 : right / drafted;
}

export function recall({ right, expected }: Score): number {
  return expected === 0 ? 1 : right / expected;
}

/** Of the rows that one press accepts, how many are right. */
function sureOnes(narrated: readonly Narrated[]): { sure: number; right: number } {
  const counts = narrated.map((one) => {
    const { seen } = draftViews({ observations: [], gaps: [] }, { decided: [] }, one.log);
    const sure = one.log.drafts.filter((_, at) => seen[at]?.sure);
    const { pairs } = compared(one);
    return [sure.length, pairs.filter(({ draft }) => sure.includes(draft)).length] as const;
  });
  return {
    sure: counts.reduce((sum, [sure]) => sum + sure, 0),
    right: counts.reduce((sum, [, right]) => sum + right, 0),
  };
}

/** Prints precision, recall and station error per kind, for the tuned and the held-out narrations. */
export function printNarrations(): void {
  for (const set of ["tuned", "checked", "held-out"] as const) {
    const narrated = narrations(set);
    console.log(`\nLogs drafted from talk, ${narrated.length} narrations, ${set}`);
    console.log("kind        expected  drafted  right   precision  recall  mean station error");
    for (const score of scores(narrated)) {
      const { kind, expected, drafted, right, off } = score;
      const error = right === 0 ? "" : `${(off / right).toFixed(2)} ft`;
      console.log(
        `${kind.padEnd(12)}${String(expected).padEnd(10)}${String(drafted).padEnd(9)}${String(right).padEnd(8)}${precision(score).toFixed(3).padEnd(11)}${recall(score).toFixed(3).padEnd(8)}${error}`,
      );
    }
    const { sure, right } = sureOnes(narrated);
    console.log(`accepted in one press: ${sure}, right ${(right / sure).toFixed(3)}`);
    const wrong = narrated.flatMap((one) =>
      misread(one).map(({ quote, counter }) => `${one.name}: ${counter / 100} ft in “${quote}”`),
    );
    console.log(`numbers misread as a distance: ${wrong.length}`);
    for (const words of wrong) console.log(`  ${words}`);
  }
}
