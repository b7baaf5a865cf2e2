import { expect, test } from "vitest";
import type { LinePoint } from "#lib/domain/line/line.ts";
import { depthCautions } from "#lib/domain/split/depth-cautions.ts";

function cautionsAt(...depths: (number | null)[]): string[] {
  const points: LinePoint[] = depths.map((depth, at) => ({
    id: `p${at}`,
    kind: "cleanout",
    station: at * 1000,
    depth,
    note: "",
  }));
  return depthCautions({ points }).map((caution) => caution.title);
}

const EXIT = "A way out within 25 ft";
const WALLS = "Walls sloped, shored or shielded";

// 29 CFR 1926.651(c)(2), 1926.652(a)(1): https://www.osha.gov/laws-regs/regulations/standardnumber/1926/1926.652
test("depthCautions() asks for a way out from 4 ft and for protected walls from 5 ft", () => {
  expect(cautionsAt(399)).toEqual([]);
  expect(cautionsAt(400)).toEqual([EXIT]);
  expect(cautionsAt(499)).toEqual([EXIT]);
  expect(cautionsAt(500)).toEqual([EXIT, WALLS]);
});

test("depthCautions() asks for an engineer only beyond 20 ft", () => {
  expect(cautionsAt(2000)).toEqual([EXIT, WALLS]);
  expect(cautionsAt(2001)).toEqual([EXIT, WALLS, "An engineer’s design"]);
});

test("depthCautions() goes by the deepest point and names it", () => {
  const points: LinePoint[] = [
    { id: "a", kind: "cleanout", station: 600, depth: 720, note: "" },
    { id: "b", kind: "curb", station: 1200, depth: 300, note: "" },
  ];
  expect(depthCautions({ points })[0]?.text).toMatch(/^The pipe lies 7.2 ft deep at 6.0 ft\./);
});

test("depthCautions() says that the depth is unknown where no point has one", () => {
  expect(cautionsAt()).toEqual(["Depth unknown"]);
  expect(cautionsAt(null)).toEqual(["Depth unknown"]);
});
