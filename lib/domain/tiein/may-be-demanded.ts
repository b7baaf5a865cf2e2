import { isSeenOnRecord } from "../facts/pairing.ts";
import type { Report, TieInFinding } from "../findings/report.ts";
import { bearsDemand } from "./evidence.ts";

/** Whether money may be asked for on the strength of what is known of this tie-in. */
export function mayBeDemanded(finding: TieInFinding, report: Pick<Report, "holds">): boolean {
  const held = report.holds.some(
    (hold) =>
      hold.waiver === null && hold.stops.includes("demand") && hold.subjectId === finding.tieIn.id,
  );
  if (held) return false;
  const onRecord = finding.decided && isSeenOnRecord(finding.standing);
  return onRecord || bearsDemand(finding.level, finding.tieIn.ownerAccepted);
}
