import { expect, test } from "vitest";
import { addressLines } from "#lib/domain/party/address.ts";
import { addressProblems } from "#lib/domain/party/address-check.ts";
import { anAddress } from "#tests/support/file.ts";

test.each(["WA", "wa", "Washington", "new york", "D.C.", "AE", "PR", ""])(
  "addressProblems() takes %j for a state",
  (state) => {
    expect(addressProblems(anAddress("1 Weir Street", { state }))).toEqual([]);
  },
);

test.each(["Oregn", "BC", "98000"])("addressProblems() asks for a state instead of %j", (state) => {
  expect(addressProblems(anAddress("1 Weir Street", { state }))).toMatchObject([
    { field: "state", message: expect.stringContaining("e.g. WA or Washington") },
  ]);
});

test.each(["98000", "98000-1234", "980001234", " 98000 ", ""])(
  "addressProblems() takes %j for a ZIP code",
  (zip) => {
    expect(addressProblems(anAddress("1 Weir Street", { zip }))).toEqual([]);
  },
);

test.each(["974991", "9749", "V5K 0A1"])(
  "addressProblems() says how to write the ZIP %j",
  (zip) => {
    expect(addressProblems(anAddress("1 Weir Street", { zip }))).toMatchObject([
      { field: "zip", message: expect.stringContaining("five digits") },
    ]);
  },
);

test("a state reads as its two letters, however it was typed", () => {
  const lines = (state: string) => addressLines(anAddress("1 Weir Street", { state }));
  expect(lines("or")[1]).toBe("Quillhaven, OR 98000");
  expect(lines("Oregon")[1]).toBe("Quillhaven, OR 98000");
  expect(lines("Baja")[1]).toBe("Quillhaven, Baja 98000");
});
