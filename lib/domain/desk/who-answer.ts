import type { LineFile } from "../facts/line-file.ts";
import type { Property } from "../facts/party.ts";
import type { Report, TieInFinding } from "../findings/report.ts";
import { sayProperty } from "../party/say.ts";
import { signersFor } from "../party/signers.ts";
import { forCount, sayCount, sayParts } from "../say/count.ts";
import { sayList } from "../say/say-list.ts";
import { isUnsettled } from "../tiein/open-question.ts";
import { type Opening, PRESSING, type Reply, replyWith } from "./reply.ts";

/** `6 properties, 9 parties; 1 tie-in belongs to nobody yet`. */
export function whoAnswer(file: LineFile, report: Report): Reply {
  const properties = onTheLine(file);
  if (properties.length === 0)
    return replyWith("No one entered yet", [
      { closes: "Enter the properties on the line and who owns them", pressing: PRESSING.stalls },
    ]);
  const nobodys = ownerless(report);
  const ownerlessLots = properties.filter(({ id }) => signersFor(file, id).length === 0);
  const sentence = sayParts([
    `${sayCount(properties.length, "property", "properties")}, ${sayCount(file.parties.length, "party", "parties")}`,
    nobodys.length === 0 ? "" : tieInWords(nobodys),
    ownerlessLots.length === 0 ? "" : ownerWords(ownerlessLots),
  ]);
  return replyWith(sentence, openings(file, nobodys, ownerlessLots));
}

/** Properties with a stake in the pipe; neighbors are only told. */
export function onTheLine(file: Pick<LineFile, "properties">): Property[] {
  return file.properties.filter(({ stake }) => stake !== "neighbour");
}

/** Tie-ins that carry sewage, as far as is known, and of which nobody knows whose they are. */
function ownerless(report: Pick<Report, "tieIns">): TieInFinding[] {
  return report.tieIns.filter(
    (finding) => finding.live && finding.propertyId === null && !isUnsettled(finding),
  );
}

function tieInWords(nobodys: readonly TieInFinding[]): string {
  return `${sayCount(nobodys.length, "tie-in")} ${forCount(nobodys.length, "belongs", "belong")} to no one yet`;
}

function ownerWords(lots: readonly Property[]): string {
  const words = `${sayCount(lots.length, "property", "properties")}`;
  return `${words} ${forCount(lots.length, "has", "have")} no owner entered`;
}

function openings(
  file: LineFile,
  nobodys: readonly TieInFinding[],
  lots: readonly Property[],
): Opening[] {
  const open: Opening[] = [];
  if (nobodys.length > 0) {
    const labels = sayList(nobodys.map(({ tieIn }) => tieIn.label));
    const words = nobodys.length === 1 ? "it is" : "they are";
    open.push({
      closes: `Find out who owns ${labels}: ask and test, until it is proven or the owner accepts that ${words} theirs`,
      where: "reconcile/undocumented",
      pressing: PRESSING.holds,
    });
  }
  if (lots.length > 0) {
    const names = sayList(lots.map(({ id }) => sayProperty(file, id)));
    open.push({ closes: `Enter who owns ${names}`, pressing: PRESSING.stalls });
  }
  return open;
}
