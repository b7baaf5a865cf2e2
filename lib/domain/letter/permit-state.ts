import type { LineFile } from "../file/line-file.ts";
import type { Permit, PermitState } from "../permit/permit.ts";

/** The last state that was entered for a permit; null where none was. */
export function permitStateIn(file: LineFile, permit: Permit): PermitState | null {
  const steps = file.permitSteps.filter((step) => step.permitId === permit.id);
  return steps.at(-1)?.state ?? null;
}
