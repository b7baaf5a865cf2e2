import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { flowStretches } from "#lib/domain/capacity/flow.ts";
import type { Fixture } from "#lib/domain/facts/fixtures.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { aFixture, aLevel } from "#tests/support/capacity.ts";
import {
  aFile,
  aGap,
  anAddress,
  anAnchor,
  anObservation,
  aProperty,
  aRun,
  aTieIn,
} from "#tests/support/file.ts";

/** Two houses on 100 ft of 6 in clay, 12 at 20 ft and 14 at 60 ft. */
function twoHouses(overrides: Parameters<typeof aFile>[0] = {}): LineFile {
  const { line, ...rest } = overrides;
  return aFile({
    line: { plumbingCode: "ipc", ...line },
    properties: ["12", "14"].map((id) => aProperty(id, { address: anAddress(`${id} Fennel Row`) })),
    tieIns: [
      aTieIn("T1", { station: 2_000, propertyId: "12" }),
      aTieIn("T2", { station: 6_000, propertyId: "14" }),
    ],
    ...rest,
  });
}

const capacityOf = (file: LineFile) => reportOn(file, "2026-11-25").capacity;

const LEVELS = [
  aLevel("main", { invert: 0, method: "level" }),
  aLevel("top", { station: 10_000, invert: 200, method: "level" }),
];

