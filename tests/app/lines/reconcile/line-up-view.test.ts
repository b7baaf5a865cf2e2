import { expect, test } from "vitest";
import { comparedRows } from "#app/lines/[lineId]/reconcile/line-up/alternatives-view.ts";
import { movedWords, signedNumber } from "#app/lines/[lineId]/reconcile/line-up/line-up-view.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import {
  aFile,
  anAnchor,
  anEntry,
  anObservation,
  aRecord,
  aRun,
  aTieIn,
} from "#tests/support/file.ts";

test.each([
  ["2.4", 100, 240],
  ["−2.4 ft", 100, -240],
  ["-1,5 %", 10_000, -15_000],
  ["+3", 100, 300],
  ["", 100, 0],
  ["two", 100, null],
  ["1e9", 100, null],
] as const)("signedNumber() reads %j", (text, unit, value) => {
  expect(signedNumber(text, unit)).toBe(value);
});

test.each([
  [240, 0, "2.4 ft upstream"],
  [-240, 0, "2.4 ft downstream"],
  [0, -12_000, "shortened by 1.2%"],
  [100, 35_000, "1.0 ft upstream, stretched by 3.5%"],
  [0, 0, "no shift"],
  [0, 2_280_840, "in meters"],
  [600, 2_280_840, "in meters, 6.0 ft upstream"],
  [16_300, -2_000_000, "from the other end, its zero at 163.0 ft"],
  [16_300, -4_346_457, "in meters, from the other end, its zero at 163.0 ft, stretched by 2.0%"],
] as const)("movedWords() says what %s and %s do to a record", (shift, scale, words) => {
  expect(movedWords({ shift, scale })).toBe(words);
});

test("comparedRows() sets only the tie-ins side by side that another way would pair otherwise", () => {
  const file = aFile({
    records: [aRecord("card")],
    entries: [anEntry("House 14", { distance: 4_000 }), anEntry("House 2", { distance: 1_000 })],
    runs: [aRun("run")],
    anchors: [anAnchor("run")],
    tieIns: [aTieIn("T1"), aTieIn("T2"), aTieIn("T3")],
    observations: [
      anObservation("o1", { counter: 4_060, tieInId: "T2" }),
      anObservation("o2", { counter: 3_950, tieInId: "T1" }),
      anObservation("o3", { counter: 1_000, tieInId: "T3" }),
    ],
  });
  const rows = comparedRows(file, reportOn(file, "2026-11-25"));
  expect(rows.map(({ label, cells }) => [label, ...cells.map(({ entry }) => entry)])).toEqual([
    ["T1", "House 14", ""],
    ["T2", "", "House 14"],
  ]);
  expect(rows[0]?.cells.map(({ differs, distance }) => [differs, distance])).toEqual([
    [false, -50],
    [true, null],
  ]);
});
