import type { Clock } from "#lib/domain/findings/clock.ts";
import type { Day } from "#lib/domain/time/day.ts";
import { addDays } from "#lib/domain/time/days.ts";

export interface ClockGroups {
  /** Its day has passed and it is not settled. */
  readonly passed: readonly Clock[];
  /** Within the week to come, today included. */
  readonly week: readonly Clock[];
  readonly later: readonly Clock[];
  readonly settled: readonly Clock[];
}

/** The clocks by how pressing they are, each group in order of time. */
export function groupClocks(clocks: readonly Clock[], today: Day): ClockGroups {
  const inTime = clocks.toSorted((one, other) => one.on.localeCompare(other.on));
  const running = inTime.filter((clock) => !clock.settled);
  const weekEnd = addDays(today, 7);
  return {
    passed: running.filter((clock) => clock.on < today),
    week: running.filter((clock) => clock.on >= today && clock.on <= weekEnd),
    later: running.filter((clock) => clock.on > weekEnd),
    settled: inTime.filter((clock) => clock.settled),
  };
}
