import type { ConditionFile } from "../application/answer.ts";
import { mayApply } from "../application/conditions.ts";
import type { LineFile } from "../facts/line-file.ts";
import type { Permit, RequirementState } from "../facts/permit.ts";
import type { ScopeItem } from "../facts/scope.ts";
import type { TieInFinding } from "../findings/report.ts";
import { stepsOf } from "../permit/steps.ts";
import { scopeInForce } from "../sharing/scope-in-force.ts";
import { isOnPipe } from "../split/work-deeds.ts";

type BuiltFile = Pick<LineFile, "built" | "scope" | "options" | "changeOrders"> & {
  readonly line: Pick<LineFile["line"], "optionId">;
};

/** Work in force on the pipe or in the ground of which nobody said yet that it was carried out. */
export function unbuiltWork(file: BuiltFile): ScopeItem[] {
  if (file.built.some(({ itemId }) => itemId === null)) return [];
  const done = new Set(file.built.map(({ itemId }) => itemId));
  return scopeInForce(file).filter((item) => isOnPipe(item, file) && !done.has(item.id));
}

/** The office’s word that it is there, or that it does not apply here. */
const SETTLED: readonly RequirementState[] = ["in-hand", "does-not-apply"];

/**
 * Why a permit can’t be final yet: the authority wants an as-built, and none is on file. Neither what
 * was built is recorded, nor an as-built was submitted, nor its requirement marked. Null: it can.
 */
export function asBuiltWanting(
  file: BuiltFile & ConditionFile & Pick<LineFile, "requirementMarks" | "permitSteps">,
  permit: Pick<Permit, "id">,
  tieIns: readonly TieInFinding[],
): string | null {
  const asked = (file.authority?.requirements ?? []).filter(
    ({ id, sheet, mandatory }) =>
      sheet === "as-built" &&
      mandatory &&
      mayApply({ id }, { file, tieIns }) &&
      !SETTLED.includes(
        file.requirementMarks.findLast((mark) => mark.requirementId === id)?.state ?? "missing",
      ),
  );
  const [first] = asked;
  if (first === undefined) return null;
  if (stepsOf(file, permit).some(({ state }) => state === "as-built-submitted")) return null;
  const missing = unbuiltWork(file);
  if (file.built.length > 0 && missing.length === 0) return null;
  const what = missing.map(({ title }) => `“${title}”`).join(", ");
  return `The authority asks for “${first.title}” before the final. Record what was built${what === "" ? "" : ` (still missing: ${what})`}, or that the as-built was submitted`;
}
