import type { LineFile } from "../facts/line-file.ts";
import type { Standing } from "../facts/pairing.ts";
import { isSeenOnRecord } from "../facts/pairing.ts";
import type { EntryFinding, Report, TieInFinding } from "../findings/report.ts";
import { forCount, sayCount, sayParts } from "../say/count.ts";
import { sayList } from "../say/say-list.ts";
import { isOwnerOpen, isUnsettled } from "../tiein/open-question.ts";
import { type Opening, PRESSING, type Reply, replyWith } from "./reply.ts";

/** `4 agree, 1 not seen, 2 undocumented`. */
export function reconcileAnswer(file: LineFile, report: Report): Reply {
  const unready = nothingToCompare(file);
  if (unready !== null) return unready;
  const counts = countsOf(report);
  const told = counts.filter(({ count }) => count > 0);
  if (told.length === 0)
    return replyWith("The record shows no connections, and the camera saw no tie-ins", []);
  const sentence = told.map(({ count, one, many }) => `${count} ${forCount(count, one, many)}`);
  return replyWith(sayParts([sentence.join(", ")]), openings(file, report));
}

function nothingToCompare(file: LineFile): Reply | null {
  const seen = file.observations.length > 0 || file.tieIns.length > 0;
  if (file.entries.length > 0 && seen) return null;
  if (file.entries.length === 0 && seen && file.records.length > 0) return null;
  const lacking =
    file.entries.length === 0
      ? { closes: "Enter what the record shows", where: "record" }
      : { closes: "Enter what the camera saw", where: "camera" };
  return replyWith("Nothing to compare yet", [{ ...lacking, pressing: PRESSING.ordinary }]);
}

interface Counted {
  readonly count: number;
  readonly one: string;
  readonly many: string;
}

/**
 * Matches that wait for a person are counted as that, whatever they would come to; entries that a
 * person explained as explained; tie-ins not on record by whether it is settled whose they are.
 */
function countsOf({ tieIns, entries }: Report): Counted[] {
  const told = tieIns.filter((finding) => !waitsForDecision(finding));
  const ofTieIns = (standing: Standing) =>
    told.filter((finding) => finding.standing === standing).length;
  const left = entries.filter(isOpenEntry);
  const ofEntries = (standing: Standing) =>
    left.filter((finding) => !finding.decided && finding.standing === standing).length;
  const open = told.filter(isOwnerOpen).length;
  const unsettled = told.filter(isUnsettled).length;
  const settled = ofTieIns("undocumented") - open - unsettled;
  return [
    counted(ofTieIns("on-record-and-seen"), "agrees", "agree"),
    counted(tieIns.length - told.length, "to review"),
    counted(ofTieIns("on-record-seen-elsewhere"), "at another place or side"),
    counted(ofEntries("on-record-not-seen"), "not seen"),
    counted(ofEntries("on-record-not-inspected"), "not inspected"),
    counted(ofEntries("on-record-place-unclear"), "with an unclear location"),
    counted(left.filter(({ decided }) => decided).length, "explained"),
    counted(open, "undocumented"),
    counted(unsettled, "shown by tests but not settled"),
    counted(settled, "not on record but settled"),
    counted(ofTieIns("accepted-by-ruling"), "accepted by the authority"),
    counted(ofTieIns("inactive"), "inactive"),
    counted(ofTieIns("not-a-sanitary-branch"), "not a sewer branch", "not sewer branches"),
  ];
}

/** Paired with the record by a proposal that nobody has accepted. */
function waitsForDecision({ decided, standing }: TieInFinding): boolean {
  return isSeenOnRecord(standing) && !decided;
}

function counted(count: number, one: string, many = one): Counted {
  return { count, one, many };
}

/** Entries that go with a tie-in are counted there. */
function isOpenEntry(finding: EntryFinding): boolean {
  return finding.tieInId === null;
}

function openings(file: LineFile, report: Report): Opening[] {
  // What is matched first can leave less to find out.
  return [
    ...alignmentOpening(report),
    ...undecidedOpening(report),
    ...undocumentedOpening(report),
    ...unsettledOpening(report),
    ...unansweredOpening(file, report),
  ];
}

