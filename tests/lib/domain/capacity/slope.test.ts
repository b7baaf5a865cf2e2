import { describe, expect, test } from "vitest";
import {
  checkSlope,
  formatSlope,
  invertLevel,
  meetsSlope,
  SLOPES,
  slopeBetween,
} from "#lib/domain/capacity/slope.ts";
import { ratio } from "#lib/domain/money/ratio.ts";

describe("slopeBetween()", () => {
  test("slopeBetween() divides the fall by the length along the pipe, either way round", () => {
    const low = { station: 1_000, invert: 9_000 };
    const high = { station: 4_000, invert: 9_060 };
    expect(slopeBetween(low, high)).toEqual(ratio(1n, 50n));
    expect(slopeBetween(high, low)).toEqual(ratio(1n, 50n));
  });

  test("slopeBetween() is below zero where the pipe falls back, and null without a length", () => {
    const low = { station: 0, invert: 100 };
    expect(slopeBetween(low, { station: 1_000, invert: 90 })).toEqual(ratio(-1n, 100n));
    expect(slopeBetween(low, { station: 0, invert: 90 })).toBeNull();
  });

  test("invertLevel() takes the depth off the level of the ground", () => {
    expect(invertLevel(10_550, 620)).toBe(9_930);
  });
});

describe("checkSlope()", () => {
  test("checkSlope() says which of 2% and 1/4 in per foot is tested, and how the other would read", () => {
    const twoPercent = ratio(1n, 50n);
    expect(checkSlope(twoPercent, "quarter-inch")).toEqual({
      passes: false,
      sentence:
        "2% is less than the minimum tested here, 1/4 in per foot (2.0833%). Read as 2%, it would pass: ask the authority which one it tests.",
    });
    expect(checkSlope(twoPercent, "two-percent")).toEqual({
      passes: true,
      sentence:
        "2% meets the minimum tested here, 2%. Read as 1/4 in per foot (2.0833%), it would fail: ask the authority which one it tests.",
    });
  });

  test("checkSlope() says nothing of the other reading where both agree", () => {
    expect(checkSlope(ratio(1n, 48n), "quarter-inch").sentence).toBe(
      "2.0833% meets the minimum tested here, 1/4 in per foot (2.0833%).",
    );
    expect(checkSlope(ratio(-1n, 48n), "sixteenth-inch").passes).toBe(false);
  });

  test("meetsSlope() holds exactly at the minimum", () => {
    expect(meetsSlope(SLOPES["eighth-inch"].slope, SLOPES["eighth-inch"].slope)).toBe(true);
    expect(meetsSlope(ratio(99n, 10_000n), SLOPES["one-percent"].slope)).toBe(false);
  });

  test("formatSlope() keeps four decimals and no idle zeros", () => {
    expect(formatSlope(ratio(1n, 60n))).toBe("1.6667%");
    expect(formatSlope(ratio(1n, 100n))).toBe("1%");
    expect(formatSlope(ratio(0n))).toBe("0%");
  });
});
