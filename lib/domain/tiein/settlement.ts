import type { TieInKind } from "../facts/line.ts";
import type { TieInTest } from "../facts/test.ts";
import type { TieInFinding } from "../findings/report.ts";
import { evidenceLevel } from "./evidence.ts";
import { isUnsettled } from "./open-question.ts";

/** What a person would settle a tie-in as, and what shows it. */
interface Settlement {
  readonly kind: TieInKind;
  readonly propertyId: string;
  readonly shownBy: "digging" | "dye";
}

/**
 * What tests have proven of a tie-in that nobody has settled yet, for a person to confirm; null where they
 * prove nothing or it is settled.
 */
export function provenSettlement(
  finding: TieInFinding,
  tests: readonly TieInTest[],
): Settlement | null {
  if (!isUnsettled(finding)) return null;
  const { tieIn } = finding;
  const { level, propertyId } = evidenceLevel(tieIn, tests);
  if (propertyId === null) return null;
  const kind = tieIn.kind === "unknown" ? "building" : tieIn.kind;
  return { kind, propertyId, shownBy: level === 6 ? "digging" : "dye" };
}
