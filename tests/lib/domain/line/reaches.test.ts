import fc from "fast-check";
import { expect, test } from "vitest";
import { type PipeChange, reachesOf } from "#lib/domain/line/reaches.ts";

const CLAY = { material: "vitrified-clay", diameter: 6 } as const;

test("reachesOf() cuts at tie-ins and at changes of the pipe, and carries the pipe upwards", () => {
  const changes: PipeChange[] = [
    { station: 6_000, material: "cured-in-place-liner", diameter: null },
    { station: 2_500, material: "pvc", diameter: 4 },
  ];
  expect(reachesOf(CLAY, { cuts: [4_000], changes, extent: 8_000 })).toEqual([
    { from: 0, to: 2_500, material: "vitrified-clay", diameter: 6 },
    { from: 2_500, to: 4_000, material: "pvc", diameter: 4 },
    { from: 4_000, to: 6_000, material: "pvc", diameter: 4 },
    { from: 6_000, to: 8_000, material: "cured-in-place-liner", diameter: 4 },
  ]);
});

test("reachesOf() takes a change at the main connection for the pipe there", () => {
  const changes: PipeChange[] = [{ station: 0, material: "pvc", diameter: null }];
  expect(reachesOf(CLAY, { cuts: [], changes, extent: 100 })[0]?.material).toBe("pvc");
});

test("reachesOf() lets an unknown material change nothing", () => {
  const changes: PipeChange[] = [{ station: 50, material: "unknown", diameter: 8 }];
  expect(reachesOf(CLAY, { cuts: [], changes, extent: 100 })[1]).toEqual({
    from: 50,
    to: 100,
    material: "vitrified-clay",
    diameter: 8,
  });
});

test("reachesOf() gives none for a trunk without length", () => {
  expect(reachesOf(CLAY, { cuts: [10], changes: [], extent: 0 })).toEqual([]);
});

test("reachesOf() covers the trunk without gaps or overlaps, whatever is cut", () => {
  const station = fc.integer({ min: -100, max: 2_000 });
  fc.assert(
    fc.property(fc.array(station), fc.integer({ min: 1, max: 1_500 }), (cuts, extent) => {
      const reaches = reachesOf(CLAY, { cuts, changes: [], extent });
      expect(reaches[0]?.from).toBe(0);
      expect(reaches.at(-1)?.to).toBe(extent);
      for (const [index, reach] of reaches.entries()) {
        expect(reach.to).toBeGreaterThan(reach.from);
        if (index > 0) expect(reach.from).toBe(reaches[index - 1]?.to);
      }
    }),
  );
});
