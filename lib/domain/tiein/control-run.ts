import type { TieInTest } from "../facts/test.ts";

/**
 * A dosing at the control address itself. It says nothing of whose the tie-in is, only whether the
 * other tests of the day tell one address from another.
 */
export function isControlRun({ propertyId, controlPropertyId }: TieInTest): boolean {
  return propertyId !== null && propertyId === controlPropertyId;
}
