import { describe, expect, test } from "vitest";
import { deedOf } from "#app/_components/strip-keys.ts";
import { type StripStop, stopsOf } from "#app/_components/strip-part.ts";
import type { FileDrawing, StripMark } from "#lib/domain/strip/drawing.ts";
import { layStrip } from "#lib/domain/strip/layout.ts";

function stop(key: string, x: number): StripStop {
  return { key, x, id: key, members: [key], marks: [] };
}

const STOPS = [stop("main", 0), stop("T1", 10), stop("T2", 20)];
const PLAIN = { ctrlKey: false, metaKey: false, altKey: false };

function press(key: string, here: string | null = "T1") {
  return deedOf({ ...PLAIN, key }, { here, stops: STOPS, zoom: 2 });
}

describe("deedOf()", () => {
  test("goes from stop to stop, and stays at the ends", () => {
    expect(press("ArrowRight")?.stop?.key).toBe("T2");
    expect(press("ArrowLeft")?.stop?.key).toBe("main");
    expect(press("ArrowRight", "T2")?.stop?.key).toBe("T2");
    expect(press("Home", "T2")?.stop?.key).toBe("main");
    expect(press("End", "main")?.stop?.key).toBe("T2");
  });

  test("looks closer, farther, and at the whole line", () => {
    expect(press("+")?.zoom).toBeCloseTo(3.2);
    expect(press("-")?.zoom).toBeCloseTo(1.25);
    expect(press("0")?.zoom).toBe(1);
  });

  test("leaves the browser its own keys", () => {
    expect(
      deedOf({ ...PLAIN, key: "+", ctrlKey: true }, { here: "T1", stops: STOPS, zoom: 2 }),
    ).toBeNull();
    expect(press("Tab")).toBeNull();
    expect(press("ArrowRight", null)).toBeNull();
  });

  test("goes to the row on enter, and lets go on escape", () => {
    expect(press("Enter")).toEqual({ enter: "T1" });
    expect(press("Escape", null)).toEqual({ leave: true });
  });
});

test("stopsOf() reaches every tie-in by itself or within one group, from left to right", () => {
  const below = Array.from({ length: 40 }, (_, at) => tieIn(`T${at}`, at * 250));
  const drawing: FileDrawing = {
    extent: 10_000,
    ticks: [],
    above: [],
    below,
    onPipe: [{ ...tieIn("f", 5000), kind: "fault" }],
    joins: [],
    pipes: [],
    bands: [],
    title: "",
    holds: [],
    work: [],
    runs: [],
    spots: [],
    beside: [],
    choices: [],
  };
  for (const size of ["small", "large"] as const) {
    const stops = stopsOf(drawing, layStrip(drawing, { width: 900, size, zoom: 1 }));
    const members = stops.flatMap((one) => one.members);
    expect(members.toSorted()).toEqual([...below.map((mark) => mark.id), "f"].toSorted());
    expect(stops.map((one) => one.x)).toEqual(stops.map((one) => one.x).toSorted((a, b) => a - b));
  }
});

function tieIn(id: string, station: number): StripMark {
  return {
    id,
    kind: "tie-in",
    station,
    toStation: null,
    whisker: 0,
    side: "unknown",
    label: id,
    detail: "",
    loud: false,
    sentence: "",
  };
}