describe("load", () => {
  const fixtures = [
    aFixture("12", { count: 2 }),
    aFixture("12", { fixture: "kitchen-sink" }),
    aFixture("14"),
  ];

  test("each reach carries the units of those whose flow passes it", () => {
    const { reaches } = capacityOf(twoHouses({ fixtures, levels: LEVELS }));
    expect(reaches.map(({ from, to, load }) => [from, to, load?.load.least])).toEqual([
      [0, 2_000, 17],
      [2_000, 6_000, 5],
      [6_000, 10_000, 0],
    ]);
    expect(reaches[0]?.load).toMatchObject({
      verdict: "within",
      most: 700,
      assumed: false,
      sentence:
        "17 fixture units (12 Fennel Row 12 and 14 Fennel Row 5). Within the 700 that IPC Table 710.1(1) allows a 6 in pipe at 1/8 in per foot (1.0417%).",
    });
    expect(reaches[2]?.load?.verdict).toBe("nothing-counted");
  });

  test("a house that is not counted is named and makes the load a lower bound", () => {
    const { reaches, wanting } = capacityOf(
      twoHouses({ fixtures: [aFixture("12")], levels: LEVELS }),
    );
    expect(reaches[0]?.load?.load).toMatchObject({
      least: 5,
      most: null,
      uncounted: ["14 Fennel Row"],
    });
    expect(reaches[0]?.load?.verdict).toBe("cannot-be-told");
    expect(reaches[0]?.load?.sentence).toContain("At least 5 fixture units.");
    expect(reaches[0]?.load?.sentence).toContain(
      "Not counted: 14 Fennel Row. Within the 700 that IPC Table 710.1(1) allows a 6 in pipe at 1/8 in per foot (1.0417%) so far; depends on what is not yet counted.",
    );
    expect(wanting).toContain("Count the plumbing fixtures of 14 Fennel Row.");
  });

  test("a lower bound that is over the limit is too much, whoever else joins", () => {
    const many = [aFixture("12", { fixture: "water-closet", count: 300 })];
    const { reaches } = capacityOf(twoHouses({ fixtures: many, levels: LEVELS }));
    expect(reaches[0]?.load?.verdict).toBe("too-much");
  });

  test("an unknown owner and a tie-in without a station keep the load open", () => {
    const file = twoHouses({
      fixtures,
      levels: LEVELS,
      tieIns: [
        aTieIn("T1", { station: 2_000, propertyId: "12" }),
        aTieIn("T2", { station: 6_000, propertyId: "14" }),
        aTieIn("T3", { station: 8_000 }),
        aTieIn("T4"),
      ],
    });
    expect(capacityOf(file).reaches[0]?.load?.load).toMatchObject({
      most: null,
      uncounted: ["T3 (owner unknown)", "T4 (no station yet)"],
    });
  });

  test("a house with a tie-in below counts as perhaps passing, no more", () => {
    const file = twoHouses({
      fixtures,
      levels: LEVELS,
      tieIns: [
        aTieIn("T1", { station: 2_000, propertyId: "12" }),
        aTieIn("T2", { station: 6_000, propertyId: "14" }),
        aTieIn("T3", { station: 4_000, propertyId: "14" }),
      ],
    });
    const upper = capacityOf(file).reaches.find(({ from }) => from === 4_000);
    expect(upper?.load?.load).toMatchObject({ least: 0, most: 5 });
    expect(upper?.load?.sentence).toContain("0 to 5 fixture units.");
    expect(upper?.load?.verdict).toBe("within");
  });

  test("without a measured slope the least slope is taken, and the sentence says so", () => {
    const found = capacityOf(twoHouses({ fixtures, line: { leastSlope: "quarter-inch" } }));
    expect(found.reaches[0]?.load).toMatchObject({ assumed: true, verdict: "within", most: 840 });
    expect(found.reaches[0]?.load?.sentence).toContain("The slope is not measured here");
  });

  test("a fixture without a row in the table is named, not left out", () => {
    const file = twoHouses({ fixtures, levels: LEVELS, line: { plumbingCode: "upc" } });
    const { reaches, wanting } = capacityOf(file);
    expect(reaches[0]?.load?.load).toMatchObject({
      least: 2,
      most: null,
      uncounted: ["each bathroom group of 12 Fennel Row", "each bathroom group of 14 Fennel Row"],
    });
    expect(wanting.join(" ")).toContain("UPC Table 702.1, private use has no row");
  });

  test("a slope that may lie in two columns of the table leaves a load between their limits open", () => {
    // 100 ft that rise 2.08 ft ± 0.04 ft: perhaps 1/4 in per foot, perhaps less.
    const levels = [
      aLevel("main", { invert: 0, method: "level" }),
      aLevel("top", { station: 10_000, invert: 208, method: "level" }),
    ];
    const loaded = (count: number) =>
      capacityOf(
        twoHouses({
          levels,
          fixtures: [aFixture("12", { fixture: "lavatory", count }), aFixture("14", { count: 0 })],
        }),
      ).reaches[0]?.load;
    expect(loaded(700)?.verdict).toBe("within");
    expect(loaded(701)).toMatchObject({
      verdict: "cannot-be-told",
      most: 700,
      mostAtSteepest: 840,
    });
    expect(loaded(701)?.sentence).toContain("The slope is too uncertain to tell: at its flattest");
    expect(loaded(840)?.verdict).toBe("cannot-be-told");
    expect(loaded(841)?.verdict).toBe("too-much");
  });

  test("no code: no load, and the file says what to choose", () => {
    const { reaches, wanting } = capacityOf(twoHouses({ fixtures, line: { plumbingCode: null } }));
    expect(reaches.every(({ load }) => load === null)).toBe(true);
    expect(wanting[0]).toBe("Select the plumbing code to compare the load with.");
  });

  test("counting more fixtures never lowers a load", () => {
    const counts = fc.record({ twelve: fc.nat(400), fourteen: fc.nat(400), more: fc.nat(50) });
    const fixture: Fixture = "lavatory";
    const leastAt = (twelve: number, fourteen: number) =>
      capacityOf(
        twoHouses({
          levels: LEVELS,
          fixtures: [
            aFixture("12", { fixture, count: twelve }),
            aFixture("14", { fixture, count: fourteen }),
          ],
        }),
      ).reaches.map(({ load }) => load?.load.least ?? 0);
    fc.assert(
      fc.property(counts, ({ twelve, fourteen, more }) => {
        const before = leastAt(twelve, fourteen);
        const after = leastAt(twelve, fourteen + more);
        expect(after.every((units, at) => units >= (before[at] ?? 0))).toBe(true);
        expect(before[0]).toBe(twelve + fourteen);
        expect(before[1]).toBe(fourteen);
      }),
      { numRuns: 30 },
    );
  });
});

