import type { FixtureCount, Level } from "#lib/domain/facts/capacity.ts";
import type { Capacity } from "#lib/domain/findings/capacity.ts";

/** Nothing known of load, slope and flow. */
export const NO_CAPACITY: Capacity = {
  code: null,
  levels: [],
  slopes: [],
  reaches: [],
  obstructions: [],
  water: [],
  wanting: [],
};

/** Nothing measured yet at the main, unless said otherwise. */
export function aLevel(id: string, overrides: Partial<Level> = {}): Level {
  return {
    id,
    station: 0,
    ground: null,
    depth: null,
    invert: null,
    method: "locator",
    uncertainty: null,
    note: "",
    ...overrides,
  };
}

/** One bathroom group, 5 units by the IPC, unless said otherwise. */
export function aFixture(propertyId: string, overrides: Partial<FixtureCount> = {}): FixtureCount {
  const fixture = overrides.fixture ?? "bathroom-group";
  return {
    id: `${propertyId}-${fixture}`,
    propertyId,
    unitId: null,
    fixture,
    count: 1,
    note: "",
    ...overrides,
  };
}
