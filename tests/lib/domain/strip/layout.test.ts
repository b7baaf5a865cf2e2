import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { FileDrawing, StripMark } from "#lib/domain/strip/drawing.ts";
import type { Flag } from "#lib/domain/strip/flags.ts";
import { layStrip } from "#lib/domain/strip/layout.ts";
import { wide } from "#lib/domain/strip/measures.ts";
import { xOn } from "#lib/domain/strip/places.ts";
import { effortOf } from "#tests/support/effort.ts";

function mark(id: string, station: number, rest: Partial<StripMark> = {}): StripMark {
  return {
    id,
    kind: "tie-in",
    station,
    toStation: null,
    whisker: 0,
    side: "unknown",
    label: id,
    detail: "12 Fennel Row",
    loud: false,
    sentence: "",
    ...rest,
  };
}

function drawing(rest: Partial<FileDrawing> = {}): FileDrawing {
  return {
    extent: 10_000,
    ticks: [0, 5000, 10_000],
    above: [],
    below: [],
    onPipe: [],
    joins: [],
    pipes: [{ from: 0, to: 10_000, material: "pvc", words: "6 in PVC" }],
    bands: [],
    title: "A line",
    holds: [],
    work: [],
    runs: [],
    spots: [],
    beside: [],
    choices: [],
    ...rest,
  };
}

const SEEN: FileDrawing["bands"] = [
  {
    title: "Camera",
    cells: [{ from: 0, to: 10_000, words: "seen", loud: false, hatch: "none" }],
  },
];

const FRAME = { width: 1000, size: "large", zoom: 1 } as const;

/** Any line of up to 40 tie-ins, at any zoom and on any width of paper. */
const station = fc.integer({ min: 0, max: 40_000 });
const crowd = fc.array(
  fc.record({
    station,
    label: fc.string({ minLength: 1, maxLength: 14 }),
    detail: fc.string({ maxLength: 30 }),
    brief: fc.string({ maxLength: 12 }),
    loud: fc.boolean(),
  }),
  { maxLength: 40 },
);
const frames = fc.record({
  width: fc.integer({ min: 320, max: 2000 }),
  size: fc.constantFrom("slim" as const, "small" as const, "large" as const),
  zoom: fc.double({ min: 1, max: 20, noNaN: true }),
});

function crowded(list: readonly Partial<StripMark>[]): FileDrawing {
  const named = list.map((one, at) => mark(`T${at}`, one.station ?? 0, one));
  const entries = named.map((one) => ({ ...one, id: `e${one.id}`, kind: "entry" as const }));
  const holds = named
    .filter((one) => one.loud)
    .map((one) => ({ ...one, id: `h${one.id}`, toStation: one.station + 100 }));
  return drawing({ extent: 40_000, below: named, above: entries, holds });
}

