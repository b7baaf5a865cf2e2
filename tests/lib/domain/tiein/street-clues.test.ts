import { expect, test } from "vitest";
import type { Side } from "#lib/domain/facts/line.ts";
import type { TieInFinding } from "#lib/domain/findings/report.ts";
import { candidatesFor, nobodyWords } from "#lib/domain/tiein/candidates.ts";
import { houseNumberOf, streetClues } from "#lib/domain/tiein/street-clues.ts";
import { aFile, anAddress, anEntry, aProperty, aTest, aTieIn } from "#tests/support/file.ts";

function found(
  id: string,
  station: number | null,
  { propertyId = null, side = "left" }: { propertyId?: string | null; side?: Side } = {},
): TieInFinding {
  return {
    tieIn: aTieIn(id, { propertyId, kind: propertyId === null ? "unknown" : "building" }),
    station,
    uncertainty: 100,
    side,
    compass: null,
    sightings: [],
    standing: propertyId === null ? "undocumented" : "on-record-and-seen",
    decided: true,
    sentence: "",
    sentenceEs: "",
    entryId: null,
    propertyId,
    level: 0,
    levelReason: "",
    live: true,
  };
}

const houses = ["10", "12", "14", "16", "20"].map((id) => aProperty(id));
const stranger = found("T9", 4_000);

function cluesOf(id: string, tieIns: readonly TieInFinding[], finding = stranger) {
  const property = houses.find((each) => each.id === id) ?? aProperty(id);
  return streetClues(property, { properties: [...houses, property], tieIns, finding });
}

const RISING = [found("T1", 2_000, { propertyId: "10" }), found("T2", 6_000, { propertyId: "16" })];

test.each([
  ["14 Fennel Row", { number: 14, street: "fennel row" }],
  ["12 1/2 Fennel Row", { number: 12.5, street: "fennel row" }],
  ["14B Fennel Row", { number: 14, street: "fennel row" }],
  ["Mill House", null],
  ["1/2 Fennel Row", null],
])("houseNumberOf(%j) is %j", (street, expected) => {
  expect(houseNumberOf(street)).toEqual(expected);
});

test("a number that fills the gap in the order of the numbers speaks for its house", () => {
  expect(cluesOf("14", RISING)).toEqual([
    {
      kind: "between-neighbors",
      weight: 9,
      sentence:
        "Its number 14 lies between 10 (at 20.0 ft) and 16 (at 60.0 ft), as this tie-in does.",
    },
    {
      kind: "numbers-join-here",
      weight: 3,
      sentence: "Even numbers of the street join on the left, as this does.",
    },
  ]);
});

test("where numbers fall upstream, the order is read the other way", () => {
  const falling = [
    found("T1", 2_000, { propertyId: "16" }),
    found("T2", 6_000, { propertyId: "10" }),
  ];
  expect(cluesOf("14", falling)[0]?.weight).toBe(9);
  expect(cluesOf("20", falling)[0]?.weight).toBe(-4);
});

test("a number beyond the last known house fits a tie-in beyond the last known station", () => {
  expect(cluesOf("20", RISING, found("T9", 9_000))[0]).toEqual({
    kind: "beside-neighbor",
    weight: 4,
    sentence: "Its number 20 comes after 16 (at 60.0 ft), as this tie-in does.",
  });
  expect(cluesOf("14", RISING, found("T9", 9_000))[0]?.weight).toBe(-4);
});

test("says nothing of the order where known houses keep none, or a single one is known", () => {
  const mixed = [...RISING, found("T3", 8_000, { propertyId: "12" })];
  expect(cluesOf("14", mixed).map(({ weight }) => weight)).toEqual([3]);
  expect(cluesOf("14", RISING.slice(0, 1))).toEqual([]);
});

test("says nothing of a house on another street, without a number, or with its own tie-in", () => {
  const other = aProperty("o", { address: anAddress("14 Tollgate Lane") });
  const unnumbered = aProperty("u", { address: anAddress("Mill House") });
  const street = { properties: houses, tieIns: RISING, finding: stranger };
  expect(streetClues(other, street)).toEqual([]);
  expect(streetClues(unnumbered, street)).toEqual([]);
  expect(cluesOf("16", RISING)).toEqual([]);
});

test("houses on the side of the street that joins opposite speak less for themselves", () => {
  const right = found("T9", 4_000, { side: "right" });
  expect(cluesOf("14", RISING, right)).toEqual([
    {
      kind: "numbers-join-opposite",
      weight: -3,
      sentence: "Even numbers of the street join on the left, not here.",
    },
  ]);
});

const FILE = aFile({
  properties: houses.map((each) => ({ ...each, stake: "candidate" as const })),
});

test("candidates that as much speaks for are told as tied", () => {
  const [first, ...rest] = candidatesFor(FILE, { tieIns: RISING, entries: [] }, stranger);
  expect(first).toMatchObject({ propertyId: "12", tiedWith: ["14"] });
  expect(rest.find(({ propertyId }) => propertyId === "20")?.tiedWith).toEqual([]);
  expect(nobodyWords([])).toContain("Nothing on file");
  expect(nobodyWords(rest)).toContain("none of these");
});

test("size and side of an unanswered record entry are held against the tie-in", () => {
  const entries = [
    anEntry("e12", { propertyId: "12", label: "House 12", diameter: 6 }),
    anEntry("e14", { propertyId: "14", label: "House 14", side: "right" }),
  ];
  const findings = entries.map(({ id }) => ({
    entryId: id,
    recordStation: null,
    station: null,
    compass: null,
    standing: "on-record-not-inspected" as const,
    decided: false,
    sentence: "",
    sentenceEs: "",
    tieInId: null,
  }));
  const ranked = candidatesFor(
    { ...FILE, entries },
    { tieIns: RISING, entries: findings },
    stranger,
  );
  const against = (id: string) => ranked.find((each) => each.propertyId === id)?.speaksAgainst;
  expect(against("12")).toEqual(["The record shows 6 in; this is 4 in."]);
  expect(against("14")).toEqual(["The record shows it on the right; this is on the left."]);
  const turned = candidatesFor(
    { ...FILE, entries },
    { tieIns: RISING, entries: findings.map((each) => ({ ...each, compass: "east" })) },
    { ...stranger, compass: "west" },
  );
  expect(turned.find((each) => each.propertyId === "14")?.speaksAgainst).toEqual([
    "The record shows it on the right (east side); this is on the left (west side).",
  ]);
});

test("a note of a water bill speaks for a house without a tie-in, not for one with its own", () => {
  const note = "Water meter on the alley; billed since 1961.";
  const properties = houses.map((each) => ({ ...each, stake: "neighbour" as const, note }));
  const ranked = candidatesFor(aFile({ properties }), { tieIns: RISING, entries: [] }, stranger);
  expect(ranked.find(({ propertyId }) => propertyId === "12")?.speaksFor).toContain(
    `Its note says: ${note}`,
  );
  expect(ranked.some(({ propertyId }) => propertyId === "16")).toBe(false);
});

test("a dosing at the control address is no evidence for or against it", () => {
  const tests = [aTest("c", "T9", { propertyId: "12", controlPropertyId: "12" })];
  const plain = candidatesFor(FILE, { tieIns: RISING, entries: [] }, stranger);
  expect(candidatesFor({ ...FILE, tests }, { tieIns: RISING, entries: [] }, stranger)).toEqual(
    plain,
  );
});
