import fc from "fast-check";
import { expect, test } from "vitest";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { stationObservations } from "#lib/domain/run/observe.ts";
import { assignSightings, placeTieIn, sightingsOf } from "#lib/domain/run/sighting.ts";
import { aStationed } from "#tests/support/answers.ts";
import { aFile, anAnchor, anObservation, aRun, aTieIn } from "#tests/support/file.ts";

function counted(): () => string {
  let made = 0;
  return () => {
    made += 1;
    return `new-${made}`;
  };
}

/** Run `up` counts from the main; run `down` comes from 60 ft and counts toward it. */
function twoRuns(overrides: Partial<LineFile>): LineFile {
  const { line: _line, ...rest } = overrides;
  return aFile({
    runs: [aRun("up"), aRun("down", { looks: "downstream" })],
    anchors: [anAnchor("up"), anAnchor("down", { counter: 0, station: 6_000 })],
    ...rest,
  });
}

test("assignSightings() merges what two runs saw at one place and side", () => {
  const observations = [
    anObservation("a", { runId: "up", counter: 2_050, clock: 9 }),
    anObservation("b", { runId: "down", counter: 3_970, clock: 3 }),
  ];
  const found = assignSightings(twoRuns({ observations }), counted());
  expect(found.map((each) => each.tieInId)).toEqual(["new-1", "new-1"]);
  expect(found.map((each) => each.tieIn?.label ?? null)).toEqual(["T1", null]);
});

test("assignSightings() keeps apart what lies on the other side, or beyond the uncertainty", () => {
  const observations = [
    anObservation("a", { runId: "up", counter: 2_050, clock: 9 }),
    anObservation("other side", { runId: "down", counter: 3_970, clock: 9 }),
    anObservation("b", { runId: "up", counter: 3_000, clock: 9 }),
    anObservation("1.5 ft off", { runId: "down", counter: 2_850, clock: 3 }),
  ];
  const found = assignSightings(twoRuns({ observations }), counted());
  expect(new Set(found.map((each) => each.tieInId)).size).toBe(4);
});

test("assignSightings() never merges two sightings of one run", () => {
  const observations = [
    anObservation("a", { runId: "up", counter: 2_050 }),
    anObservation("b", { runId: "up", counter: 2_090 }),
  ];
  const found = assignSightings(twoRuns({ observations }), counted());
  expect(new Set(found.map((each) => each.tieInId)).size).toBe(2);
});

test("assignSightings() gives the nearer of two sightings to a tie-in that both could be", () => {
  const observations = [
    anObservation("near", { runId: "up", counter: 2_110 }),
    anObservation("far", { runId: "up", counter: 2_000 }),
  ];
  const tieIns = [aTieIn("known", { station: 2_100 })];
  const found = assignSightings(twoRuns({ observations, tieIns }), counted());
  expect(found.find((each) => each.observationId === "near")?.tieInId).toBe("known");
  expect(found.find((each) => each.observationId === "far")?.tieIn).not.toBeNull();
});

test("assignSightings() leaves sightings alone that a person has placed", () => {
  const observations = [anObservation("a", { runId: "up", counter: 2_050, tieInId: "t" })];
  expect(assignSightings(twoRuns({ observations, tieIns: [aTieIn("t")] }), counted())).toEqual([]);
});

test("assignSightings() makes a tie-in of its own from a relative-only sighting", () => {
  const observations = [anObservation("a", { runId: "loose", counter: 500 })];
  const file = twoRuns({ observations, runs: [aRun("loose")], anchors: [] });
  expect(assignSightings(file, counted())[0]?.tieIn?.station).toBeNull();
});

test("assignSightings() labels new tie-ins up the line, going on from the highest number", () => {
  const observations = [
    anObservation("upper", { runId: "up", counter: 5_000 }),
    anObservation("lower", { runId: "up", counter: 1_000 }),
    anObservation("a fault", { runId: "up", counter: 500, kind: "fault" }),
  ];
  const tieIns = [aTieIn("x", { label: "T7", station: 9_000 }), aTieIn("y", { label: "old 12" })];
  const found = assignSightings(twoRuns({ observations, tieIns }), counted());
  expect(found.map((each) => [each.observationId, each.tieIn?.label])).toEqual([
    ["lower", "T8"],
    ["upper", "T9"],
  ]);
});

test("assignSightings() takes side, size, material and fitting from the sighting, and no kind", () => {
  const seen = { counter: 500, clock: 3, diameter: 3, material: "pvc", fitting: "saddle" } as const;
  const observations = [anObservation("a", { runId: "up", ...seen })];
  expect(assignSightings(twoRuns({ observations }), counted())[0]?.tieIn).toMatchObject({
    side: "right",
    diameter: 3,
    material: "pvc",
    fitting: "saddle",
    kind: "unknown",
    propertyId: null,
    settledBy: "",
  });
});

