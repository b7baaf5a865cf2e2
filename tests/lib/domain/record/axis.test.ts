import { expect, test } from "vitest";
import { usualRow } from "#lib/domain/facts/field.ts";
import { PERMIT_RECORD } from "#lib/domain/facts/record.ts";
import { recordStation } from "#lib/domain/record/axis.ts";

const FROM_MAIN = { measuredFrom: "main", length: null } as const;
const FROM_TOP = { measuredFrom: "upper-end", length: 9_200 } as const;

test("recordStation() takes a distance from the main as it stands", () => {
  expect(recordStation({ distance: 5_800 }, FROM_MAIN, null)).toEqual({
    station: 5_800,
    gap: null,
  });
});

test("recordStation() turns a distance from the upper end round", () => {
  expect(recordStation({ distance: 3_150 }, FROM_TOP, null).station).toBe(6_050);
});

test("recordStation() lets the record's own length outrank the line's", () => {
  expect(recordStation({ distance: 200 }, FROM_TOP, 9_600).station).toBe(9_000);
  const bare = { measuredFrom: "upper-end", length: null } as const;
  expect(recordStation({ distance: 200 }, bare, 9_600).station).toBe(9_400);
});

test.each([
  ["no-distance", { distance: null }, FROM_MAIN],
  ["no-record", { distance: 100 }, null],
  ["not-a-length", { distance: 0.5 }, FROM_MAIN],
  ["below-main", { distance: -100 }, FROM_MAIN],
  ["measured-from-unknown", { distance: 100 }, { measuredFrom: "unknown", length: 9_200 }],
  ["no-length", { distance: 100 }, { measuredFrom: "upper-end", length: null }],
  ["beyond-length", { distance: 9_300 }, FROM_TOP],
] as const)("recordStation() says no station, for %s", (gap, entry, record) => {
  expect(recordStation(entry, record, null)).toEqual({ station: null, gap });
});

test("a record of which nobody said where it measures from places nothing", () => {
  const fresh = usualRow(PERMIT_RECORD);
  expect(fresh.measuredFrom).toBe("unknown");
  expect(recordStation({ distance: 3_400 }, fresh, 9_200).station).toBeNull();
});
