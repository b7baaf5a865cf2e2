import type { ClockMeaning } from "./clock-rule.ts";
import type { Day } from "./day.ts";
import type { Telling } from "./telling.ts";

/** A deadline or a window, with the rule that made it. */
export interface Clock {
  readonly key: string;
  readonly title: string;
  readonly meaning: ClockMeaning;
  readonly startedOn: Day;
  /** The day that counts; for `not-before` the first allowed day. */
  readonly on: Day;
  /** For hours: the time of that day as `16:05`; empty where the whole day counts. */
  readonly at: string;
  /** How it was counted, in one sentence. */
  readonly sentence: string;
  readonly citation: string;
  readonly asOf: Day | null;
  readonly subjectId: string;
  readonly settled: boolean;
  /** Where it waits for people to be told: whom, and how far that has got. */
  readonly telling: Telling | null;
}
