import { CORRECTION, type Correction } from "#lib/domain/facts/correction.ts";
import { usualRow } from "#lib/domain/facts/field.ts";

/** A comment of a corrections letter, not answered yet. */
export function aCorrection(
  id: string,
  stepId: string,
  overrides: Partial<Correction> = {},
): Correction {
  return { ...usualRow(CORRECTION), id, stepId, comment: `Comment ${id}`, ...overrides };
}
