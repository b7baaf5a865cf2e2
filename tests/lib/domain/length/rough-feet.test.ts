import { describe, expect, test } from "vitest";
import { parseRoughFeet } from "#lib/domain/length/rough-feet.ts";

describe("parseRoughFeet()", () => {
  test.each([
    ["about 31", 3_100, 100],
    ["~ 31.5 ft", 3_150, 100],
    ["31?", 3_100, 100],
    ["31ish", 3_100, 100],
    ["approx. 31", 3_100, 100],
    ["31 or so", 3_100, 100],
    ["31 ± 2", 3_100, 200],
    ["31 +/- 0.5 ft", 3_100, 50],
    ["31–33", 3_200, 100],
    ["31-33 ft", 3_200, 100],
    ["31 to 32.5", 3_175, 75],
    ["between 31 and 33", 3_200, 100],
  ])("reads %s", (text, length, off) => {
    expect(parseRoughFeet(text)).toEqual({ length, off });
  });

  test.each(["31", "31.5 ft", "0+31.0", "-3", "", "about", "west", "33-31", "a few", "31 ± west"])(
    "says nothing of %s",
    (text) => {
      expect(parseRoughFeet(text)).toBeNull();
    },
  );

  test("covers both ends of a range", () => {
    const { length, off } = parseRoughFeet("31.01-31.04") ?? { length: 0, off: 0 };
    expect(length - off).toBeLessThanOrEqual(3_101);
    expect(length + off).toBeGreaterThanOrEqual(3_104);
  });
});
