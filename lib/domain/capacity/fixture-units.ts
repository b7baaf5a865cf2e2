import type { Fixture } from "../facts/fixtures.ts";
import type { PlumbingCode, TableSource } from "../facts/plumbing-code.ts";

interface FixtureTable extends TableSource {
  /** Drainage fixture units of one fixture in private use; null: the table has no such row. */
  readonly units: Record<Fixture, number | null>;
}

/** Private use, toilets of 1.6 gallons a flush, as public transcriptions of the model codes have them. */
const FIXTURE_UNITS: Record<PlumbingCode, FixtureTable> = {
  ipc: {
    title: "IPC Table 709.1, private use",
    edition: "model code, toilets of 1.6 gallons a flush",
    source: "International Plumbing Code",
    units: {
      "bathroom-group": 5,
      "water-closet": 3,
      bathtub: 2,
      shower: 2,
      lavatory: 1,
      "kitchen-sink": 2,
      dishwasher: 2,
      "clothes-washer": 2,
      "laundry-sink": 2,
      "floor-drain": 2,
    },
  },
  upc: {
    title: "UPC Table 702.1, private use",
    edition: "model code, toilets of 1.6 gallons a flush",
    source: "Uniform Plumbing Code",
    units: {
      "bathroom-group": null,
      "water-closet": 3,
      bathtub: 2,
      shower: 2,
      lavatory: 1,
      "kitchen-sink": 2,
      dishwasher: 2,
      "clothes-washer": 3,
      "laundry-sink": 2,
      "floor-drain": 2,
    },
  },
};

/** Units of one fixture by the code's table; null where it has no such row. */
export function unitsOfOne(code: PlumbingCode, fixture: Fixture): number | null {
  return FIXTURE_UNITS[code].units[fixture];
}

/** `IPC Table 709.1, private use`. */
export function fixtureTableTitle(code: PlumbingCode): string {
  return FIXTURE_UNITS[code].title;
}

/** Where the fixture units of a code are written. */
export function fixtureUnitsSource(code: PlumbingCode): TableSource {
  return FIXTURE_UNITS[code];
}
