import { expect, test } from "vitest";
import { pipeProposals, slopeWords } from "#lib/domain/application/proposed-pipe.ts";
import { cutAreas, totalArea } from "#lib/domain/application/surface-area.ts";
import type { SurfaceCut } from "#lib/domain/facts/application.ts";
import type { PavementRule } from "#lib/domain/facts/permit-rule.ts";
import { aPavementRule, aProposedPipe, aSurfaceCut } from "#tests/support/application.ts";
import { aFile, anAuthority, aPoint, aScopeItem } from "#tests/support/file.ts";

function area(
  cut: Partial<SurfaceCut>,
  rule: Partial<PavementRule> | null = null,
  depth: number | null = null,
) {
  const points =
    depth === null
      ? []
      : [aPoint("p", { station: 0, depth }), aPoint("q", { station: 1_000, depth })];
  const [found] = cutAreas(
    aFile({
      surfaceCuts: [aSurfaceCut(cut)],
      points,
      authority: anAuthority({ pavementRules: rule === null ? [] : [aPavementRule(rule)] }),
    }),
    "2026-11-25",
  );
  if (found === undefined) throw new Error("no area");
  return found;
}

test("a shored trench is as wide at the top as at the bottom, whatever its depth", () => {
  const { squareFeet, width, lacks } = area({});
  expect({ squareFeet, width, lacks }).toEqual({ squareFeet: 30, width: 300, lacks: [] });
});

test("walls lean out by the soil: three quarters, one, one and a half across to one up", () => {
  const top = (walls: SurfaceCut["walls"]) => area({ walls, depth: 800 }).width;
  expect([top("type-a"), top("type-b"), top("type-c")]).toEqual([1_500, 1_900, 2_700]);
  expect(area({ walls: "type-b" }, null, 650).width).toBe(300 + 2 * 700);
  expect(area({ walls: "type-c", depth: 2_000 })).toMatchObject({
    squareFeet: null,
    lacks: ["an engineer’s design: 20 ft or deeper"],
  });
});

test("the authority’s least cut: beyond each edge first, then the least width and length", () => {
  expect(area({}, { beyond: 100 })).toMatchObject({ width: 500, length: 1_200, squareFeet: 60 });
  expect(area({}, { beyond: 100, leastWidth: 800, leastLength: 2_000 })).toMatchObject({
    width: 800,
    length: 2_000,
    squareFeet: 160,
    citation: "QMC 13.08.060",
  });
  expect(area({ surface: "lawn" }, { beyond: 100 }).squareFeet).toBe(30);
  expect(area({ from: 500, to: 500 }, { leastLength: 400 }).squareFeet).toBe(12);
  expect(area({ to: 1_001 }).squareFeet).toBe(31);
});

test("what is not entered leaves the area open and is named", () => {
  expect(
    area({ trenchWidth: null, walls: "not-set", surface: "not-set", restoration: "" }),
  ).toMatchObject({
    squareFeet: null,
    lacks: ["surface", "width of the trench", "how the walls stand", "restoration"],
  });
  expect(area({ walls: "type-c" })).toMatchObject({
    squareFeet: null,
    lacks: ["depth of the trench"],
  });
  expect(area({ from: 500, to: 500 })).toMatchObject({ squareFeet: null, lacks: ["length"] });
  expect(totalArea([area({}), area({ walls: "type-c" })])).toBeNull();
  expect(totalArea([area({}), area({})])).toBe(60);
});

test("pavement that may not be cut yet; a day of paving that nobody knows is said", () => {
  expect(area({ pavedOn: "2023-06-01" }, { noCutYears: 5 }).noCut).toBe(
    "Paved on June 1, 2023; not to be cut before June 1, 2028.",
  );
  expect(area({ pavedOn: "2021-11-25" }, { noCutYears: 5 }).noCut).toBe("");
  expect(area({}, { noCutYears: 5 }).noCut).toContain("when it was paved is not entered");
  expect(area({}).noCut).toBe("");
});

test("each piece of work that puts pipe in asks for it, by what nobody entered", () => {
  const scope = [
    aScopeItem("dig", { kind: "dig-and-replace", place: "stretch", from: 200, to: 1_450 }),
    aScopeItem("fee", { kind: "permit-fee", place: "general", from: null, to: null }),
    aScopeItem("line", { kind: "line", place: "stretch", from: 1_450, to: 3_000 }),
  ];
  const lacks = (proposedPipes: ReturnType<typeof aProposedPipe>[]) =>
    pipeProposals(aFile({ scope, proposedPipes })).map(({ item, length, lacks: wants }) => [
      item.id,
      length,
      wants,
    ]);
  expect(lacks([])).toEqual([
    ["dig", 1_250, ["the new pipe"]],
    ["line", 1_550, ["the new pipe"]],
  ]);
  const pipes = [
    aProposedPipe("dig", { slope: null, bedding: " " }),
    aProposedPipe("line", {
      method: "liner",
      material: "cured-in-place-liner",
      slope: null,
      joint: "",
      bedding: "",
    }),
  ];
  expect(lacks(pipes)).toEqual([
    ["dig", 1_250, ["slope", "bedding"]],
    ["line", 1_550, []],
  ]);
});

test("a slope is said in inches a foot too", () => {
  expect(slopeWords(200)).toBe("2% (about 1/4 in per ft)");
  expect(slopeWords(100)).toBe("1% (about 1/8 in per ft)");
  expect(slopeWords(625)).toBe("6.25% (3/4 in per ft)");
  expect(slopeWords(10)).toBe("0.1%");
});
