import type { ClockMeaning } from "../facts/clock-rule.ts";
import type { Day } from "../time/day.ts";

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

/** How far telling one person has got. */
export interface Told {
  readonly partyId: string;
  readonly propertyId: string;
  /** The day on which a letter went to them that did not come back; null: none did. */
  readonly on: Day | null;
  /** It went by the post. */
  readonly mailed: boolean;
  /** It went after its day. */
  readonly late: boolean;
  /** The day on which something shows that they have it; null while nothing does. */
  readonly confirmedOn: Day | null;
}

/** Everybody who has to be told of an event before it comes, and how far that has got. */
export interface Telling {
  readonly recipients: readonly Told[];
  /** The file says whom the event concerns; else it can't be kept. */
  readonly known: boolean;
}
