import { expect, test } from "vitest";
import { usualPlace } from "#lib/domain/party/usual-place.ts";
import { aProperty } from "#tests/support/file.ts";

const at = (id: string, city: string, zip: string) =>
  aProperty(id, { address: { street: `${id} Heron Court`, unit: "", city, state: "OR", zip } });

test("usualPlace() is where the last property lies that has a city", () => {
  const properties = [
    at("14", "Alder Fork", "97499"),
    at("18", "Dry Mesa", "97500"),
    at("22", "", ""),
  ];
  const place = usualPlace({ properties, line: { town: "Elsewhere, WA" } });
  expect(place).toEqual({ city: "Dry Mesa", state: "OR", zip: "97500" });
});

test.each([
  ["Alder Fork, OR", { city: "Alder Fork", state: "OR", zip: "" }],
  [" Alder Fork , oregon ", { city: "Alder Fork", state: "OR", zip: "" }],
  ["Town of Dell, Lower Part", { city: "Town of Dell, Lower Part", state: "", zip: "" }],
  ["Quillhaven", { city: "Quillhaven", state: "", zip: "" }],
  ["", { city: "", state: "", zip: "" }],
])("usualPlace() of the first property is the line's town %o", (town, place) => {
  expect(usualPlace({ properties: [], line: { town } })).toEqual(place);
});
