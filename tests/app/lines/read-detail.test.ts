import { expect, test } from "vitest";
import { matching } from "#app/lines/[lineId]/happened/find-entries.ts";
import { readDetail } from "#app/lines/[lineId]/happened/read-detail.ts";
import type { HistoryEntry } from "#lib/domain/file/line-file.ts";

test("readDetail() tells only the fields that differ between before and after", () => {
  const detail = JSON.stringify([
    {
      before: { id: "1", label: "T3", station: 2600, side: "left" },
      after: { id: "1", label: "T3", station: 2640, side: "left" },
    },
  ]);
  expect(readDetail(detail)).toEqual([
    { name: "T3, station", before: "26.0 ft", after: "26.4 ft" },
  ]);
});

test("readDetail() says nothing where there was nothing", () => {
  expect(readDetail('{"before":null,"after":{"title":"Roots","rate":18500}}')).toEqual([
    { name: "title", before: "nothing", after: "Roots" },
    { name: "rate", before: "nothing", after: "$185.00" },
  ]);
});

test("readDetail() tells plain facts without a before, and leaves the machine's names out", () => {
  const detail = '{"tieInId":"3f","kind":"yard-drain","ownerAccepted":true,"note":""}';
  expect(readDetail(detail)).toEqual([
    { name: "kind", before: null, after: "yard drain" },
    { name: "owner accepted", before: null, after: "yes" },
  ]);
});

test("readDetail() keeps detail that is no JSON as it is, and nothing where there is none", () => {
  expect(readDetail("by phone")).toEqual([{ name: "", before: null, after: "by phone" }]);
  expect(readDetail("")).toEqual([]);
  expect(readDetail("{}")).toEqual([]);
});

function entry(id: string, rest: Partial<HistoryEntry>): HistoryEntry {
  return {
    id,
    at: "2026-11-06T17:00:00.000Z",
    by: "Ruth",
    action: "",
    sentence: "",
    detail: "",
    ...rest,
  };
}

test("matching() finds every word whatever its accents and capitals, the newest first", () => {
  const history = [
    entry("1", { sentence: "Marek Łódź dosed T3" }),
    entry("2", { sentence: "lodz again", at: "2026-11-07T17:00:00.000Z" }),
    entry("3", { sentence: "T3 alone" }),
  ];
  expect(matching(history, { words: "LODZ", by: "" }).map(({ id }) => id)).toEqual(["2", "1"]);
  expect(matching(history, { words: "t3 łódź", by: "" }).map(({ id }) => id)).toEqual(["1"]);
});

test("matching() keeps to one person where one is asked for", () => {
  const history = [entry("1", {}), entry("2", { by: "Marek" })];
  expect(matching(history, { words: "", by: "Marek" }).map(({ id }) => id)).toEqual(["2"]);
});
