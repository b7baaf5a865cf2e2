import type { TieInTest } from "../facts/test.ts";
import { isControlRun } from "../tiein/control-run.ts";
import { missingForProof } from "../tiein/evidence.ts";
import type { Day } from "../time/day.ts";

/** A dye test that has to be done once more, so that it proves whose a tie-in is. */
export interface TestToRepeat {
  /** The last one that was seen. */
  readonly last: TieInTest;
  /** How many were seen so far. */
  readonly seen: number;
  /** What is missing for proof, in words. */
  readonly missing: readonly string[];
}

/**
 * The dye test that is worth repeating: dye was seen from one property alone, no control was seen too,
 * and something is missing for proof. Null where another test, or none, is wanted.
 */
export function testToRepeat(tests: readonly TieInTest[], tieInId: string): TestToRepeat | null {
  const seen = tests.filter(
    (test) =>
      test.tieInId === tieInId &&
      test.kind === "dye" &&
      test.result === "positive" &&
      test.propertyId !== null &&
      !isControlRun(test),
  );
  const last = seen.at(-1);
  const places = new Set(seen.map(({ propertyId }) => propertyId));
  if (last === undefined || places.size > 1) return null;
  if (seen.some(({ controlResult }) => controlResult === "positive")) return null;
  const missing = missingForProof(seen);
  return missing.length === 0 ? null : { last, seen: seen.length, missing };
}

/**
 * The same test once more, to be filled in: where, with what and by whom stay; what will be seen, when
 * and on which film is not known yet.
 */
export function repeated(
  { last }: Pick<TestToRepeat, "last">,
  today: Day,
): Omit<TieInTest, "id" | "result"> {
  const { id: _id, result: _result, ...rest } = last;
  return {
    ...rest,
    performedOn: today,
    startedAt: "",
    firstSeenAt: "",
    seenAt: null,
    waitMinutes: null,
    filmed: "",
    controlResult: "not-run",
    note: "",
  };
}