describe("layStrip()", () => {
  test("puts station 0 at the left end and the extent at the right", () => {
    const laid = layStrip(drawing(), FRAME);
    expect(xOn(laid, 0)).toBe(laid.left);
    expect(xOn(laid, 10_000)).toBe(laid.right);
    expect(laid.width).toBeCloseTo(1000);
    const along = (xOn(laid, 2_640) - laid.left) / (laid.right - laid.left);
    expect(along).toBeCloseTo(0.264);
  });

  test("makes the paper wider when it is zoomed, not the words larger", () => {
    const one = layStrip(drawing(), FRAME);
    const four = layStrip(drawing(), { ...FRAME, zoom: 4 });
    expect(four.right - four.left).toBeCloseTo(4 * (one.right - one.left));
    expect(four.pipeBottom - four.pipeTop).toBe(one.pipeBottom - one.pipeTop);
  });

  test("keeps one lane while there is room, and opens another where there is none", () => {
    const far = layStrip(drawing({ below: [mark("T1", 1000), mark("T2", 6000)] }), FRAME);
    expect(far.below.map((flag) => flag.lane)).toEqual([0, 0]);
    const near = layStrip(drawing({ below: [mark("T1", 1000), mark("T2", 1100)] }), FRAME);
    expect(near.below.map((flag) => [flag.mark.id, flag.lane])).toEqual([
      ["T1", 1],
      ["T2", 0],
    ]);
  });

  test("says less of those that crowd, and all of those that stand free", () => {
    const near = [1000, 1100, 1200, 1300].map((at) => mark(`T${at}`, at, { brief: "no. 12" }));
    const laid = layStrip(drawing({ below: [...near, mark("T9", 9000)] }), FRAME);
    expect(laid.below.slice(0, -1).every((flag) => flag.detail === "")).toBe(true);
    expect(laid.below.at(-1)?.detail).toBe("12 Fennel Row");
    expect(laid.below.some((flag) => flag.marks.length > 1)).toBe(true);
  });

  test("counts together what stands too close, and opens it again on a closer look", () => {
    const below = Array.from({ length: 12 }, (_, at) => mark(`T${at}`, 1000 + at * 60));
    const far = layStrip(drawing({ below }), { ...FRAME, size: "small" });
    expect(far.below.some((flag) => /^\d+ tie-ins$/.test(flag.label))).toBe(true);
    const close = layStrip(drawing({ below }), { ...FRAME, size: "small", zoom: 12 });
    expect(close.below.map((flag) => flag.label)).toEqual(below.map((one) => one.label));
  });

  test("is loud about a group with one loud mark in it", () => {
    const below = [1000, 1010, 1020, 1030].map((at) => mark(`T${at}`, at, { loud: at === 1020 }));
    const laid = layStrip(drawing({ below }), { ...FRAME, size: "small" });
    const group = laid.below.find((flag) => flag.marks.some((one) => one.loud));
    expect(group?.loud).toBe(true);
  });

  test("never lets words touch words, or a pole run through words, at any zoom", () => {
    fc.assert(
      fc.property(crowd, frames, (list, frame) => {
        const laid = layStrip(crowded(list), frame);
        for (const flags of [laid.above, laid.below, laid.holds]) {
          for (const one of flags) for (const other of flags) expectClear(one, other);
        }
      }),
      { numRuns: 150 },
    );
  });

  test("shows every mark in exactly one flag, whatever the zoom", () => {
    fc.assert(
      fc.property(crowd, frames, (list, frame) => {
        const drawn = crowded(list);
        const laid = layStrip(drawn, frame);
        const named = laid.below.flatMap((flag) => flag.marks.map((one) => one.id));
        expect(named.toSorted()).toEqual(drawn.below.map((one) => one.id).toSorted());
      }),
    );
  });

  test("holds to both with very many marks, which are counted together where they all but touch", () => {
    const many = fc.array(fc.record({ station, loud: fc.boolean() }), {
      minLength: 300,
      maxLength: 600,
    });
    fc.assert(
      fc.property(many, frames, (list, frame) => {
        const drawn = crowded(list);
        const laid = layStrip(drawn, frame);
        const named = laid.below.flatMap((flag) => flag.marks.map((one) => one.id));
        expect(named.toSorted()).toEqual(drawn.below.map((one) => one.id).toSorted());
        for (const one of laid.below) for (const other of laid.below) expectClear(one, other);
      }),
      { numRuns: 5 },
    );
  });

  test("keeps the crossed lots in a small strip, drawn as land and not as a hold", () => {
    const lot = { from: 1000, to: 3000, words: "9 Elm, easement recorded", loud: false, lot: true };
    const lots = { title: "Crosses lot", cells: [{ ...lot, hatch: "none" as const }] };
    const flow = { title: "Flow of", cells: SEEN[0]?.cells ?? [] };
    const laid = layStrip(drawing({ bands: [flow, lots] }), { ...FRAME, size: "small" });
    expect(laid.bands.map(({ title }) => title)).toEqual(["Flow of", "Crosses lot"]);
    expect(laid.bands.at(-1)?.cells[0]).toMatchObject({ lot: true, loud: false });
  });

  test("is at most 145 high where it stays in view, whatever the line is full of", () => {
    fc.assert(
      fc.property(crowd, frames, (list, frame) => {
        const onPipe = [mark("p1", 1000, { kind: "point", label: "cleanout" })];
        const drawn = { ...crowded(list), onPipe, bands: SEEN, runs: [] };
        const laid = layStrip(drawn, { ...frame, size: "slim" });
        expect(laid.height).toBeLessThanOrEqual(145);
        expect(laid.bands).toEqual([]);
      }),
    );
  });

  test("keeps the words at the upper end on the paper, on a phone too", () => {
    const onPipe = [
      mark("p1", 9_960, { kind: "point", label: "cleanout" }),
      mark("upper-end", 10_000, { kind: "upper-end", label: "upper end" }),
    ];
    const above = [mark("e1", 9_800, { kind: "entry", label: "305 Sedge Street", brief: "" })];
    const below = [mark("T5", 9_900, { label: "T5", loud: true, brief: "undocumented" })];
    const drawn = drawing({ onPipe, above, below });
    for (const size of ["slim", "small", "large"] as const) {
      for (const width of [320, 358, 1200]) {
        const laid = layStrip(drawn, { size, width, zoom: 1 });
        for (const flag of [...laid.above, ...laid.below, ...laid.points])
          expect(flag.poleX + flag.width, `${flag.label} at ${width}`).toBeLessThanOrEqual(
            laid.width,
          );
      }
    }
  });

  test("keeps to its lanes, so that a crowd does not grow into the page", () => {
    const below = Array.from({ length: 40 }, (_, at) => mark(`T${at}`, at * 250));
    const above = below.map((one) => ({ ...one, id: `e${one.id}`, kind: "entry" as const }));
    const small = layStrip(drawing({ below, above }), { ...FRAME, size: "small" });
    expect(small.height).toBeLessThan(0.3 * 900 - 60);
    const large = layStrip(drawing({ below, above }), FRAME);
    expect(large.height).toBeLessThan(420);
  });

  test("writes the distance beside a pairing, and nothing where there is none or no room", () => {
    const above = [mark("e1", 1000), mark("e2", 5000), mark("e3", 7000), mark("e4", 7050)];
    const below = [mark("t1", 1230), mark("t2", 5000), mark("t3", 7100), mark("t4", 7150)];
    const joins = [
      ["e1", "t1", 230],
      ["e2", "t2", 0],
      ["e3", "t3", 100],
      ["e4", "t4", 100],
    ] as const;
    const laid = layStrip(
      drawing({
        above,
        below,
        joins: joins.map(([entryId, tieInId, distance]) => ({
          entryId,
          tieInId,
          distance,
          state: "accepted",
        })),
      }),
      FRAME,
    );
    expect(laid.joins.map((line) => line.words)).toEqual(["+2.3 ft", "", "", "+1.0 ft"]);
  });

  test("names the same fault of a second run once", () => {
    const fault = { kind: "fault", label: "roots", detail: "" } as const;
    const laid = layStrip(
      drawing({ onPipe: [mark("a", 2050, fault), mark("b", 2060, fault), mark("c", 8000, fault)] }),
      FRAME,
    );
    expect(laid.rows[0]?.flags.map((flag) => flag.mark.id)).toEqual(["a", "c"]);
  });

  test("writes into a band what fits, then the brief words, then a letter with a note", () => {
    const cell = { loud: false, hatch: "none" } as const;
    const laid = layStrip(
      drawing({
        bands: [
          {
            title: "Cost",
            cells: [
              { ...cell, from: 0, to: 200, words: "$1,200.00" },
              { ...cell, from: 200, to: 400, words: "$1,200.00" },
              { ...cell, from: 400, to: 800, words: "12, 14, 16, 18", brief: "4" },
              { ...cell, from: 800, to: 9000, words: "no work" },
            ],
          },
        ],
      }),
      FRAME,
    );
    expect(laid.bands[1]?.cells.map((one) => one.lines)).toEqual([
      ["a"],
      ["a"],
      ["4"],
      ["no work"],
    ]);
    expect(laid.notes).toEqual([{ letter: "a", words: "$1,200.00" }]);
  });

  test("writes so few notes that they can be read", () => {
    const cells = Array.from({ length: 40 }, (_, at) => ({
      from: at * 200,
      to: at * 200 + 200,
      words: `house number ${at}`,
      loud: false,
      hatch: "none" as const,
    }));
    expect(layStrip(drawing({ bands: [{ title: "Flow of", cells }] }), FRAME).notes).toHaveLength(
      8,
    );
  });

  test("gives each run a row of its own, in place of what all of them saw", () => {
    const cells = [{ from: 0, to: 5000, words: "seen", loud: false, hatch: "none" as const }];
    const run = { id: "r1", name: "Run 1", from: 5000, to: 0, ending: "blocked", cells };
    const laid = layStrip(
      drawing({
        bands: [{ title: "Camera", cells }],
        runs: [{ ...run, sentence: "" }],
      }),
      FRAME,
    );
    expect(laid.bands.map((band) => band.title)).toEqual(["Pipe"]);
    expect(laid.runs.map((row) => [row.fromX, row.toX])).toEqual([[xOn(laid, 5000), laid.left]]);
  });

  test("shows record, pipe and camera alone where another strip stands below", () => {
    const laid = layStrip(
      drawing({ holds: [mark("h", 0)], bands: [{ title: "Cost", cells: [] }] }),
      { ...FRAME, bare: true },
    );
    expect([laid.holds, laid.bands, laid.rows, laid.runs]).toEqual([[], [], [], []]);
  });

  test("shows the pipe's own words first when large, and one band when small", () => {
    const bands = ["Camera", "Cost"].map((title) => ({ title, cells: [] }));
    const large = layStrip(drawing({ bands }), FRAME);
    expect(large.bands.map((band) => band.title)).toEqual(["Pipe", "Camera", "Cost"]);
    const small = layStrip(drawing({ bands }), { ...FRAME, size: "small" });
    expect(small.bands.map((band) => band.title)).toEqual(["Camera"]);
  });

  test("lays out a line of 400 ft with 40 tie-ins and 60 observations between two frames", () => {
    const list = Array.from({ length: 40 }, (_, at) => ({
      station: at * 950,
      label: `T${at}`,
      detail: `${100 + at} Fennel Row`,
      loud: at % 5 === 0,
    }));
    const faults = Array.from({ length: 60 }, (_, at) =>
      mark(`f${at}`, at * 600, { kind: "fault", label: "roots" }),
    );
    const drawn = { ...crowded(list), onPipe: faults };
    layStrip(drawn, FRAME);
    const efforts = Array.from({ length: 5 }, () => effortOf(() => layStrip(drawn, FRAME)));
    expect(Math.min(...efforts)).toBeLessThan(40);
  });
});

/** In one lane the words stand apart; a pole passes the words of nearer lanes to their left. */
function expectClear(one: Flag, other: Flag) {
  if (one === other || other.lane < one.lane) return;
  const end = Math.max(one.poleX + one.width, one.endX);
  expect(other.poleX > one.poleX && other.poleX < end).toBe(false);
}

test("wide() is never less than nothing, and grows with the words", () => {
  expect(wide("", 15)).toBe(0);
  expect(wide("T10", 15)).toBeGreaterThan(wide("T1", 15));
});
