import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { countOf, crowded, idsOf, leastApart } from "#lib/domain/strip/crowds.ts";
import { drawStrips } from "#lib/domain/strip/draw.ts";
import type { FileDrawing, StripMark } from "#lib/domain/strip/drawing.ts";
import { chosenOn, gistOf } from "#lib/domain/strip/gist.ts";
import { layStrip } from "#lib/domain/strip/layout.ts";
import { EXAMPLE } from "#lib/exchange/example.ts";
import { readLineFile } from "#lib/exchange/line-file.ts";
import { theLongLine } from "#tests/bench/long-line.ts";

const LONG = theLongLine("long");
const DRAWN = drawStrips(LONG, reportOn(LONG, "2026-11-25"));
const sum = (marks: readonly StripMark[]) => marks.reduce((total, one) => total + countOf(one), 0);
const of = (marks: readonly StripMark[], kind: string) => marks.filter((one) => one.kind === kind);

describe("gistOf()", () => {
  test("leaves the drawing of a usual line as it is", () => {
    const read = readLineFile(JSON.stringify(EXAMPLE));
    if (!read.ok) throw new Error("the example is no line file");
    const drawing = drawStrips(read.value.file, reportOn(read.value.file, "2026-11-25")).all;
    expect(gistOf(drawing)).toEqual({ drawing, whole: true });
  });

  test("of a long line takes a twenty-fifth of the room, and counts everything", () => {
    const { drawing, whole } = gistOf(DRAWN.cost);
    expect(whole).toBe(false);
    expect(JSON.stringify(drawing).length).toBeLessThan(JSON.stringify(DRAWN.cost).length / 25);
    for (const list of ["onPipe", "holds", "work", "above", "below"] as const)
      expect(sum(drawing[list])).toBe(DRAWN.cost[list].length);
    expect(drawing.above.map((one) => one.id)).toEqual(DRAWN.cost.above.map((one) => one.id));
  });

  test("a gist is laid out on paper like any drawing, with its counts on the flags", () => {
    const { drawing } = gistOf(DRAWN.all);
    const { holds } = layStrip(drawing, { width: 1000, size: "small", zoom: 1 });
    expect(holds.length).toBeGreaterThan(0);
    const counted = holds.reduce((total, flag) => total + sum(flag.marks), 0);
    expect(counted).toBe(DRAWN.all.holds.length);
    for (const flag of holds.filter((one) => one.marks.length > 1))
      expect(flag.label).toBe(`${sum(flag.marks)} holds`);
  });
});

describe("chosenOn()", () => {
  test("tells what the gist left out: the sentence of a mark, the place of a row", () => {
    const [tieIn] = DRAWN.all.below;
    expect(chosenOn(DRAWN.all, tieIn?.id ?? "")?.sentence).toBe(tieIn?.sentence);
    const [spot] = DRAWN.all.spots;
    expect(chosenOn(DRAWN.all, spot?.id ?? "")?.spot).toEqual(spot);
    expect(chosenOn(DRAWN.all, "nothing of this line")).toBeNull();
  });
});

/** Any number of defects and holds along 400 ft. */
const marks = fc.array(
  fc.record({
    kind: fc.constantFrom("fault", "water", "hold", "work", "point"),
    station: fc.integer({ min: 0, max: 40_000 }),
    length: fc.option(fc.integer({ min: 0, max: 3_000 })),
    loud: fc.boolean(),
  }),
  { maxLength: 400 },
);

function drawingOf(drawn: readonly { kind: string; station: number; length: number | null }[]) {
  const all = drawn.map(({ length, ...rest }, at) => ({
    ...rest,
    id: `m${at}`,
    toStation: length === null ? null : rest.station + length,
    ...{ whisker: 0, side: "unknown", label: `m${at}`, detail: "", sentence: "said" },
  })) as unknown as StripMark[];
  return {
    ...DRAWN.all,
    extent: 43_000,
    onPipe: all.filter(({ kind }) => kind !== "hold" && kind !== "work"),
    holds: of(all, "hold"),
    work: of(all, "work"),
  } satisfies FileDrawing;
}

describe("crowded()", () => {
  test("loses no mark, keeps what is loud loud, and draws nothing beyond what it stands for", () => {
    fc.assert(
      fc.property(marks, fc.integer({ min: 1, max: 2_000 }), (drawn, least) => {
        const before = drawingOf(drawn);
        const after = crowded(before, least);
        for (const list of ["onPipe", "holds", "work"] as const) {
          const ids = after[list].flatMap(idsOf);
          expect(ids.toSorted()).toEqual(before[list].map((one) => one.id).toSorted());
          expect(sum(after[list])).toBe(before[list].length);
          for (const one of after[list]) {
            const members = before[list].filter((each) => idsOf(one).includes(each.id));
            expect(one.loud).toBe(members.some((each) => each.loud));
            expect(one.station).toBe(Math.min(...members.map((each) => each.station)));
            const last = Math.max(...members.map((each) => each.toStation ?? each.station));
            if (one.toStation !== null) expect(one.toStation).toBe(last);
            else expect(members.every((each) => each.toStation === null)).toBe(true);
          }
        }
      }),
    );
  });

  test("draws a few marks one by one, however close, and points always", () => {
    const close = Array.from({ length: 80 }, () => ({ station: 5, length: null, loud: false }));
    const few = drawingOf(close.map((one) => ({ ...one, kind: "fault" })));
    expect(crowded(few, 100).onPipe).toEqual(few.onPipe);
    const points = drawingOf([...close, ...close].map((one) => ({ ...one, kind: "point" })));
    expect(crowded(points, 100).onPipe).toEqual(points.onPipe);
  });

  test("zoomed in far enough, everything stands by itself again", () => {
    const near = leastApart(DRAWN.all, 1_000);
    expect(leastApart(DRAWN.all, 48_000)).toBeLessThan(near / 30);
    const stations = of(DRAWN.all.onPipe, "fault").map((one) => one.station);
    const all = crowded(DRAWN.all, 1);
    expect(of(all.onPipe, "fault")).toHaveLength(new Set(stations).size);
  });
});
