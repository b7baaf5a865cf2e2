import { describe, expect, test } from "vitest";
import type { GridColumn } from "#app/_components/grid/column.ts";
import { areHeadings, columnNamed, matchHeadings } from "#app/_components/grid/headings.ts";
import { OBSERVATION_COLUMNS } from "#app/lines/[lineId]/camera/observation-columns.ts";
import { entryColumns } from "#app/lines/[lineId]/record/columns.ts";

const COLUMNS: GridColumn[] = [
  { key: "label", title: "As on the record", kind: "text", pasteHeadings: ["house"] },
  { key: "distance", title: "Distance", kind: "feet", pasteHeadings: ["station"] },
  { key: "note", title: "Note", kind: "text" },
];

function keyOf(heading: string, columns: readonly GridColumn[] = COLUMNS): string | undefined {
  return columnNamed(heading, columns)?.key;
}

describe("columnNamed()", () => {
  test("knows titles, keys and other headings, without regard to units and capitals", () => {
    for (const heading of [
      "Station (ft)",
      "Station ft",
      "Station, feet",
      "station in.",
      "DISTANCE",
    ])
      expect(keyOf(heading)).toBe("distance");
    expect(keyOf("HOUSE")).toBe("label");
    expect(keyOf("whatever")).toBeUndefined();
    expect(keyOf("")).toBeUndefined();
  });

  test.each([
    ["Mat'l", "material"],
    ["Mat’l", "material"],
    ["Matl", "material"],
    ["Mtl.", "material"],
    ["Dia", "diameter"],
    ["Dia. (in)", "diameter"],
    ["Pipe size", "diameter"],
    ["Dist.", "distance"],
    ["Dist. (ft)", "distance"],
    ["Sta.", "distance"],
    ["Ftg", "distance"],
    ["Conn.", "label"],
    ["Addr.", "propertyId"],
    ["Comments", "note"],
    ["Remarks", "note"],
  ])("knows how sheets shorten it: %s", (heading, key) => {
    expect(keyOf(heading, entryColumns({ properties: [] }))).toBe(key);
  });

  test.each([
    ["Footage", "counter"],
    ["Dist", "counter"],
    ["Obs.", "kind"],
    ["Defect", "fault"],
    ["Mat'l", "material"],
    ["O'clock", "clock"],
    ["Remarks", "note"],
  ])("knows how a camera log calls it: %s", (heading, key) => {
    expect(keyOf(heading, OBSERVATION_COLUMNS)).toBe(key);
  });
});

describe("areHeadings()", () => {
  test("takes rows of values for what they are", () => {
    expect(areHeadings([["House 14", "26.0", ""]], COLUMNS)).toBe(false);
    expect(areHeadings([["Note", "26.0", "clay"]], COLUMNS)).toBe(false);
    expect(areHeadings([["", ""]], COLUMNS)).toBe(false);
  });

  test("knows headings of which it knows one, over rows that hold numbers", () => {
    const rows = [
      ["Lot", "Distance", "Who"],
      ["House 14", "26.0", "Harrow"],
    ];
    expect(areHeadings(rows, COLUMNS)).toBe(true);
    expect(
      areHeadings(
        [
          ["Lot", "Distance", "Who"],
          ["House 14", "near", ""],
        ],
        COLUMNS,
      ),
    ).toBe(false);
  });
});

test("matchHeadings() gives each column once: the second that names it stays open", () => {
  const found = matchHeadings(["Distance", "Station", "House"], COLUMNS);
  expect(found.map((column) => column?.key)).toEqual(["distance", undefined, "label"]);
});
