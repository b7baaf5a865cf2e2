import fc from "fast-check";
import { expect, test } from "vitest";
import { anchorProblems, converterFor, sideOf } from "#lib/domain/run/convert.ts";
import { anAnchor, aRun } from "#tests/support/file.ts";

const UP = aRun("up");
const DOWN = aRun("down", { looks: "downstream" });

test("converterFor() turns the trade's example round: main at 92.0, tie-in at 31.5, so 60.5 ft", () => {
  const main = anAnchor("down", { counter: 9_200, station: 0 });
  expect(converterFor(DOWN, [main]).toStation(3_150)).toEqual({ station: 6_050, uncertainty: 100 });
});

test("converterFor() takes footage from the main as the station, whichever way the lens looks", () => {
  for (const looks of ["upstream", "downstream"] as const) {
    const run = aRun("back", { looks, measuredFrom: "main" });
    const { toStation, way } = converterFor(run, []);
    expect(way).toBe(1);
    expect(toStation(3_150)).toEqual({ station: 3_150, uncertainty: 100 });
    expect(toStation(0)?.station).toBe(0);
    expect(anchorProblems(run, [])).toEqual([]);
  }
});

test("converterFor() spreads footage from the main between its zero and an anchor", () => {
  const run = aRun("back", { looks: "downstream", measuredFrom: "main" });
  const { toStation } = converterFor(run, [anAnchor("back", { counter: 6_240, station: 6_000 })]);
  expect(toStation(3_120)?.station).toBe(3_000);
  expect(toStation(6_440)?.station).toBe(6_200);
});

test("anchorProblems() names an anchor that a zero at the main can't have, and nothing is averaged", () => {
  const run = aRun("back", { looks: "downstream", measuredFrom: "main" });
  const main = anAnchor("back", { id: "a", counter: 9_200, station: 0, kind: "main-connection" });
  expect(anchorProblems(run, [main])).toEqual([
    { reason: "off-zero", anchorId: "a", otherId: null },
  ]);
  expect(converterFor(run, [main]).toStation(3_150)).toBeNull();
  const slipped = anAnchor("back", { id: "a", counter: 6_000, station: 6_800 });
  expect(anchorProblems(run, [slipped]).map(({ reason }) => reason)).toEqual(["anchors-stretched"]);
  expect(converterFor(run, [slipped]).toStation(3_000)).toEqual({
    station: 3_400,
    uncertainty: 400,
  });
});

test("converterFor() follows anchors that clearly run the other way than stated, and says so", () => {
  const rising = [
    anAnchor("down", { id: "a", counter: 1_000, station: 1_000 }),
    anAnchor("down", { id: "b", counter: 5_000, station: 5_050 }),
  ];
  const { toStation, way, isAgainst } = converterFor(DOWN, rising);
  expect([way, isAgainst]).toEqual([1, true]);
  expect(toStation(5_500)?.station).toBe(5_550);
  expect(anchorProblems(DOWN, rising)).toEqual([
    { reason: "anchors-against-way", anchorId: "b", otherId: "a" },
  ]);
  // Said to be measured from the main, they agree with it.
  const main = { ...DOWN, measuredFrom: "main" } as const;
  expect(anchorProblems(main, rising)).toEqual([]);
  expect(converterFor(main, rising).toStation(5_500)?.station).toBe(5_550);
});

test("converterFor() follows no two anchors that are close together or don't fit foot for foot", () => {
  const pair = (counter: number, station: number) => [
    anAnchor("down", { id: "a", counter: 1_000, station: 1_000 }),
    anAnchor("down", { id: "b", counter, station }),
  ];
  for (const anchors of [pair(1_400, 1_390), pair(5_000, 1_900)]) {
    expect(anchorProblems(DOWN, anchors).map(({ reason }) => reason)).toEqual([
      "anchors-out-of-order",
    ]);
    expect(converterFor(DOWN, anchors).toStation(1_200)).toBeNull();
  }
});

test("converterFor() says nothing where the run has no anchor: relative only", () => {
  expect(converterFor(DOWN, []).toStation(3_150)).toBeNull();
  expect(converterFor(DOWN, [anAnchor("other")]).toStation(3_150)).toBeNull();
});

test("converterFor() only shifts by one anchor", () => {
  const cleanout = anAnchor("up", { counter: 0, station: 600 });
  expect(converterFor(UP, [cleanout]).toStation(1_450)?.station).toBe(2_050);
  expect(converterFor(UP, [cleanout]).toStation(-200)?.station).toBe(400);
});

test("converterFor() spreads the counter between two anchors and goes on foot for foot beyond", () => {
  const anchors = [
    anAnchor("up", { counter: 1_000, station: 1_000 }),
    anAnchor("up", { counter: 2_040, station: 2_000 }),
  ];
  const { toStation } = converterFor(UP, anchors);
  expect(toStation(1_520)?.station).toBe(1_500);
  expect(toStation(2_540)?.station).toBe(2_500);
  expect(toStation(500)?.station).toBe(500);
});

