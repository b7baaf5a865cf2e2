import { describe, expect, test } from "vitest";
import { apportion } from "#lib/domain/money/apportion.ts";
import { aScopeItem } from "#tests/support/file.ts";
import { amountsOf, aPricedLine, divideLine, exactOf } from "#tests/support/priced-line.ts";

/*
 * The airport game (Littlechild & Owen 1973): each needs the runway up to a length, and every piece
 * of it is paid equally by those who need it. A line is the same game: what an owner needs is the
 * pipe from the main up to its tie-in, here at one dollar a foot.
 */

/** One owner for each need, in feet; returns what `portion-used` asks of each. */
function sequentialShares(needs: readonly number[]) {
  const tieIns = needs.map((need, index) => ({
    id: `P${String(index).padStart(3, "0")}`,
    station: need * 100,
  }));
  const longest = Math.max(...needs);
  const scope = [
    aScopeItem("pipe", { from: 0, to: longest * 100, quantity: longest * 100, rate: 100 }),
  ];
  const outcome = divideLine(aPricedLine(tieIns, { scope }), "portion-used");
  const cents = exactOf(outcome);
  const amounts = amountsOf(outcome);
  const exact = tieIns.map(({ id }) => {
    const [n = "0", d = "1"] = (cents[id] ?? "").split("/");
    return Number(n) / Number(d) / 100;
  });
  return {
    exact,
    cents: tieIns.map(({ id }) => amounts[id] ?? 0),
    passes: outcome.standAlone?.passes ?? null,
  };
}

function expectClose(actual: readonly number[], expected: readonly number[], digits = 9) {
  expect(actual).toHaveLength(expected.length);
  for (const [index, value] of expected.entries()) expect(actual[index]).toBeCloseTo(value, digits);
}

describe("published worked examples", () => {
  // Wikipedia, "Airport problem": https://hellenicaworld.com/Science/Mathematics/en/AirportProblem.html
  test("needs of 8, 11, 13 and 18 pay 2, 3, 4 and 9, in whatever order they come", () => {
    expect(sequentialShares([8, 11, 13, 18]).exact).toEqual([2, 3, 4, 9]);
    expect(sequentialShares([18, 8, 13, 11]).exact).toEqual([9, 2, 4, 3]);
  });

  // Mathematics Stack Exchange 4152535: https://math.techqa.club/calculate-the-shapley-value-of-the-airport-game-4152535
  test("needs of 40 to 90 pay (40, 52, 67, 87, 117, 177) sixths", () => {
    const { exact } = sequentialShares([40, 50, 60, 70, 80, 90]);
    expectClose(exact, [40 / 6, 52 / 6, 67 / 6, 87 / 6, 117 / 6, 177 / 6]);
  });

  // https://thoughtfulexaminations.com/?p=19583
  test("needs of 1500, 2200 and 3000 pay 500, 850 and 1650; of 3500 the last alone pays more", () => {
    expect(sequentialShares([1500, 2200, 3000]).exact).toEqual([500, 850, 1650]);
    expect(sequentialShares([1500, 2200, 3500]).exact).toEqual([500, 850, 2150]);
  });

  // Example vector of the CRAN package AirportProblems; the shares are computed here.
  test("needs of 1, 3, 7 and 10 pay 1/4, 11/12, 35/12 and 71/12, in cents by largest remainder", () => {
    const { exact, cents } = sequentialShares([1, 3, 7, 10]);
    expectClose(exact, [1 / 4, 11 / 12, 35 / 12, 71 / 12]);
    // Three remainders of two thirds tie for two cents: to the lowest first, as computed from the
    // plain rule; on a line, to the tie-ins farthest upstream.
    expect(apportion(1_000, [3n, 11n, 35n, 71n])).toEqual([25, 92, 292, 591]);
    expect(cents).toEqual([25, 91, 292, 592]);
  });

  // Computed here: three remainders of two thirds tie for two cents.
  test("needs of 40 to 90 in cents, by the plain order and by that of a line", () => {
    const sixths = [40n, 52n, 67n, 87n, 117n, 177n];
    expect(apportion(9_000, sixths)).toEqual([667, 867, 1116, 1450, 1950, 2950]);
    expect(sequentialShares([40, 50, 60, 70, 80, 90]).cents).toEqual([
      666, 867, 1117, 1450, 1950, 2950,
    ]);
  });

  // Castro, Gómez & Tejada 2009, section 4.3: a hundred players who need 1 to 10.
  test("a hundred players who need 1 to 10 pay as published to nine decimals", () => {
    const counts = [8, 12, 6, 14, 8, 9, 13, 10, 10, 10];
    const published = [
      0.01, 0.020869565, 0.033369565, 0.046883079, 0.063549745, 0.082780515, 0.106036329,
      0.139369662, 0.189369662, 0.289369662,
    ];
    const { exact, passes } = sequentialShares(
      counts.flatMap((count, index) => Array.from({ length: count }, () => index + 1)),
    );
    const expected = counts.flatMap((count, index) =>
      Array.from({ length: count }, () => published[index] ?? 0),
    );
    // Published for a cost of one a step; the line costs one a foot, so the same numbers.
    expectClose(exact, expected, 8);
    expect(exact.reduce((sum, share) => sum + share, 0)).toBeCloseTo(10, 9);
    expect(passes).toBe(true);
  });

  // A test vector of twenty players in a public repository, one of whom needs nothing.
  test("a player who needs nothing pays nothing, and nineteen others pay as published", () => {
    const needs = [0, 1, 1, 2, 2, 3, 4, 4, 4, 4, 5, 5, 5, 6, 6, 7, 7, 7, 8, 8];
    const shares: Record<number, number> = {
      0: 0,
      1: 0.052631578947,
      2: 0.111455108359,
      3: 0.178121775026,
      4: 0.249550346454,
      5: 0.349550346454,
      6: 0.492407489312,
      7: 0.692407489312,
      8: 1.192407489312,
    };
    expectClose(
      sequentialShares(needs).exact,
      needs.map((need) => shares[need] ?? 0),
      11,
    );
  });

  // Elevator data of the CRAN package's data script; the shares are computed here.
  test("fourteen flats that need 25 000 to 45 000 pay to the cent", () => {
    const needs = [25_000, 30_000, 35_000, 45_000].flatMap((need, index) =>
      Array.from({ length: index === 3 ? 2 : 4 }, () => need),
    );
    const { exact, cents } = sequentialShares(needs);
    const shares = [1785.7143, 2285.7143, 3119.0476, 8119.0476];
    expectClose(
      exact,
      needs.map((_, index) => shares[Math.floor(index / 4)] ?? 0),
      4,
    );
    const parts = [375_000n, 480_000n, 655_000n, 1_705_000n];
    const plain = apportion(
      4_500_000,
      needs.map((_, index) => parts[Math.floor(index / 4)] ?? 0n),
    );
    expect(plain.slice(0, 4)).toEqual([178_572, 178_572, 178_571, 178_571]);
    expect(plain.slice(4)).toEqual([
      ...Array.from({ length: 4 }, () => 228_571),
      ...Array.from({ length: 4 }, () => 311_905),
      ...Array.from({ length: 2 }, () => 811_905),
    ]);
    // On a line the two odd cents go to those of the largest remainder who are farthest upstream.
    expect(cents.slice(0, 8)).toEqual([
      178_571, 178_571, 178_571, 178_571, 228_572, 228_572, 228_571, 228_571,
    ]);
    expect(cents.reduce((sum, share) => sum + share, 0)).toBe(4_500_000);
  });
});

