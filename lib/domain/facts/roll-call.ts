import type { Day, Instant } from "../time/day.ts";

/** What everybody is asked or told door by door: that drains are off, and that they are on again. */
export const ROLL_CALL_MATTERS = ["drains-off", "drains-on"] as const;
export type RollCallMatter = (typeof ROLL_CALL_MATTERS)[number];

export const ROLL_CALL_ANSWERS = [
  "aware",
  "agreed",
  "needs-help",
  "not-reached",
  "waived",
] as const;
export type RollCallAnswer = (typeof ROLL_CALL_ANSWERS)[number];

/** One call or knock at one door about one pause of drains. Added, never changed; the latest counts. */
export interface RollCallWord {
  readonly id: string;
  readonly matter: RollCallMatter;
  /** First day of the pause. */
  readonly forDay: Day;
  /** The hours that were spoken of, as `08:00`; empty where none were set. Other hours want another call. */
  readonly from: string;
  readonly until: string;
  readonly propertyId: string;
  /** Null: the whole property. */
  readonly unitId: string | null;
  readonly answer: RollCallAnswer;
  /** Who answered, by name; empty where nobody did, or gave one. */
  readonly spokeWith: string;
  /** What was said; for a waiver its reason. */
  readonly words: string;
  /** Who called or knocked; for a waiver, who gave it. */
  readonly by: string;
  readonly at: Instant;
}
