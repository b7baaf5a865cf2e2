import type { TieInFinding } from "#lib/domain/findings/report.ts";
import { isOwnerOpen, isUnsettled } from "#lib/domain/tiein/open-question.ts";
import { counted, listed } from "../../names.ts";

/** A tie-in of which the record does not say what it is or whose. */
export function needsEvidence({ standing, tieIn }: TieInFinding): boolean {
  return (
    standing === "undocumented" ||
    standing === "accepted-by-ruling" ||
    (tieIn.settledOn !== null && standing !== "on-record-and-seen")
  );
}

/** Nothing is left to find out: settled by a person, and not against what tests show. */
export function isAnswered(finding: TieInFinding): boolean {
  return finding.tieIn.settledOn !== null && !isOwnerOpen(finding) && !isUnsettled(finding);
}

/** `T2 and T6 have no proven owner; tests show the owner of T4`. */
export function undocumentedWords(tieIns: readonly TieInFinding[]): string {
  const labels = (of: readonly TieInFinding[]) => listed(of.map(({ tieIn }) => tieIn.label));
  const open = tieIns.filter(isOwnerOpen);
  const shown = tieIns.filter(isUnsettled);
  const words = [
    open.length === 0
      ? ""
      : `${labels(open)} ${open.length === 1 ? "has" : "have"} no proven owner`,
    shown.length === 0 ? "" : `tests show the owner of ${labels(shown)}; settle it below`,
  ].filter((each) => each !== "");
  if (words.length > 0) return words.join("; ");
  const settled = tieIns.filter(needsEvidence).length;
  return settled === 0
    ? "Every tie-in is on record"
    : `${counted(settled, "tie-in")} not on record, all settled`;
}
