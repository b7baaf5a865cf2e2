import { describe, expect, test } from "vitest";
import { stationWords } from "#app/lines/[lineId]/camera/station-words.ts";
import type { Anchor, Run } from "#lib/domain/facts/run.ts";

const RUN: Run = {
  id: "r1",
  name: "Run 1",
  ranOn: "2026-11-03",
  operator: "",
  accessPoint: "",
  looks: "downstream",
  measuredFrom: "access",
  selfLeveling: "unknown",
  zeroAt: "",
  fromCounter: 0,
  toCounter: 9_860,
  ended: "unknown",
  crossingSeen: "no",
  uncertainty: null,
  note: "",
};
const AT_MAIN: Anchor = {
  id: "a1",
  runId: "r1",
  kind: "main-connection",
  counter: 9_200,
  station: 0,
  note: "",
};

describe("stationWords()", () => {
  // trade.md 2.3 (4): a run that starts at a cleanout and reaches the main at 92.0 sees 31.5 at 60.5.
  test("stationWords() turns a reading into feet from the main, with how sure and the side", () => {
    expect(
      stationWords({ counter: 3_150, clock: 9 }, { run: RUN, anchors: [AT_MAIN], log: [] }),
    ).toBe("60.5 ± 1.0 ft, right");
  });

  test("stationWords() says no station where nothing ties the run to the line", () => {
    expect(stationWords({ counter: 3_150, clock: null }, { run: RUN, anchors: [], log: [] })).toBe(
      "no station",
    );
  });

  test("stationWords() says how far off a reading by time may be, and marks the side of a head that turns", () => {
    const on = { run: RUN, anchors: [AT_MAIN], log: [] };
    const about = { counter: 3_150, clock: 9, reading: "between", uncertainty: 400 };
    expect(stationWords(about, on)).toBe("60.5 ± 4.0 ft, right");
    const turning = { ...on, run: { ...RUN, selfLeveling: "no" as const } };
    expect(stationWords(about, turning)).toBe("60.5 ± 4.0 ft, right (unsure: the head turns)");
  });

  test("stationWords() stays empty while the counter is not typed", () => {
    expect(stationWords({ clock: 3 }, { run: RUN, anchors: [AT_MAIN], log: [] })).toBe("");
  });
});
