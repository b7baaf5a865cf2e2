import type { SplitVersion } from "../facts/split.ts";
import type { TieInFinding } from "../findings/report.ts";

/** Whether a share of this version belongs to, or is carried for, an owner not yet known. */
export function concernsUnknown({ shares }: Pick<SplitVersion, "shares">): boolean {
  return shares.some(({ propertyId, recoverable }) => propertyId === null || recoverable > 0);
}

/** Live tie-ins that belong to nobody yet: whose share a split has to carry or to hold apart. */
export function nobodysTieIns(tieIns: readonly TieInFinding[]): TieInFinding[] {
  return tieIns.filter(({ live, propertyId }) => live && propertyId === null);
}
