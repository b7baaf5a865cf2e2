import type { Run } from "#lib/domain/facts/run.ts";
import { fieldsSeen } from "#lib/operations/seen.ts";

/** How a run was made, as the form was filled in from it. */
export function runWaySeen(run: Run) {
  return fieldsSeen(run, ["looks", "measuredFrom", "selfLeveling"]);
}
