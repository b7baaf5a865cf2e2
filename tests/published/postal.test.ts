import { describe, expect, test } from "vitest";
import type { Address } from "#lib/domain/facts/party.ts";
import { addressKey, windowLines } from "#lib/domain/party/address.ts";

/*
 * USPS Publication 28 (edition of October 2023) and DMM 202.2.1. The pages were read, except
 * where it says “from memory”. What concerns the place on the sheet is tested with the letters.
 */

function at(street: string, rest: Partial<Address> = {}): Address {
  return { street, unit: "", city: "Quillhaven", state: "WA", zip: "98000", ...rest };
}

function delivered(street: string, unit = ""): string {
  return windowLines("", at(street, { unit })).slice(0, -1).join(" / ");
}

describe("Publication 28, delivery line", () => {
  // The task that any postal practice sets: directional, suffix and unit in one. Worked out here by sections
  // 213, 233, 234 and 235.
  test("windowLines() writes North West Main Street #5 in capitals and short", () => {
    expect(delivered("10 North West Main Street #5")).toBe("10 NW MAIN ST # 5");
    expect(delivered("10 North West Main Street", "Apartment 5")).toBe("10 NW MAIN ST APT 5");
  });

  // Section 233 (from memory): a directional that is the street's only name is spelled out.
  test.each([
    ["1 South Street", "1 SOUTH ST"],
    ["5 North Avenue", "5 NORTH AVE"],
  ])("windowLines() keeps the directional name of %s", (typed, written) => {
    expect(delivered(typed)).toBe(written);
  });

  // Section 234.2; the example (from memory): of two suffix words only the second is abbreviated.
  test("windowLines() abbreviates only the last of two suffixes", () => {
    expect(delivered("789 Main Avenue Drive")).toBe("789 MAIN AVENUE DR");
  });

  // Appendix D1 and D2: hyphens in numbers, grid streets.
  test.each([
    ["112-10 Bronx Road", "112-10 BRONX RD"],
    ["842 East 1700 South", "842 E 1700 S"],
    ["39.2 Road", "39.2 RD"],
  ])("windowLines() writes %s as %s", (typed, written) => {
    expect(delivered(typed)).toBe(written);
  });

  // Boxes and routes (from memory): no points, no leading zeros.
  test.each([
    ["P.O. Box 11890", "PO BOX 11890"],
    ["Post Office Box 00118", "PO BOX 118"],
    ["Rural Route 2, Box 152", "RR 2 BOX 152"],
    ["HC 68 Box 23A", "HC 68 BOX 23A"],
  ])("windowLines() writes %s as %s", (typed, written) => {
    expect(delivered(typed)).toBe(written);
  });

  // Section 213: # not where the designator is known; a space behind it where it is used (from memory).
  test.each([
    ["Apt. # 5", "APT 5"],
    ["#5", "# 5"],
    ["5", "# 5"],
    ["Suite 300", "STE 300"],
    ["Building 2", "BLDG 2"],
    ["Floor 3", "FL 3"],
    ["Rear", "REAR"],
    ["Basement", "BSMT"],
    ["Penthouse", "PH"],
  ])("windowLines() writes the unit %s as %s", (unit, written) => {
    expect(delivered("12 Fennel Row", unit)).toBe(`12 FENNEL ROW ${written}`);
  });

  // Appendix C1 (from memory).
  test.each([
    ["Alley", "ALY"],
    ["Boulevard", "BLVD"],
    ["Circle", "CIR"],
    ["Court", "CT"],
    ["Cove", "CV"],
    ["Crescent", "CRES"],
    ["Expressway", "EXPY"],
    ["Heights", "HTS"],
    ["Highway", "HWY"],
    ["Junction", "JCT"],
    ["Lane", "LN"],
    ["Loop", "LOOP"],
    ["Parkway", "PKWY"],
    ["Place", "PL"],
    ["Plaza", "PLZ"],
    ["Point", "PT"],
    ["Ridge", "RDG"],
    ["Square", "SQ"],
    ["Terrace", "TER"],
    ["Turnpike", "TPKE"],
    ["Trace", "TRCE"],
    ["Trail", "TRL"],
    ["View", "VW"],
    ["Way", "WAY"],
    ["Crossing", "XING"],
  ])("windowLines() abbreviates %s to %s", (suffix, short) => {
    expect(delivered(`12 Fennel ${suffix}`)).toBe(`12 FENNEL ${short}`);
  });
});

// Publication 28 A1 and DMM 202.2.1: capitals, all punctuation may go but the hyphen in a number
// or ZIP+4.
test("windowLines() ends with town, state and ZIP without a comma, ZIP+4 with its hyphen", () => {
  const lines = windowLines(
    "O’Hara & Peña, Inc.",
    at("12½ Fennel Row", { state: "Washington", zip: "980001234" }),
  );
  expect(lines).toEqual(["O’HARA & PEÑA INC", "12 1/2 FENNEL ROW", "QUILLHAVEN WA 98000-1234"]);
});

// The two common parsers disagree on the directional of this address; the key does not depend on
// how it was typed.
test("addressKey() is the same for 1234 NW Main St and its spelled-out form", () => {
  const short = at("1234 NW Main St", { unit: "Apt 5", zip: "98101-1234" });
  const long = at("1234 Northwest Main Street", { unit: "apartment 5", zip: "98101" });
  expect(addressKey(short)).toBe(addressKey(long));
});
