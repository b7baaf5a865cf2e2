import { describe, expect, test } from "vitest";
import { drainLimit } from "#lib/domain/capacity/drain-load.ts";
import { leastSlope } from "#lib/domain/capacity/drain-tables.ts";
import { unitsOfOne } from "#lib/domain/capacity/fixture-units.ts";
import { meetsSlope, SLOPES } from "#lib/domain/capacity/slope.ts";
import { slopeFinding } from "#lib/domain/capacity/slopes.ts";
import type { SlopeName } from "#lib/domain/facts/plumbing-code.ts";
import { ratio } from "#lib/domain/money/ratio.ts";

const at = (name: SlopeName) => SLOPES[name].slope;

describe("slopes", () => {
  // Computed here: 1/4 in in 12 in is 1/48.
  test.each([
    ["quarter-inch", 2.0833],
    ["eighth-inch", 1.0417],
    ["sixteenth-inch", 0.5208],
    ["half-inch", 4.1667],
  ] as const)("SLOPES[%s] is %f percent", (name, percent) => {
    const { n, d } = at(name);
    expect((Number(n) / Number(d)) * 100).toBeCloseTo(percent, 4);
  });

  // Codes call 1/4 in per foot "two percent" (UPC 708 as quoted at thebuildingcodeforum.com,
  // "Table 704.1"): arithmetically 2.00 is less than 2.0833.
  test("2.00% does not meet 1/4 in per foot, and meets 2%", () => {
    expect(meetsSlope(ratio(2n, 100n), at("quarter-inch"))).toBe(false);
    expect(meetsSlope(ratio(2n, 100n), at("two-percent"))).toBe(true);
  });

  // Computed here: 10 ft with 2 in of fall is 0.2 in per foot.
  test("2 in over 10 ft do not meet 1/4 in per foot, and meet 1/8 in", () => {
    const slope = ratio(2n, 120n);
    expect(meetsSlope(slope, at("quarter-inch"))).toBe(false);
    expect(meetsSlope(slope, at("eighth-inch"))).toBe(true);
  });

  // The same 10 ft with 0.17 ft (2 in) of fall, both levels off by so much either way: computed here.
  // 1/4 in per foot asks for 0.2083 ft over it, 1/8 in for 0.1042 ft.
  test.each([
    [0, "too-flat", "meets"],
    [1, "too-flat", "meets"],
    [2, "cannot-be-told", "meets"],
    [3, "cannot-be-told", "meets"],
    [4, "cannot-be-told", "cannot-be-told"],
    [50, "cannot-be-told", "cannot-be-told"],
  ] as const)(
    "slopeFinding() of 2 in over 10 ft, levels off by %i hundredths",
    (off, quarter, eighth) => {
      const lower = { station: 0, invert: 0, uncertainty: off };
      const upper = { station: 1_000, invert: 17, uncertainty: off };
      expect(slopeFinding(lower, upper, "quarter-inch").verdict).toBe(quarter);
      expect(slopeFinding(lower, upper, "eighth-inch").verdict).toBe(eighth);
    },
  );

  // UPC 708 as quoted: "one-fourth inch per foot or two percent".
  test("slopeFinding() says where 2% and 1/4 in per foot give two answers", () => {
    const lower = { station: 0, invert: 0, uncertainty: 0 };
    const found = slopeFinding(
      lower,
      { station: 10_000, invert: 200, uncertainty: 0 },
      "quarter-inch",
    );
    expect(found.verdict).toBe("too-flat");
    expect(found.sentence).toContain("Read as 2%, it would meet it");
  });

  // Chicago 18-29-704.1, which is IPC Table 704.1:
  // https://codelibrary.amlegal.com/codes/chicago/latest/chicago_il/0-0-0-2691996
  test.each([
    [1.5, "quarter-inch"],
    [2.5, "quarter-inch"],
    [3, "eighth-inch"],
    [6, "eighth-inch"],
    [8, "sixteenth-inch"],
    [12, "sixteenth-inch"],
  ] as const)("leastSlope() of %f in under the IPC is %s", (diameter, least) => {
    expect(leastSlope("ipc", diameter)).toBe(least);
  });

  // UPC 708 as public pages give it: 1/4 in per foot; 1/8 in only where 1/4 in is not possible and with
  // the authority's approval, which no table can grant.
  test.each([1.5, 3, 4, 8])(
    "leastSlope() of %f in under the UPC is 1/4 in per foot without approval",
    (diameter) => {
      expect(leastSlope("upc", diameter)).toBe("quarter-inch");
    },
  );
});

describe("drainage fixture units", () => {
  // IPC Table 709.1, private use, as a public transcription in source code has it.
  test.each([
    ["bathroom-group", 5],
    ["kitchen-sink", 2],
    ["clothes-washer", 2],
  ] as const)("unitsOfOne() of a %s under the IPC is %i", (fixture, units) => {
    expect(unitsOfOne("ipc", fixture)).toBe(units);
  });

  // UPC Table 702.1, as a public transcription in source code has it.
  test("unitsOfOne() of a clothes washer under the UPC is 3, and a bathroom group has none", () => {
    expect(unitsOfOne("upc", "clothes-washer")).toBe(3);
    expect(unitsOfOne("upc", "bathroom-group")).toBeNull();
  });
});

describe("loads of building drains and sewers", () => {
  // IPC Table 710.1(1): every row below as two or more public transcriptions in source code have it.
  test.each([
    [2, [null, null, 21, 26]],
    [2.5, [null, null, 24, 31]],
    [3, [null, 36, 42, 50]],
    [4, [null, 180, 216, 250]],
    [5, [null, 390, 480, 575]],
    [6, [null, 700, 840, 1000]],
    [8, [1400, 1600, 1920, 2300]],
    [10, [2500, 2900, 3500, 4200]],
    [12, [3900, 4600, 5600, 6700]],
    [15, [7000, 8300, 10_000, 12_000]],
  ] as const)("drainLimit() of a %f in pipe under the IPC", (diameter, loads) => {
    const names = ["sixteenth-inch", "eighth-inch", "quarter-inch", "half-inch"] as const;
    expect(
      names.map((name) => drainLimit("ipc", { diameter, slope: at(name) })?.most ?? null),
    ).toEqual(loads);
  });

  test("drainLimit() holds 2.00% to the column of 1/8 in per foot", () => {
    expect(drainLimit("ipc", { diameter: 4, slope: ratio(2n, 100n) })).toEqual({
      most: 180,
      column: "eighth-inch",
    });
  });

  test("drainLimit() has no answer where the table has none", () => {
    expect(drainLimit("upc", { diameter: 8, slope: at("quarter-inch") })).toBeNull();
    expect(drainLimit("ipc", { diameter: 4, slope: ratio(1n, 1000n) })).toBeNull();
    expect(drainLimit("ipc", { diameter: 7, slope: at("quarter-inch") })).toBeNull();
  });

  // UPC Table 703.2, horizontal, as a public transcription in source code has it.
  test.each([
    [1.5, 1],
    [2, 8],
    [2.5, 14],
    [3, 35],
    [4, 216],
    [5, 428],
    [6, 720],
  ])("drainLimit() of a %f in pipe at 1/4 in per foot under the UPC is %i", (diameter, limit) => {
    expect(drainLimit("upc", { diameter, slope: at("quarter-inch") })?.most).toBe(limit);
    expect(drainLimit("upc", { diameter, slope: at("eighth-inch") })).toBeNull();
  });
});
