import type { TieInFinding } from "../findings/report.ts";

/** Tie-ins by station, from the main upstream; those without one last. */
export function upTheLine(findings: readonly TieInFinding[]): TieInFinding[] {
  const last = Number.MAX_SAFE_INTEGER;
  return findings.toSorted((a, b) => (a.station ?? last) - (b.station ?? last));
}