describe("slope and flow", () => {
  test("a level inside a reach cuts it, and what lies beyond the last level has no slope", () => {
    const levels = [
      aLevel("low", { station: 1_000, invert: 0, method: "level" }),
      aLevel("middle", { station: 4_000, invert: 60, method: "level" }),
    ];
    const { reaches } = capacityOf(twoHouses({ levels }));
    expect(reaches.map(({ from, to, slope }) => [from, to, slope?.slope ?? null])).toEqual([
      [0, 1_000, null],
      [1_000, 2_000, 0.02],
      [2_000, 4_000, 0.02],
      [4_000, 6_000, null],
      [6_000, 10_000, null],
    ]);
    expect(reaches[0]?.flow).toBeNull();
  });

  test("a pipe that falls back carries no flow, and the unknown size none either", () => {
    const back = [
      aLevel("low", { invert: 100, method: "level" }),
      aLevel("high", { station: 10_000, invert: 0, method: "level" }),
    ];
    expect(capacityOf(twoHouses({ levels: back })).reaches[0]).toMatchObject({
      flow: null,
      slope: { verdict: "falls-back" },
    });
    const unsized = capacityOf(twoHouses({ levels: LEVELS, line: { diameter: null } }));
    expect(unsized.reaches[0]?.flow).toBeNull();
    expect(unsized.wanting).toContain("The inside diameter is unknown on part of the line.");
  });

  test("flow is told over the usual n of the material, half full at half of it", () => {
    const { flow } = capacityOf(twoHouses({ levels: LEVELS })).reaches[0] ?? {};
    expect(flow?.roughness).toEqual([0.011, 0.015]);
    const [least = 0, most = 0] = flow?.full.gpm ?? [];
    expect(most / least).toBeCloseTo(0.015 / 0.011, 9);
    expect(flow?.half.gpm[0]).toBeCloseTo(least / 2, 9);
    expect(flow?.half.velocity[0]).toBeCloseTo(flow?.full.velocity[0] ?? 0, 9);
    expect(flow?.fullWithin.gpm[0]).toBeLessThan(least);
    expect(flow?.fullWithin.gpm[1]).toBeGreaterThan(most);
  });

  test("where it may not fall at all, the least flow within the uncertainty is none", () => {
    const levels = [aLevel("main", { invert: 0 }), aLevel("top", { station: 10_000, invert: 80 })];
    const { flow } = capacityOf(twoHouses({ levels })).reaches[0] ?? {};
    expect(flow?.fullWithin.gpm[0]).toBe(0);
    expect(flow?.full.gpm[0]).toBeGreaterThan(0);
  });
});

test("flowStretches() tells a stretch once that tie-ins cut but nothing else changes", () => {
  const { reaches } = capacityOf(twoHouses({ levels: LEVELS }));
  expect(reaches).toHaveLength(3);
  expect(flowStretches(reaches).map(({ from, to }) => [from, to])).toEqual([[0, 10_000]]);
});

describe("obstructions", () => {
  const seen = (note: string, overrides: Parameters<typeof anObservation>[1] = {}) =>
    capacityOf(
      twoHouses({
        runs: [aRun("run")],
        anchors: [anAnchor("run")],
        observations: [
          anObservation("o", { kind: "fault", fault: "roots", counter: 3_000, note, ...overrides }),
        ],
      }),
    ).obstructions;

  test("a percentage is told both ways: of the section, and of the height", () => {
    // Segment of a circle filled to a quarter of its height: 0.1955 of its area (checks of the
    // hydraulic elements, tests/published/hydraulics.test.ts).
    const [found] = seen("Roots, about 25 % of the pipe");
    expect(found?.left[0]).toBeCloseTo(0.75, 9);
    expect(found?.left[1]).toBeCloseTo(1 - 0.1955, 4);
    expect(found?.sentence).toBe(
      "Roots at 30.0 ft, noted as 25%: 75% of the cross-section is left if that is of the area, 80% if it is of the height.",
    );
  });

  test("what the row itself says goes before the note", () => {
    const [found] = seen("looked like 20 % at first", { reduction: 50 });
    expect(found?.sentence).toBe(
      "Roots at 30.0 ft, noted as 50%: 50% of the cross-section is left.",
    );
    expect(seen("", { reduction: 100 })[0]?.left).toEqual([0, 0]);
  });

  test("half is half either way; of several figures the largest counts", () => {
    expect(seen("30 to 50%")[0]?.sentence).toBe(
      "Roots at 30.0 ft, noted as 50%: 50% of the cross-section is left.",
    );
  });

  test("inches of deposit are measured in the pipe that is there", () => {
    const [found] = seen("Gravel 3 in deep", { kind: "deposit", fault: null });
    expect(found?.left[0]).toBeCloseTo(0.5, 9);
    expect(found?.sentence).toContain("50% of the cross-section of a 6 in pipe is left.");
  });

  test("nothing is said where no figure is noted, or the thing takes no room", () => {
    expect(seen("Heavy roots")).toEqual([]);
    expect(seen("Joint open, 20 %", { fault: "open-joint" })).toEqual([]);
    expect(seen("150 %")).toEqual([]);
  });
});

