import { describe, expect, test } from "vitest";
import { cutAreas } from "#lib/domain/application/surface-area.ts";
import type { SurfaceCut } from "#lib/domain/facts/application.ts";
import type { PavementRule } from "#lib/domain/facts/permit-rule.ts";
import { aPavementRule, aSurfaceCut } from "#tests/support/application.ts";
import { aFile, anAuthority } from "#tests/support/file.ts";

function areaOn(today: string, cut: Partial<SurfaceCut>, rule: Partial<PavementRule> = {}) {
  const [area] = cutAreas(
    aFile({
      surfaceCuts: [aSurfaceCut(cut)],
      authority: anAuthority({ pavementRules: [aPavementRule(rule)] }),
    }),
    today,
  );
  if (area === undefined) throw new Error("Expected an area");
  return area;
}

/*
 * 29 CFR 1926 Subpart P, Appendix B, Table B-1, excavations less than 20 ft deep, across to up: Type A
 * 3/4 to 1, Type B 1 to 1, Type C 1 1/2 to 1. The table's angles, 53, 45 and 34 degrees, are from memory.
 */
describe("Table B-1", () => {
  const TABLE = [
    ["type-a", 53],
    ["type-b", 45],
    ["type-c", 34],
  ] as const;

  // Computed here: a bottom of 3 ft and two walls, 10 ft deep.
  test.each([
    ["type-a", 1_800],
    ["type-b", 2_300],
    ["type-c", 3_300],
  ] as const)(
    "a trench 3 ft wide and 10 ft deep in %s is %i hundredths wide at the top",
    (walls, top) => {
      expect(areaOn("2026-11-25", { walls, depth: 1_000 })).toMatchObject({
        width: top,
        lacks: [],
      });
    },
  );

  test.each(TABLE)("the walls in %s stand at %i degrees, to the degree", (walls, angle) => {
    const { width } = areaOn("2026-11-25", { walls, depth: 1_000 });
    const across = ((width ?? 0) - 300) / 2;
    expect(Math.round((Math.atan2(1_000, across) * 180) / Math.PI)).toBe(angle);
  });

  test.each(TABLE)("%s has a width just under 20 ft and none from 20 ft on", (walls) => {
    expect(areaOn("2026-11-25", { walls, depth: 1_999 }).width).not.toBeNull();
    expect(areaOn("2026-11-25", { walls, depth: 2_000 })).toMatchObject({
      width: null,
      squareFeet: null,
    });
  });

  // Computed here: 8 ft deep in Type B is 3 + 16 ft wide; 10 ft of it are 190 square feet.
  test("10 ft of an 8 ft trench in type-b opens 190 square feet", () => {
    expect(areaOn("2026-11-25", { walls: "type-b", depth: 800 }).squareFeet).toBe(190);
  });
});

// https://www.codepublishing.com/CA/Marysville/html/MarysvilleCA11/MarysvilleCA1109.html, 11.09.010(a):
// a paved street is not cut for five years after its completion date.
test("Marysville, California: a street finished on June 12, 2022 is not cut before June 12, 2027", () => {
  const cut = { pavedOn: "2022-06-12" };
  const rule = { noCutYears: 5, citation: "11.09.010(a)" };
  expect(areaOn("2027-06-11", cut, rule)).toMatchObject({
    noCut: "Paved on June 12, 2022; not to be cut before June 12, 2027.",
    citation: "11.09.010(a)",
  });
  expect(areaOn("2027-06-12", cut, rule).noCut).toBe("");
  expect(areaOn("2026-11-25", { pavedOn: null }, rule).noCut).toContain("not entered");
});
