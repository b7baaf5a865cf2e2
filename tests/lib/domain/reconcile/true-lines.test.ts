import fc from "fast-check";
import { expect, test } from "vitest";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { Report } from "#lib/domain/findings/report.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { type KnownLine, knownLine, numbers } from "#tests/bench/truth.ts";

/**
 * Made-up lines of which the truth is known: the card's zero up to 8 ft off, its scale up to 4 %,
 * 0 to 5 tie-ins that are on no card, 0 to 5 entries that were never built, each reading up to half
 * its uncertainty off. Some are as regular as a comb, which fits itself in many places: a fixed seed
 * keeps the checks the same everywhere.
 */
const HARDNESS = { shift: 800, scale: 0.04, noise: 50 };
const SEED = 20_261_125;

const seeds = fc.integer({ min: 0, max: 2 ** 31 });

function judged(seed: number): KnownLine & { readonly report: Report } {
  const line = knownLine(numbers(seed), HARDNESS);
  return { ...line, report: reportOn(line.file, "2026-11-25") };
}

/** Pairs `e3 t3` of one and the same branch. */
function truePairs({ entries, tieIns }: LineFile): string[] {
  const built = new Set(tieIns.map(({ id }) => id.slice(1)));
  return entries.flatMap(({ id }) => (built.has(id.slice(1)) ? [`${id} t${id.slice(1)}`] : []));
}

function toldPairs({ proposals, alternatives }: Report): Set<string> {
  const told = [...proposals, ...alternatives.flatMap(({ pairs }) => pairs)];
  return new Set(told.map(({ entryId, tieInId }) => `${entryId} ${tieInId}`));
}

test("reportOn() calls nothing undocumented outright that the card shows", () => {
  fc.assert(
    fc.property(seeds, (seed) => {
      const { report, undocumented } = judged(seed);
      const outright = report.tieIns.filter(
        ({ standing, decided }) => standing === "undocumented" && decided,
      );
      expect(outright.map(({ tieIn }) => tieIn.id).filter((id) => !undocumented.has(id))).toEqual(
        [],
      );
    }),
    { numRuns: 150, seed: SEED },
  );
});

test("reportOn() proposes every true pair, or tells it among the other ways, where half the card is true", () => {
  fc.assert(
    fc.property(seeds, (seed) => {
      const { file, report } = judged(seed);
      const pairs = truePairs(file);
      fc.pre(pairs.length >= 5 && pairs.length * 2 >= file.entries.length);
      const told = toldPairs(report);
      expect(pairs.filter((pair) => !told.has(pair))).toEqual([]);
    }),
    { numRuns: 150, seed: SEED },
  );
});
