import type { TieInFinding } from "../findings/report.ts";
import { bearsDemand } from "./evidence.ts";

type Asked = Pick<TieInFinding, "standing" | "live" | "level"> & {
  readonly tieIn: Pick<TieInFinding["tieIn"], "ownerAccepted">;
};

/**
 * True of a tie-in on no record that neither tests nor its owner have settled: nobody’s for money, and
 * nobody’s by name.
 */
export function isUnproven({ standing, level, tieIn }: Omit<Asked, "live">): boolean {
  return standing === "undocumented" && !bearsDemand(level, tieIn.ownerAccepted);
}

/**
 * True while it is open whose a tie-in on no record is: it may carry somebody’s sewage, and neither
 * tests nor its owner have settled it. How it stands on record is another thing and does not change by
 * being settled: once it is, “undocumented” is no question and no warning any more.
 */
export function isOwnerOpen(asked: Asked): boolean {
  return asked.live && isUnproven(asked);
}

/** True where tests have shown whose a tie-in on no record is, and no person has settled it yet. */
export function isUnsettled(finding: Asked & Pick<TieInFinding, "propertyId">): boolean {
  const { standing, live, propertyId } = finding;
  return standing === "undocumented" && live && propertyId === null && !isOwnerOpen(finding);
}
