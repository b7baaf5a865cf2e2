import type { Cft } from "../length/station.ts";
import type { Day } from "../time/day.ts";

export const TEST_KINDS = ["dye", "trace", "smoke", "flow", "excavation", "statement"] as const;
export type TestKind = (typeof TEST_KINDS)[number];

export const TEST_RESULTS = ["positive", "not-seen", "inconclusive"] as const;
export type TestResult = (typeof TEST_RESULTS)[number];

export const CONTROL_RESULTS = ["not-run", "negative", "positive"] as const;
export type ControlResult = (typeof CONTROL_RESULTS)[number];

/** Evidence on whose a tie-in is: one attempt at one address. */
export interface TieInTest {
  readonly id: string;
  readonly tieInId: string;
  readonly propertyId: string | null;
  readonly unitId: string | null;
  readonly kind: TestKind;
  readonly performedOn: Day;
  readonly fixture: string;
  readonly colour: string;
  readonly quantity: string;
  /** Clock time `09:40`, local; empty where not noted. */
  readonly startedAt: string;
  readonly firstSeenAt: string;
  readonly seenAt: Cft | null;
  readonly waitMinutes: number | null;
  /** File and time in it where the test can be seen. */
  readonly filmed: string;
  readonly dosedBy: string;
  readonly watchedBy: string;
  readonly otherWaterBarred: boolean;
  readonly controlPropertyId: string | null;
  readonly controlResult: ControlResult;
  readonly result: TestResult;
  readonly note: string;
}

/** trade ladder: 0 unknown … 6 exposed by excavation or accepted in writing. */
export type EvidenceLevel = 0 | 1 | 2 | 3 | 4 | 5 | 6;
