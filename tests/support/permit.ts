import { INSPECTION_KIND, type InspectionKind } from "#lib/domain/facts/authority.ts";
import { CORRECTION, type Correction } from "#lib/domain/facts/correction.ts";
import { usualRow } from "#lib/domain/facts/field.ts";
import { PERMIT_FEE_ENTRY, type PermitFeeEntry } from "#lib/domain/facts/permit-fee.ts";

/** A comment of a corrections letter, not answered yet. */
export function aCorrection(
  id: string,
  stepId: string,
  overrides: Partial<Correction> = {},
): Correction {
  return { ...usualRow(CORRECTION), id, stepId, comment: `Comment ${id}`, ...overrides };
}

/** A kind of inspection of the authority’s list, that holds nothing back unless said. */
export function anInspectionKind(
  id: string,
  overrides: Partial<InspectionKind> = {},
): InspectionKind {
  return {
    ...usualRow(INSPECTION_KIND),
    id,
    authorityId: "authority-1",
    title: "Open trench",
    asOf: "2026-10-01",
    ...overrides,
  };
}

/** An amount paid to the authority, unless said otherwise. */
export function aFeeEntry(id: string, overrides: Partial<PermitFeeEntry> = {}): PermitFeeEntry {
  return {
    ...usualRow(PERMIT_FEE_ENTRY),
    id,
    permitId: "permit",
    amount: 31_000,
    on: "2026-11-20",
    ...overrides,
  };
}