/** Where each kind of work on the record and the camera is done, as paths under the line. */
const WHERE = {
  lineUp: "reconcile/line-up",
  match: "reconcile/match",
  undocumented: "reconcile/undocumented",
} as const;

/** Not on record, and not yet shown whose, or put down to someone without proof. */
function undocumentedOpening({ tieIns }: Report): Opening[] {
  const open = tieIns.filter(isOwnerOpen);
  const unknown = open.filter(({ propertyId }) => propertyId === null);
  const unproven = open.filter(({ propertyId }) => propertyId !== null);
  const labels = (of: readonly TieInFinding[]) => sayList(of.map(({ tieIn }) => tieIn.label));
  const serve = (of: readonly TieInFinding[]) => forCount(of.length, "serves", "serve");
  const closes = [
    ...(unknown.length === 0 ? [] : [`Find out what ${labels(unknown)} ${serve(unknown)}`]),
    ...(unproven.length === 0
      ? []
      : [`Prove which property ${labels(unproven)} ${serve(unproven)}`]),
  ];
  return closes.map((each) => ({
    closes: each,
    where: WHERE.undocumented,
    pressing: PRESSING.holds,
  }));
}

/** Shown by tests; the program puts nothing down to anyone by itself. */
function unsettledOpening({ tieIns }: Report): Opening[] {
  const labels = tieIns.filter(isUnsettled).map(({ tieIn }) => tieIn.label);
  if (labels.length === 0) return [];
  return [
    {
      closes: `Settle the owner of ${sayList(labels)}, as tests have shown`,
      where: WHERE.undocumented,
      pressing: PRESSING.soon,
    },
  ];
}

/** Work is left on whose the undocumented tie-ins are. */
export function isOwnershipOpen({ tieIns }: Pick<Report, "tieIns">): boolean {
  return tieIns.some((finding) => isOwnerOpen(finding) || isUnsettled(finding));
}

/** A shift or stretch that the matches rest on and nobody has accepted; none needs no word. */
export function isLineUpOpen({ alignment }: Pick<Report, "alignment">): boolean {
  if (alignment === null) return false;
  return [alignment, ...alignment.own].some(
    ({ shift, scale, decision }) => decision === null && (shift !== 0 || scale !== 0),
  );
}

function alignmentOpening(report: Report): Opening[] {
  if (!isLineUpOpen(report)) return [];
  return [
    {
      closes: "Accept or reject how the record lines up with the camera",
      where: WHERE.lineUp,
      // It comes before the matches that rest on it; once they are decided, holds come first.
      pressing: report.tieIns.some(waitsForDecision) ? PRESSING.holds : PRESSING.soon,
    },
  ];
}

function undecidedOpening({ tieIns }: Report): Opening[] {
  const count = tieIns.filter(waitsForDecision).length;
  if (count === 0) return [];
  const them = count === 1 ? "the proposed match" : `the ${count} proposed matches`;
  return [{ closes: `Review ${them}`, where: WHERE.match, pressing: PRESSING.holds }];
}

/** Proposed matches to review, or entries without one that nobody has explained. */
export function isMatchOpen(
  file: Pick<LineFile, "entries">,
  report: Pick<Report, "proposals" | "entries">,
): boolean {
  return report.proposals.length > 0 || unexplained(file, report).length > 0;
}

/** Entries that no tie-in matches and nobody has explained. */
function unexplained(
  file: Pick<LineFile, "entries">,
  { entries }: Pick<Report, "entries">,
): EntryFinding[] {
  return entries.filter(
    (finding) =>
      isOpenEntry(finding) &&
      file.entries.some(({ id, explanation }) => id === finding.entryId && explanation === ""),
  );
}

function unansweredOpening(file: LineFile, report: Report): Opening[] {
  const open = unexplained(file, report);
  const labels = open.map(
    ({ entryId }) => file.entries.find(({ id }) => id === entryId)?.label ?? "",
  );
  if (open.length === 0) return [];
  const words = sayCount(open.length, "record entry", "record entries");
  return [
    {
      closes: `Find or explain ${words} with no matching tie-in: ${sayList(labels.map((label) => `“${label}”`))}`,
      where: WHERE.match,
      pressing: PRESSING.stalls,
    },
  ];
}
