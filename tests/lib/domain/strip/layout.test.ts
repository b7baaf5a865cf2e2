import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { StripDrawing, StripMark } from "#lib/domain/strip/drawing.ts";
import { type Flag, layStrip, xOf } from "#lib/domain/strip/layout.ts";

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

function drawing(rest: Partial<StripDrawing> = {}): StripDrawing {
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
    ...rest,
  };
}

const FRAME = { width: 1000, size: "large", zoom: 1 } as const;

describe("layStrip()", () => {
  test("puts station 0 at the left end and the extent at the right", () => {
    const laid = layStrip(drawing(), FRAME);
    expect(xOf(laid, 10_000, 0)).toBe(laid.left);
    expect(xOf(laid, 10_000, 10_000)).toBe(laid.right);
    expect(laid.width).toBeCloseTo(1000);
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

  test("never lets words touch words, or a pole run through words", () => {
    const station = fc.integer({ min: 0, max: 10_000 });
    const marks = fc.array(fc.record({ station, words: fc.string({ maxLength: 30 }) }), {
      maxLength: 24,
    });
    fc.assert(
      fc.property(marks, fc.constantFrom("small", "large"), (list, size) => {
        const below = list.map(({ station: at, words }, index) =>
          mark(`T${index}`, at, { detail: words }),
        );
        const laid = layStrip(drawing({ below }), { ...FRAME, size });
        for (const one of laid.below) for (const other of laid.below) expectClear(one, other);
      }),
    );
  });

  test("marks the same fault of a second run without naming it twice", () => {
    const fault = { kind: "fault", label: "roots", detail: "" } as const;
    const laid = layStrip(
      drawing({ onPipe: [mark("a", 2050, fault), mark("b", 2060, fault), mark("c", 8000, fault)] }),
      FRAME,
    );
    expect(laid.below.map((flag) => [flag.mark.id, flag.label]).toSorted()).toEqual([
      ["a", "roots"],
      ["b", ""],
      ["c", "roots"],
    ]);
  });

  test("writes into a band what fits, and the rest under a letter", () => {
    const cell = { loud: false, hatch: "none" } as const;
    const laid = layStrip(
      drawing({
        bands: [
          {
            title: "Cost",
            cells: [
              { ...cell, from: 0, to: 100, words: "$1,200.00" },
              { ...cell, from: 100, to: 200, words: "$1,200.00" },
              { ...cell, from: 200, to: 9000, words: "no work" },
            ],
          },
        ],
      }),
      FRAME,
    );
    expect(laid.bands[1]?.cells.map((one) => one.lines)).toEqual([["a"], ["a"], ["no work"]]);
    expect(laid.notes).toEqual([{ letter: "a", words: "$1,200.00" }]);
  });

  test("shows the pipe's own words first when large, and one band when small", () => {
    const bands = ["Camera", "Cost"].map((title) => ({ title, cells: [] }));
    const large = layStrip(drawing({ bands }), FRAME);
    expect(large.bands.map((band) => band.title)).toEqual(["Pipe", "Camera", "Cost"]);
    const small = layStrip(drawing({ bands }), { ...FRAME, size: "small" });
    expect(small.bands.map((band) => band.title)).toEqual(["Camera"]);
  });
});

/** In one lane the words stand apart; a pole passes the words of nearer lanes to their left. */
function expectClear(one: Flag, other: Flag) {
  if (one === other || one.lane < 0 || other.lane < one.lane) return;
  const end = one.poleX + one.width;
  expect(other.poleX > one.poleX && other.poleX < end).toBe(false);
}
