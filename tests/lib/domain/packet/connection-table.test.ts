import { expect, test } from "vitest";
import { connectionTable } from "#lib/domain/packet/connection-table.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { aFile, anEntry, anObservation, aRecord, aRun, aTieIn } from "#tests/support/file.ts";

// A pull-back from the main that looks downstream, so that its left is the right side; due west, so
// that right is north. The card measures from the house, 84 ft up.
const FILE = aFile({
  line: { upperEnd: 8_400, bearing: 270 },
  runs: [aRun("run", { name: "Run 1", looks: "downstream", measuredFrom: "main" })],
  records: [aRecord("card", { number: "1188", measuredFrom: "upper-end" })],
  entries: [
    anEntry("House 12", { distance: 6_000, side: "right", uncertainty: 100 }),
    anEntry("House 30", { distance: 800, side: "left" }),
  ],
  tieIns: [
    aTieIn("far", { label: "T2", side: "unknown" }),
    aTieIn("near", { label: "T1", side: "unknown" }),
    aTieIn("lost", { label: "T3", side: "unknown" }),
    aTieIn("taped", { label: "T4", station: 5_000 }),
  ],
  observations: [
    anObservation("a", { tieInId: "near", counter: 2_400, clock: 9 }),
    anObservation("b", {
      tieInId: "far",
      counter: 3_120,
      clock: 3,
      reading: "between",
      uncertainty: 850,
    }),
  ],
});

function rowsOf(file = FILE) {
  const { head, rows } = connectionTable(file, reportOn(file, "2026-11-25"));
  return rows.map((row) => {
    expect(row).toHaveLength(head.length);
    return Object.fromEntries(head.map((name, at) => [name, row[at]]));
  });
}

test("each tie-in stands up the line with how far off it may be, and what that rests on", () => {
  const rows = rowsOf();
  expect(rows.map((row) => row["Tie-in"])).toEqual(["T1", "T2", "T4", "T3", ""]);
  expect(rows[0]).toMatchObject({
    "Station, ft from the main": 24,
    "Station ± ft": 1,
    "Read from": "Run 1: 24.0 ft on the counter, read, ± 1.0 ft",
    "Side, looking upstream": "right",
    Faces: "north",
    "Record entry": "House 12",
    Record: "Side sewer card, No. 1188",
    "Recorded, ft from the main": 24,
    "Recorded ± ft": 1,
    Status: "on record and seen",
    Match: "proposed",
  });
  expect(rows[1]).toMatchObject({
    "Station, ft from the main": 31.2,
    "Station ± ft": 8.5,
    "Read from": "Run 1: 31.2 ft on the counter, worked out by time, ± 8.5 ft",
    "Side, looking upstream": "left",
    Faces: "south",
    "Record entry": "",
    Status: "seen, not on record",
    Match: "",
  });
  expect(rows[2]).toMatchObject({ "Read from": "station set by hand", "Station ± ft": 0 });
});

test("what is not known is empty or said to be unknown, never a guess", () => {
  expect(rowsOf()[3]).toMatchObject({
    "Station, ft from the main": "",
    "Station ± ft": "",
    "Read from": "no station",
    "Side, looking upstream": "unknown",
    Faces: "",
    Property: "",
  });
});

test("what is on record and has no tie-in stands last, at its own place", () => {
  expect(rowsOf().at(-1)).toMatchObject({
    "Tie-in": "",
    "Station, ft from the main": "",
    "Record entry": "House 30",
    "Recorded, ft from the main": 76,
    "Recorded ± ft": "",
    Faces: "south",
  });
  expect(rowsOf(aFile())).toEqual([]);
});