test("converterFor() is uncertain by 1 ft near an anchor and by 0.5 % far from it", () => {
  const { toStation } = converterFor(UP, [anAnchor("up")]);
  expect(toStation(0)?.uncertainty).toBe(100);
  expect(toStation(20_000)?.uncertainty).toBe(100);
  expect(toStation(30_000)?.uncertainty).toBe(150);
});

test("converterFor() measures the distance from the nearest anchor, not from the first", () => {
  const anchors = [anAnchor("up"), anAnchor("up", { counter: 40_000, station: 40_000 })];
  expect(converterFor(UP, anchors).toStation(38_000)?.uncertainty).toBe(100);
});

test("converterFor() takes the uncertainty that a person set for the run", () => {
  const run = aRun("up", { uncertainty: 300 });
  expect(converterFor(run, [anAnchor("up")]).toStation(0)?.uncertainty).toBe(300);
});

test.each([
  ["anchors-disagree", 1_000, 1_000, 1_500],
  ["anchors-out-of-order", 1_000, 2_000, 500],
  ["below-main", 0, 1_000, -500],
  ["not-a-length", 0, 1_000, Number.NaN],
] as const)(
  "anchorProblems() names %s, and the run is relative only",
  (reason, first, counter, station) => {
    const anchors = [
      anAnchor("up", { id: "a", counter: first, station: first }),
      anAnchor("up", { id: "b", counter, station }),
    ];
    expect(anchorProblems(UP, anchors).map((problem) => problem.reason)).toContain(reason);
    expect(converterFor(UP, anchors).toStation(500)).toBeNull();
  },
);

test("anchorProblems() takes falling stations for right in a run that goes downstream", () => {
  const anchors = [
    anAnchor("down", { counter: 0, station: 9_200 }),
    anAnchor("down", { counter: 9_200, station: 0 }),
  ];
  expect(anchorProblems(DOWN, anchors)).toEqual([]);
  expect(
    anchorProblems(
      UP,
      anchors.map((anchor) => ({ ...anchor, runId: "up" })),
    ),
  ).toHaveLength(1);
});

test("anchorProblems() names anchors that are stretched, and widens what lies between them", () => {
  const anchors = [
    anAnchor("up", { id: "a" }),
    anAnchor("up", { id: "b", counter: 4_000, station: 3_200 }),
  ];
  expect(anchorProblems(UP, anchors)).toEqual([
    { reason: "anchors-stretched", anchorId: "b", otherId: "a" },
  ]);
  expect(converterFor(UP, anchors).toStation(2_000)).toEqual({ station: 1_600, uncertainty: 400 });
});

test("converterFor() gives back what it was anchored at, and never turns back on itself", () => {
  const steps = fc.array(
    fc.tuple(fc.integer({ min: 10, max: 3_000 }), fc.integer({ min: -5, max: 5 })),
    {
      minLength: 1,
      maxLength: 6,
    },
  );
  fc.assert(
    fc.property(steps, fc.boolean(), (walk, upstream) => {
      const run = upstream ? UP : DOWN;
      let counter = 0;
      let station = 50_000;
      const anchors = walk.map(([counted, slip], index) => {
        counter += counted;
        station += (upstream ? 1 : -1) * (counted + slip);
        return anAnchor(run.id, { id: `a${index}`, counter, station });
      });
      const { toStation } = converterFor(run, anchors);
      for (const anchor of anchors) {
        expect(toStation(anchor.counter)?.station).toBe(anchor.station);
      }
      const along = Array.from({ length: 40 }, (_, index) => toStation(index * 200)?.station ?? 0);
      const ordered = along.toSorted((a, b) => (upstream ? a - b : b - a));
      expect(along).toEqual(ordered);
    }),
  );
});

test("converterFor() puts a reading at an anchor where the anchor is, however fine, and none past it", () => {
  const anchors = [anAnchor("up"), anAnchor("up", { id: "b", counter: 3_900, station: 3_818 })];
  const { toStation } = converterFor(UP, anchors);
  expect(toStation(3_900)?.station).toBe(3_818);
  expect(toStation(3_899)?.station).toBe(3_818);
  expect(toStation(3_901)?.station).toBe(3_819);
  expect(toStation(2_000)?.station).toBe(1_960);
});

test.each([
  [3, "upstream", "right"],
  [9, "upstream", "left"],
  [3, "downstream", "left"],
  [9, "downstream", "right"],
  [12, "upstream", "crown"],
  [12, "downstream", "crown"],
  [11.5, "upstream", "crown"],
  [12.5, "upstream", "crown"],
  [1, "upstream", "right"],
  [11, "upstream", "left"],
  [5, "downstream", "left"],
  [6, "upstream", "unknown"],
  [5.5, "upstream", "unknown"],
  [null, "upstream", "unknown"],
] as const)("sideOf() sees %s o'clock going %s on the %s, looking upstream", (clock, way, side) => {
  expect(sideOf(clock, way)).toBe(side);
});

test("sideOf() gives the same side for the same branch seen both ways", () => {
  fc.assert(
    fc.property(fc.integer({ min: 2, max: 24 }), (halves) => {
      const clock = halves / 2;
      const mirrored = 12 - (clock % 12) || 12;
      expect(sideOf(mirrored, "downstream")).toBe(sideOf(clock, "upstream"));
    }),
  );
});
