import { describe, expect, test } from "vitest";
import { usualRow } from "#lib/domain/facts/field.ts";
import type { TieIn } from "#lib/domain/facts/line.ts";
import { type Anchor, OBSERVATION, type Observation, type Run } from "#lib/domain/facts/run.ts";
import { resight } from "#lib/domain/run/resight.ts";

function run(id: string): Run {
  return {
    id,
    name: id,
    ranOn: "2026-11-03",
    operator: "",
    accessPoint: "",
    looks: "upstream",
    measuredFrom: "access",
    selfLeveling: "unknown",
    zeroAt: "",
    fromCounter: 0,
    toCounter: null,
    ended: "unknown",
    crossingSeen: "no",
    uncertainty: null,
    note: "",
  };
}

function anchor(runId: string, station: number): Anchor {
  return { id: `a-${runId}`, runId, kind: "cleanout", counter: 0, station, note: "" };
}

function seen(id: string, runId: string, rest: Partial<Observation>): Observation {
  return { ...usualRow(OBSERVATION), id, runId, kind: "tie-in", counter: 0, ...rest };
}

function tieIn(id: string, rest: Partial<TieIn> = {}): TieIn {
  return {
    id,
    label: id.toUpperCase(),
    parentId: null,
    station: null,
    side: "unknown",
    diameter: null,
    material: "unknown",
    fitting: "unknown",
    kind: "unknown",
    propertyId: null,
    inactive: false,
    settledReason: "",
    settledBy: "",
    settledOn: null,
    ownerAccepted: false,
    note: "",
    ...rest,
  };
}

/** Run `a` is tied to the line, run `b` not yet; both saw the same branch at 30.0 ft. */
const APART = {
  runs: [run("a"), run("b")],
  anchors: [anchor("a", 0)],
  observations: [
    seen("o1", "a", { counter: 3_000, clock: 3, tieInId: "t1" }),
    seen("o2", "b", { counter: 1_000, clock: 3, tieInId: "t2" }),
  ],
  tieIns: [tieIn("t1", { side: "right" }), tieIn("t2", { side: "right" })],
};

const FREE = { newId: () => "new", isFree: () => true };

function ids(file: typeof APART): (string | null)[] {
  return file.observations.map(({ tieInId }) => tieInId);
}

describe("resight()", () => {
  test("resight() makes one tie-in of two once the second run is tied to the line", () => {
    const after = { ...APART, anchors: [...APART.anchors, anchor("b", 2_000)] };
    const found = resight(APART, after, FREE);
    expect(ids(found)).toEqual(["t1", "t1"]);
    expect(found.tieIns.map(({ id }) => id)).toEqual(["t1"]);
  });

  test("resight() leaves a tie-in alone on which something rests", () => {
    const after = { ...APART, anchors: [...APART.anchors, anchor("b", 2_000)] };
    const found = resight(APART, after, { ...FREE, isFree: () => false });
    expect(found).toEqual(after);
  });

  test("resight() keeps the name of a tie-in whose sighting moved but met no other", () => {
    const after = { ...APART, anchors: [...APART.anchors, anchor("b", 5_000)] };
    const found = resight(APART, after, FREE);
    expect(ids(found)).toEqual(["t1", "t2"]);
    expect(found.tieIns).toEqual(APART.tieIns);
  });

  test("resight() parts a sighting from a tie-in when its clock turns out to be the other side", () => {
    const together = {
      ...APART,
      anchors: [anchor("a", 0), anchor("b", 2_000)],
      observations: [
        seen("o1", "a", { counter: 3_000, clock: 3, tieInId: "t1" }),
        seen("o2", "b", { counter: 1_000, tieInId: "t1" }),
      ],
      tieIns: [tieIn("t1", { side: "right" })],
    };
    const observations = together.observations.map((each) =>
      each.id === "o2" ? { ...each, clock: 9 } : each,
    );
    const found = resight(together, { ...together, observations }, FREE);
    expect(ids(found)).toEqual(["t1", "new"]);
    expect(found.tieIns.map(({ label, side }) => [label, side])).toEqual([
      ["T1", "right"],
      ["T2", "left"],
    ]);
  });

  test("resight() lets size, material, fitting and side follow the sighting they came from", () => {
    const before = {
      ...APART,
      observations: [seen("o1", "a", { counter: 3_000, tieInId: "t1" })],
      tieIns: [tieIn("t1", { material: "concrete" })],
    };
    const observations = before.observations.map((each) => ({
      ...each,
      clock: 9,
      diameter: 4,
      fitting: "wye" as const,
      material: "pvc" as const,
    }));
    const found = resight(before, { ...before, observations }, { ...FREE, isFree: () => false });
    expect(found.tieIns).toEqual([
      tieIn("t1", { material: "concrete", side: "left", diameter: 4, fitting: "wye" }),
    ]);
  });

  test("resight() follows a corrected size only where the tie-in had it from that sighting", () => {
    const before = {
      ...APART,
      observations: [
        seen("o1", "a", { counter: 3_000, diameter: 4, tieInId: "t1" }),
        seen("o2", "a", { counter: 6_000, diameter: 4, tieInId: "t2" }),
      ],
      tieIns: [tieIn("t1", { diameter: 4 }), tieIn("t2", { diameter: 3 })],
    };
    const observations = before.observations.map((each) => ({ ...each, diameter: 6 }));
    const found = resight(before, { ...before, observations }, FREE);
    expect(found.tieIns.map(({ diameter }) => diameter)).toEqual([6, 3]);
  });

  test("resight() changes nothing where no sighting changed", () => {
    expect(resight(APART, APART, FREE)).toBe(APART);
  });
});