describe("Birmingham airport, 1968/69", () => {
  // Littlechild & Thompson 1977, Bell Journal of Economics 8:186-204. Movements and costs as in the
  // CRAN package's data; the fees agree with the table printed in the papers (from memory) and are
  // computed here. Each movement is one owner, each pound one foot.
  const AIRCRAFT: readonly (readonly [string, number, number, number])[] = [
    ["Fokker 27", 42, 65_899, 4.86],
    ["Viscount 800", 9_555, 76_725, 5.66],
    ["Trident", 288, 95_200, 10.3],
    ["Britannia 100", 303, 97_200, 10.85],
    ["Caravelle VI R", 151, 97_436, 10.92],
    ["BAC 111", 1_315, 98_142, 11.13],
    ["Vanguard 953", 505, 102_496, 13.4],
    ["Comet 4B", 1_128, 104_849, 15.07],
    ["Britannia 300", 151, 113_322, 44.8],
    ["Convair Coronado", 112, 115_440, 60.61],
    ["Boeing 707", 22, 117_676, 162.24],
  ];

  test("every movement pays the published fee, and all together the runway", () => {
    const needs = AIRCRAFT.flatMap(([, movements, cost]) =>
      Array.from({ length: movements }, () => cost),
    );
    const tieIns = needs.map((need, index) => ({ id: `M${index}`, station: need }));
    const scope = [aScopeItem("runway", { from: 0, to: 117_676, quantity: 11_767_600, rate: 100 })];
    const outcome = divideLine(aPricedLine(tieIns, { scope }), "portion-used");
    expect(outcome.total).toBe(11_767_600);
    expect(outcome.shares.reduce((sum, share) => sum + share.amount, 0)).toBe(11_767_600);
    const exact = exactOf(outcome);
    let first = 0;
    for (const [aircraft, movements, , fee] of AIRCRAFT) {
      const [n = "0", d = "1"] = (exact[`M${first}`] ?? "").split("/");
      expect({ aircraft, fee: (Number(n) / Number(d) / 100).toFixed(2) }).toEqual({
        aircraft,
        fee: fee.toFixed(2),
      });
      first += movements;
    }
  });
});