describe("standing water", () => {
  /** 4.42 % on average from 40 to 92 ft, over 6 ft that the camera logged full of water. */
  const levels = [
    aLevel("low", { station: 4_000, invert: 0, method: "level" }),
    aLevel("high", { station: 9_200, invert: 230, method: "level" }),
  ];
  const fixtures = [aFixture("12"), aFixture("14")];
  const logged = (seen: Parameters<typeof anObservation>[1]) =>
    capacityOf(
      twoHouses({
        line: { leastSlope: "quarter-inch" },
        fixtures,
        levels,
        runs: [aRun("run")],
        anchors: [anAnchor("run")],
        observations: [anObservation("w", { counter: 4_090, toCounter: 4_690, ...seen })],
      }),
    );

  test("the depth of standing water is told where somebody told it", () => {
    const { slopes, water, wanting } = logged({ kind: "fault", fault: "belly", waterDepth: 3 });
    expect(water).toEqual([{ from: 4_090, to: 4_690, depth: 3 }]);
    expect(slopes[0]?.sentence).toContain("Water stands from 40.9 to 46.9 ft, 3 in deep: ");
    expect(wanting).toContain(
      "Water stands from 40.9 to 46.9 ft, 3 in deep: take a level at each end of it to find the slope beside it.",
    );
  });

  test.each([
    ["water", { kind: "water", note: "full of water" }],
    ["a belly", { kind: "fault", fault: "belly" }],
  ] as const)(
    "a slope over %s is an average only, and has no flow and no load within",
    (_, seen) => {
      const { slopes, reaches, wanting } = logged(seen);
      expect(slopes[0]).toMatchObject({
        verdict: "average-only",
        water: [{ from: 4_090, to: 4_690, depth: null }],
      });
      expect(slopes[0]?.sentence).toBe(
        "Between 40.0 and 92.0 ft the invert rises 2.3 ft ± 0.04 ft over 52.0 ft: 4.42% (4.35% to 4.50% within the uncertainty). That is only an average. Water stands from 40.9 to 46.9 ft: the pipe sags there or something dams it, and the slope there and beside it is not known.",
      );
      const over = reaches.filter(({ slope }) => slope !== null);
      expect(over.map(({ flow }) => flow)).toEqual(over.map(() => null));
      expect(over[0]?.load).toMatchObject({ verdict: "cannot-be-told" });
      expect(over[0]?.load?.sentence).toContain("Water stands from 40.9 to 46.9 ft, so");
      expect(wanting).toContain(
        "Water stands from 40.9 to 46.9 ft: take a level at each end of it to find the slope beside it.",
      );
    },
  );

  test("what runs does not stand, and what lies beyond the levels does not spoil them", () => {
    expect(logged({ kind: "water", note: "Lens clear, water running" }).slopes[0]?.verdict).toBe(
      "meets",
    );
    expect(logged({ kind: "water", counter: 1_000, toCounter: 4_000 }).slopes[0]?.verdict).toBe(
      "meets",
    );
  });

  test("a gap under water is standing water; a level at each end of it keeps the dip apart", () => {
    const file = twoHouses({
      line: { leastSlope: "quarter-inch" },
      levels: [
        ...levels,
        aLevel("a", { station: 4_090, invert: 5, method: "level" }),
        aLevel("b", { station: 4_690, invert: 20, method: "level" }),
      ],
      runs: [aRun("run")],
      anchors: [anAnchor("run")],
      gaps: [aGap("run", { fromCounter: 4_090, toCounter: 4_690, cause: "under-water" })],
    });
    const { slopes, wanting } = capacityOf(file);
    expect(slopes.map(({ verdict }) => verdict)).toEqual([
      "cannot-be-told",
      "average-only",
      "meets",
    ]);
    expect(wanting.join(" ")).not.toContain("Water stands");
  });

  test("more than the table allows stays too much over water, and a back-fall a back-fall", () => {
    const { slopes } = capacityOf(
      twoHouses({
        levels: [
          aLevel("low", { station: 4_000, invert: 100, method: "level" }),
          aLevel("high", { station: 9_200, invert: 0, method: "level" }),
        ],
        runs: [aRun("run")],
        anchors: [anAnchor("run")],
        observations: [anObservation("w", { kind: "water", counter: 4_500 })],
      }),
    );
    expect(slopes[0]?.verdict).toBe("falls-back");
  });
});
