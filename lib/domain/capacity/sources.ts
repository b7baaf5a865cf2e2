import type { PlumbingCode, TableSource } from "../facts/plumbing-code.ts";
import { BUILDING_SEWER_LOADS, leastSlopeSource } from "./drain-tables.ts";
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
