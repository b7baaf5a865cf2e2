import { expect, test } from "vitest";
import type { Property } from "#lib/domain/facts/party.ts";
import { shortNames, streetName } from "#lib/domain/strip/short-name.ts";
import { anAddress, aProperty } from "#tests/support/file.ts";

function named(...streets: readonly string[]): Property[] {
  return streets.map((street) => aProperty(street, { address: anAddress(street) }));
}

test("shortNames() leaves the street out where most stand in it, and nowhere else", () => {
  const names = shortNames(
    named("12 Fennel Row", "14-16 Fennel Row", "18 1/2 fennel row", "9 Ropewalk Lane"),
  );
  expect([...names.values()]).toEqual(["12", "14-16", "18 1/2", "9 Ropewalk Lane"]);
});

test("shortNames() keeps full names where no street has most of them", () => {
  const names = shortNames(named("12 Fennel Row", "12 Ropewalk Lane"));
  expect([...names.values()]).toEqual(["12 Fennel Row", "12 Ropewalk Lane"]);
});

test("shortNames() tells units of one house apart", () => {
  const [house] = named("12 Fennel Row");
  const flat = aProperty("b", { address: anAddress("12 Fennel Row", { unit: "B" }) });
  const names = shortNames(house === undefined ? [flat] : [house, flat]);
  expect([...names.values()]).toEqual(["12", "12 B"]);
});

test("streetName() falls back on the parcel, and says when there is neither", () => {
  expect(streetName(aProperty("a", { address: anAddress(""), parcel: "QH-0412" }))).toBe("QH-0412");
  expect(streetName(aProperty("a", { address: anAddress(""), parcel: "" }))).toBe("no address");
});
