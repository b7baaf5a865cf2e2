import type { LineFile } from "../facts/line-file.ts";
import type { Report } from "../findings/report.ts";
import { streetOf } from "../party/stakeholders.ts";
import { type ConsentRow, consentTable } from "./table.ts";

/**
 * Every lot on which the work lies and whose consent is not in hand: to dig where it is dug, else to
 * come in. Who agreed to digging lets the crew in for it, unless they said no to that. A lot that the
 * line only crosses is open to the work where its easement is recorded.
 */
export function landWithoutConsent(
  file: LineFile,
  { tieIns }: Pick<Report, "tieIns">,
): readonly string[] {
  return consentTable(file, { splits: [], tieIns }).flatMap(({ propertyId, cells }) => {
    const kind = wantedKind(cells);
    if (kind === null || hasEasement(file, propertyId)) return [];
    const property = file.properties.find(({ id }) => id === propertyId);
    const where = property === undefined ? "a lot" : streetOf(property.address);
    return [`consent to ${kind === "dig" ? "dig at" : "enter"} ${where} is not on file`];
  });
}

function wantedKind({ dig, enter }: ConsentRow["cells"]): "dig" | "enter" | null {
  if (dig.needed && !dig.inHand) return "dig";
  if (!enter.needed || enter.inHand) return null;
  const saidNo = enter.open.some(
    ({ standing }) => standing === "refused" || standing === "withdrawn",
  );
  return dig.needed && !saidNo ? null : "enter";
}

/** Every stretch over which the line crosses the lot has its easement recorded. */
function hasEasement({ crossings, properties }: LineFile, propertyId: string): boolean {
  const over = crossings.filter((crossing) => crossing.propertyId === propertyId);
  const isCrossed = properties.some(({ id, stake }) => id === propertyId && stake === "crossed");
  return isCrossed && over.length > 0 && over.every(({ easement }) => easement === "recorded");
}
