import { describe, expect, test } from "vitest";
import {
  EVERY_EXCAVATION,
  slopedTopWidth,
  trenchDepth,
  trenchNeeds,
} from "#lib/domain/capacity/trench.ts";

// 29 CFR 1926 Subpart P; figures read at https://indianaconstructors.org/excavation-by-the-numbers/
const keys = (depth: number) => trenchNeeds(depth).map((need) => need.key);

describe("trenchNeeds()", () => {
  test("trenchNeeds() asks for a way out at 4 ft, and for tested air only deeper than that", () => {
    expect(keys(399)).toEqual(["competent-person"]);
    expect(keys(400)).toEqual(["competent-person", "way-out"]);
    expect(keys(401)).toEqual(["competent-person", "way-out", "air-test"]);
  });

  test("trenchNeeds() forces protection at 5 ft and leaves a look below it", () => {
    expect(keys(499)).toContain("competent-person");
    expect(keys(499)).not.toContain("protection");
    expect(keys(500)).toEqual(["way-out", "air-test", "protection"]);
  });

  test("trenchNeeds() asks for an engineer only deeper than 20 ft", () => {
    expect(keys(2_000)).not.toContain("engineer");
    expect(keys(2_001)).toContain("engineer");
  });
});

test("trenchDepth() goes half a foot below the invert, so that 4.5 ft of pipe is 5 ft of trench", () => {
  expect(keys(trenchDepth(450))).toContain("protection");
  expect(keys(trenchDepth(449))).not.toContain("protection");
});

// 1926.652(b)(1)(i): not steeper than one and a half horizontal to one vertical. By hand: 3 ft at the
// bottom, and 12 ft on either side of a trench of 8 ft.
test("slopedTopWidth() of 8 ft with a bottom of 3 ft is 27 ft, and is an engineer's beyond 20 ft", () => {
  expect(slopedTopWidth({ depth: 800, bottomWidth: 300 })).toBe(2_700);
  expect(slopedTopWidth({ depth: 2_000, bottomWidth: 300 })).toBe(6_300);
  expect(slopedTopWidth({ depth: 2_001, bottomWidth: 300 })).toBeNull();
});

test("EVERY_EXCAVATION has the utilities, the daily inspection, the spoil and the water, each with its paragraph", () => {
  expect(EVERY_EXCAVATION.map(({ key, citation }) => [key, citation])).toEqual([
    ["utilities", "29 CFR 1926.651(b)"],
    ["inspection", "29 CFR 1926.651(k)(1)"],
    ["spoil", "29 CFR 1926.651(j)(2)"],
    ["water", "29 CFR 1926.651(h)"],
  ]);
});
