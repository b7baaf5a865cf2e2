import fc from "fast-check";
import { expect, test } from "vitest";
import {
  addressKey,
  addressLines,
  formatAddress,
  stateWritten,
  townWritten,
  windowLines,
} from "#lib/domain/party/address.ts";
import { anAddress } from "#tests/support/file.ts";

test("addressLines() leaves an address as it was typed", () => {
  const address = anAddress("12½ Peña Row", { unit: "Unit 3" });
  expect(addressLines(address)).toEqual(["12½ Peña Row, Unit 3", "Quillhaven, WA 98000"]);
  expect(formatAddress(address)).toBe("12½ Peña Row, Unit 3, Quillhaven, WA 98000");
});

test("addressLines() leaves out what is not known", () => {
  expect(addressLines(anAddress("", { zip: "" }))).toEqual(["Quillhaven, WA"]);
  expect(addressLines({ street: "", unit: "", city: "", state: "", zip: "" })).toEqual([]);
});

test("windowLines() keeps ñ as Ñ, and fractions as figures", () => {
  expect(windowLines("Jesús Peña", anAddress("12½ Fennel Row", { unit: "Suite 4½" }))).toEqual([
    "JESÚS PEÑA",
    "12 1/2 FENNEL ROW STE 4 1/2",
    "QUILLHAVEN WA 98000",
  ]);
});

test("windowLines() takes a unit out of the street line, and leaves street names alone", () => {
  const street = (typed: string) => windowLines("", anAddress(typed))[0];
  expect(street("12 Fennel Row, Unit 3")).toBe("12 FENNEL ROW UNIT 3");
  expect(street("10 Port Street Suite 300")).toBe("10 PORT ST STE 300");
  expect(street("350 Key Blvd")).toBe("350 KEY BLVD");
  expect(street("12 Highway 99")).toBe("12 HIGHWAY 99");
  expect(street("5 Bay West Drive")).toBe("5 BAY WEST DR");
  expect(street("123-A E St")).toBe("123-A E ST");
  expect(street("Broadway")).toBe("BROADWAY");
});

test("windowLines() keeps a unit's own name", () => {
  expect(windowLines("", anAddress("20 Fennel Row", { unit: "Bakery" }))[0]).toBe(
    "20 FENNEL ROW BAKERY",
  );
});

test("windowLines() puts a long unit above the street and a long name on more lines", () => {
  const address = anAddress("100 Saint Mary of the Lake Boulevard NW", { unit: "Building 12" });
  const name =
    "Rafael and June Ostrander, trustees of the Ostrander Family Revocable Living Trust of 1998";
  expect(windowLines(name, address)).toEqual([
    "RAFAEL AND JUNE OSTRANDER TRUSTEES OF",
    "THE OSTRANDER FAMILY REVOCABLE LIVING",
    "BLDG 12",
    "100 SAINT MARY OF THE LAKE BLVD NW",
    "QUILLHAVEN WA 98000",
  ]);
});

test("windowLines() is at most five lines, in capitals, ending with the town", () => {
  const anyAddress = fc.record({
    street: fc.string(),
    unit: fc.string(),
    city: fc.constant("Quillhaven"),
    state: fc.constant("WA"),
    zip: fc.constant("98000"),
  });
  fc.assert(
    fc.property(fc.string({ maxLength: 300 }), anyAddress, (name, address) => {
      const lines = windowLines(name, address);
      expect(lines.length).toBeLessThanOrEqual(5);
      expect(lines.at(-1)).toBe("QUILLHAVEN WA 98000");
      for (const line of lines) expect(line).toBe(line.toLocaleUpperCase("en-US"));
    }),
  );
});

test.each([
  [anAddress("12 Fennel Row"), anAddress("12 FENNEL ROW.")],
  [anAddress("9 Ropewalk Lane", { unit: "Apt 2" }), anAddress("9 Ropewalk Ln, #2")],
  [anAddress("14 N.W. Peña Street"), anAddress("14 Northwest Pena St")],
  [anAddress("12½ Fennel Row"), anAddress("12 1/2 Fennel Row")],
  [anAddress("3 Dock Rd", { state: "Washington", zip: "98000-1234" }), anAddress("3 Dock Road")],
])("addressKey() is the same for %j and %j", (one, other) => {
  expect(addressKey(one)).toBe(addressKey(other));
});

test.each([
  [anAddress("12 Fennel Row"), anAddress("12 1/2 Fennel Row")],
  [anAddress("12 Fennel Row"), anAddress("12 Fennel Row", { unit: "Unit 1" })],
  [anAddress("12 Fennel Row", { unit: "1" }), anAddress("12 Fennel Row", { unit: "2" })],
  [anAddress("12 North Street"), anAddress("12 South Street")],
  [anAddress("12 Main Street"), anAddress("12 Main Avenue")],
  [anAddress("12 Fennel Row"), anAddress("12 Fennel Row", { city: "Tidewick" })],
])("addressKey() tells %j from %j", (one, other) => {
  expect(addressKey(one)).not.toBe(addressKey(other));
});

test.each([
  ["or", "OR"],
  ["Oregon", "OR"],
  ["d.c.", "DC"],
  ["OR", "OR"],
  ["British Columbia", "British Columbia"],
  ["", ""],
])("stateWritten() writes %j as %j", (typed, written) => {
  expect(stateWritten(typed)).toBe(written);
});

test.each([
  ["Alder Fork, or", "Alder Fork, OR"],
  ["Alder Fork,oregon", "Alder Fork, OR"],
  ["Alder Fork", "Alder Fork"],
  ["Paris, upper part", "Paris, upper part"],
])("townWritten() writes %j as %j", (typed, written) => {
  expect(townWritten(typed)).toBe(written);
});
