import { describe, expect, test } from "vitest";
import { isSpoilFarEnough, trenchNeeds, trenchTopWidth } from "#lib/domain/capacity/trench.ts";

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

describe("trenchTopWidth()", () => {
  const eightDeep = { depth: 800, bottomWidth: 300 };

  // Appendix B, Table B-1: A 3/4:1, B 1:1, C 1 1/2:1.
  test.each([
    ["stable-rock", 300],
    ["type-a", 1_500],
    ["type-b", 1_900],
    ["type-c", 2_700],
  ] as const)("trenchTopWidth() of 8 ft in %s", (soil, width) => {
    expect(trenchTopWidth(eightDeep, soil)).toBe(width);
  });

  test("trenchTopWidth() takes soil that nobody classified as type C", () => {
    expect(trenchTopWidth(eightDeep, "unknown")).toBe(trenchTopWidth(eightDeep, "type-c"));
  });

  test("trenchTopWidth() has no answer beyond 20 ft", () => {
    expect(trenchTopWidth({ depth: 2_000, bottomWidth: 300 }, "type-b")).toBe(4_300);
    expect(trenchTopWidth({ depth: 2_001, bottomWidth: 300 }, "type-b")).toBeNull();
  });
});

test("isSpoilFarEnough() wants 2 ft", () => {
  expect(isSpoilFarEnough(190)).toBe(false);
  expect(isSpoilFarEnough(200)).toBe(true);
});
