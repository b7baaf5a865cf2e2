import { describe, expect, test } from "vitest";
import { invertLevel, meetsSlope, SLOPES } from "#lib/domain/capacity/slope.ts";
import { ratio } from "#lib/domain/money/ratio.ts";

describe("slopes and levels", () => {
  test("invertLevel() takes the depth off the level of the ground", () => {
    expect(invertLevel(10_550, 620)).toBe(9_930);
  });

  test("meetsSlope() holds exactly at the minimum", () => {
    expect(meetsSlope(SLOPES["eighth-inch"].slope, SLOPES["eighth-inch"].slope)).toBe(true);
    expect(meetsSlope(ratio(99n, 10_000n), SLOPES["one-percent"].slope)).toBe(false);
  });

  test("meetsSlope() is never met by a pipe that falls back", () => {
    expect(meetsSlope(ratio(-1n, 48n), SLOPES["sixteenth-inch"].slope)).toBe(false);
  });
});
