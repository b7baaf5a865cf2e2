import { expect, test } from "vitest";
import { matching } from "#app/lines/[lineId]/history/find-entries.ts";
import { readDetail } from "#app/lines/[lineId]/history/read-detail.ts";
import type { HistoryEntry } from "#lib/domain/facts/history-entry.ts";

const NAMES = new Map([
  ["t3", "tie-in T3"],
  ["p1", "14 Fennel Row"],
]);

test("readDetail() tells of a changed row only the fields that differ, by the row's name", () => {
  const detail = {
    tieIns: {
      added: [],
      removed: [],
      changed: [
        {
          id: "t3",
          before: { station: 2600, side: "left" },
          after: { station: 2640, side: "left" },
        },
      ],
    },
  };
  expect(readDetail(JSON.stringify(detail), NAMES)).toEqual([
    { name: "tie-in T3, station", before: "26.0 ft", after: "26.4 ft" },
  ]);
});

test("readDetail() tells added and removed rows against nothing", () => {
  const row = { id: "s9", title: "Roots", rate: 18500, note: "", payerId: "p1" };
  const added = JSON.stringify({ scope: { added: [row], removed: [], changed: [] } });
  expect(readDetail(added, NAMES)).toEqual([
    { name: "Roots, title", before: "nothing", after: "Roots" },
    { name: "Roots, rate", before: "nothing", after: "$185.00" },
    { name: "Roots, payer", before: "nothing", after: "14 Fennel Row" },
  ]);
  const removed = JSON.stringify({ scope: { added: [], removed: [{ id: "s9", title: "Roots" }] } });
  expect(readDetail(removed)).toEqual([
    { name: "Roots, title", before: "Roots", after: "nothing" },
  ]);
});

test("readDetail() tells plain facts without a before, and ids only where they have a name", () => {
  const detail =
    '{"tieInId":"t3","splitId":"x","kind":"yard-drain","ownerAccepted":true,"note":""}';
  expect(readDetail(detail, NAMES)).toEqual([
    { name: "tie in", before: null, after: "tie-in T3" },
    { name: "kind", before: null, after: "yard drain" },
    { name: "owner accepted", before: null, after: "yes" },
  ]);
});

test("readDetail() keeps detail that is no JSON as it is, and tells nothing where there is none", () => {
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

test("readDetail() says days, times and stored words as an office does", () => {
  const detail = {
    calledOn: "2026-11-23",
    calledAt: "16:05",
    unknownShares: "held-apart",
    state: "in-hand",
    licence: "HT-1",
  };
  expect(readDetail(JSON.stringify(detail), NAMES).map(({ name, after }) => [name, after])).toEqual(
    [
      ["called on", "November 23, 2026"],
      ["called at", "4:05 PM"],
      ["unknown shares", "set aside"],
      ["state", "on file"],
      ["license", "HT-1"],
    ],
  );
});
