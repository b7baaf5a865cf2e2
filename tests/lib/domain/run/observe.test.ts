import fc from "fast-check";
import { expect, test } from "vitest";
import { pipeChanges, stationObservations } from "#lib/domain/run/observe.ts";
import { placeTieIn, sightingsOf } from "#lib/domain/run/sighting.ts";
import { aFile, anAnchor, anObservation, aRun, aTieIn } from "#tests/support/file.ts";

const FILE = aFile({
  runs: [aRun("run"), aRun("down", { looks: "downstream" }), aRun("loose")],
  anchors: [anAnchor("run"), anAnchor("down", { counter: 9_200, station: 0 })],
});

test("stationObservations() places points and stretches on the line, each by its own run", () => {
  const observations = [
    anObservation("a", { counter: 2_050 }),
    anObservation("b", { runId: "down", counter: 3_150, clock: 3 }),
    anObservation("c", { runId: "down", kind: "fault", counter: 5_160, toCounter: 5_760 }),
  ];
  const found = stationObservations({ ...FILE, observations });
  expect(found.map(({ station, toStation, side }) => [station, toStation, side])).toEqual([
    [2_050, null, "left"],
    [6_050, null, "left"],
    [4_040, 3_440, "right"],
  ]);
});

test("a fault read where a tie-in is read lies at that tie-in, whatever the anchors", () => {
  const counter = fc.integer({ min: 0, max: 6_000 });
  fc.assert(
    fc.property(
      counter,
      fc.array(fc.integer({ min: -3, max: 3 }), { maxLength: 3 }),
      (at, slips) => {
        const anchors = slips.map((slip, index) =>
          anAnchor("run", {
            id: `a${index}`,
            counter: index * 1_907,
            station: index * 1_907 + slip,
          }),
        );
        const file = aFile({
          runs: [aRun("run")],
          anchors: [anAnchor("run", { id: "at", counter: at, station: at }), ...anchors],
          tieIns: [aTieIn("t")],
          observations: [
            anObservation("o", { counter: at, tieInId: "t" }),
            anObservation("f", { kind: "fault", counter: at }),
          ],
        });
        const [, fault] = stationObservations(file);
        const sightings = sightingsOf(file, stationObservations(file)).get("t") ?? [];
        expect(placeTieIn(aTieIn("t"), sightings).station).toBe(fault?.station);
      },
    ),
  );
});

test("stationObservations() keeps side and order where a run is relative only or missing", () => {
  const observations = [
    anObservation("a", { runId: "loose", counter: 500, clock: 3 }),
    anObservation("b", { runId: "gone", counter: 500, clock: 3 }),
  ];
  const found = stationObservations({ ...FILE, observations });
  expect(found.map(({ station, uncertainty, side }) => [station, uncertainty, side])).toEqual([
    [null, null, "right"],
    [null, null, "unknown"],
  ]);
});

test("pipeChanges() gives the places where the pipe was seen to change, if they have a station", () => {
  const observations = [
    anObservation("a", { kind: "material", counter: 3_860, material: "pvc", diameter: 6 }),
    anObservation("b", { kind: "material", runId: "loose", counter: 3_860, material: "concrete" }),
    anObservation("c", { kind: "tie-in", counter: 4_000 }),
  ];
  const file = { ...FILE, observations };
  expect(pipeChanges(file, stationObservations(file))).toEqual([
    { station: 3_860, material: "pvc", diameter: 6 },
  ]);
});
