import {
  BUILDING_SEWER_LOADS,
  type Certainty,
  leastSlopeSource,
  type PlumbingCode,
  type TableSource,
} from "./drain-tables.ts";
import { fixtureUnitsSource } from "./fixture-units.ts";
import { ROUGHNESS_SOURCE } from "./manning.ts";

/** Every table that the results rest on, with its edition and where it was read. */
export function tableSources(code: PlumbingCode | null): TableSource[] {
  const ofCode =
    code === null
      ? []
      : [fixtureUnitsSource(code), BUILDING_SEWER_LOADS[code], leastSlopeSource(code)];
  return [...ofCode, ROUGHNESS_SOURCE];
}

export const CERTAINTY_WORDS: Record<Certainty, string> = {
  "read-in-a-public-copy": "read in a public copy",
  "partly-from-memory": "partly from memory: check it against the book",
  "from-memory": "from memory: check it against the book",
};