test("assignSightings() finds the true branches again from two noisy runs", () => {
  const branch = fc.record({
    gap: fc.integer({ min: 40, max: 200 }),
    left: fc.boolean(),
    offUp: fc.integer({ min: -6, max: 6 }),
    offDown: fc.integer({ min: -6, max: 6 }),
  });
  fc.assert(
    fc.property(fc.array(branch, { maxLength: 8 }), (branches) => {
      let at = 0;
      const observations = branches.flatMap(({ gap, left, offUp, offDown }, index) => {
        at += gap * 10;
        return [
          anObservation(`u${index}`, {
            runId: "up",
            counter: at + offUp * 10,
            clock: left ? 9 : 3,
          }),
          anObservation(`d${index}`, {
            runId: "down",
            counter: 6_000 - at + offDown * 10,
            clock: left ? 3 : 9,
          }),
        ];
      });
      const found = assignSightings(twoRuns({ observations }), counted());
      const idOf = (id: string) => found.find((each) => each.observationId === id)?.tieInId;
      expect(new Set(found.map((each) => each.tieInId)).size).toBe(branches.length);
      branches.forEach((_, index) => {
        expect(idOf(`u${index}`)).toBe(idOf(`d${index}`));
      });
    }),
  );
});

test("placeTieIn() takes a person's station as exact, and the sightings' mean otherwise", () => {
  const observations = [
    anObservation("a", { runId: "up", counter: 2_000, tieInId: "t" }),
    anObservation("b", { runId: "down", counter: 3_960, clock: 3, tieInId: "t" }),
  ];
  const file = twoRuns({ observations });
  const sightings = sightingsOf(file, stationObservations(file)).get("t") ?? [];
  const bySightings = placeTieIn(aTieIn("t", { side: "unknown" }), sightings);
  expect(bySightings).toMatchObject({ station: 2_020, uncertainty: 100, side: "left", spread: 0 });
  const byPerson = placeTieIn(aTieIn("t", { station: 2_070 }), sightings);
  expect(byPerson).toMatchObject({ station: 2_070, uncertainty: 0 });
});

test("placeTieIn() puts a tie-in where its one sighting is, and never outside of several", () => {
  const sighting = aStationed("", { side: "left" });
  const at = (station: number) => ({ ...sighting, station, uncertainty: 100 });
  expect(placeTieIn(aTieIn("t"), [at(4_605)]).station).toBe(4_605);
  expect(placeTieIn(aTieIn("t"), [at(4_605), at(4_607)]).station).toBe(4_607);
  expect(placeTieIn(aTieIn("t"), [at(4_605), at(4_625)]).station).toBe(4_620);
});

test("placeTieIn() trusts the surer sighting more", () => {
  const sighting = aStationed("", { side: "left" });
  const place = placeTieIn(aTieIn("t"), [
    { ...sighting, station: 2_000, uncertainty: 100 },
    { ...sighting, station: 2_100, uncertainty: 300 },
  ]);
  expect(place).toMatchObject({ station: 2_010, uncertainty: 100 });
});

test("placeTieIn() says by how much sightings contradict one another, and leaves the side open", () => {
  const sighting = aStationed("");
  const place = placeTieIn(aTieIn("t", { side: "unknown" }), [
    { ...sighting, side: "left", station: 2_000, uncertainty: 100 },
    { ...sighting, side: "right", station: 2_500, uncertainty: 100 },
  ]);
  expect(place).toMatchObject({ side: "unknown", spread: 360 });
  // Either may be the right one: the place reaches both.
  expect(place).toMatchObject({ station: 2_250, uncertainty: 250 });
  const unequal = placeTieIn(aTieIn("t"), [
    { ...sighting, station: 2_000, uncertainty: 100 },
    { ...sighting, station: 3_000, uncertainty: 300 },
  ]);
  expect(unequal).toMatchObject({ station: 2_100, uncertainty: 900 });
});

test("placeTieIn() leans to the side that one sighting gives where another saw the crown", () => {
  const sighting = aStationed("", { station: 0, uncertainty: 100 });
  const place = placeTieIn(aTieIn("t", { side: "unknown" }), [
    { ...sighting, side: "crown" },
    { ...sighting, side: "right" },
  ]);
  expect(place.side).toBe("right");
});

test("placeTieIn() knows no place without sightings or a person's word", () => {
  expect(placeTieIn(aTieIn("t"), [])).toMatchObject({ station: null, uncertainty: null });
});
