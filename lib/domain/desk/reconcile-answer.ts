import type { LineFile } from "../facts/line-file.ts";
import type { Standing } from "../facts/pairing.ts";
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
    return replyWith("The record shows no connection, and the camera saw no tie-in", []);
  const sentence = told.map(({ count, one, many }) => `${count} ${forCount(count, one, many)}`);
  return replyWith(sayParts([sentence.join(", ")]), openings(file, report));
}

function nothingToCompare(file: LineFile): Reply | null {
  const seen = file.observations.length > 0 || file.tieIns.length > 0;
  if (file.entries.length > 0 && seen) return null;
  if (file.entries.length === 0 && seen && file.records.length > 0) return null;
  const lacking =
    file.entries.length === 0 ? "Enter what the record shows" : "Enter what the camera saw";
  return replyWith("There are not two sides to compare yet", [
    { closes: lacking, pressing: PRESSING.ordinary },
  ]);
}

interface Counted {
  readonly count: number;
  readonly one: string;
  readonly many: string;
}

/**
 * Pairings that wait for a person are counted as that, whatever they would come to; entries that a
 * person explained as explained; tie-ins on no record by whether it is settled whose they are.
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
    counted(tieIns.length - told.length, "waits for a decision", "wait for a decision"),
    counted(ofTieIns("on-record-seen-elsewhere"), "seen elsewhere"),
    counted(ofEntries("on-record-not-seen"), "not seen"),
    counted(ofEntries("on-record-not-inspected"), "not inspected"),
    counted(
      ofEntries("on-record-place-unclear"),
      "with its place not clear",
      "with their place not clear",
    ),
    counted(left.filter(({ decided }) => decided).length, "explained"),
    counted(open, "undocumented"),
    counted(unsettled, "shown by tests but not settled"),
    counted(settled, "not on record but settled"),
    counted(ofTieIns("accepted-by-ruling"), "accepted by the authority"),
    counted(ofTieIns("inactive"), "inactive"),
    counted(ofTieIns("not-a-sanitary-branch"), "not a sanitary branch", "not sanitary branches"),
  ];
}

/** Paired with the record by a proposal that nobody has accepted. */
function waitsForDecision({ decided, standing }: TieInFinding): boolean {
  const isPaired = standing === "on-record-and-seen" || standing === "on-record-seen-elsewhere";
  return isPaired && !decided;
}

function counted(count: number, one: string, many = one): Counted {
  return { count, one, many };
}

/** Entries that go with a tie-in are counted there. */
function isOpenEntry(finding: EntryFinding): boolean {
  return finding.tieInId === null;
}

function openings(file: LineFile, report: Report): Opening[] {
  return [
    ...undocumentedOpening(report),
    ...unsettledOpening(report),
    ...alignmentOpening(report),
    ...undecidedOpening(report),
    ...unansweredOpening(file, report),
  ];
}

/** On no record, and not yet shown whose, or put down to somebody without proof. */
function undocumentedOpening({ tieIns }: Report): Opening[] {
  const open = tieIns.filter(isOwnerOpen);
  const unknown = open.filter(({ propertyId }) => propertyId === null);
  const unproven = open.filter(({ propertyId }) => propertyId !== null);
  const labels = (of: readonly TieInFinding[]) => sayList(of.map(({ tieIn }) => tieIn.label));
  const closes = [
    ...(unknown.length === 0
      ? []
      : [`Find out what ${labels(unknown)} ${forCount(unknown.length, "serves", "serve")}`]),
    ...(unproven.length === 0
      ? []
      : [`Prove whose ${labels(unproven)} ${forCount(unproven.length, "is", "are")}`]),
  ];
  return closes.map((each) => ({ closes: each, pressing: PRESSING.holds }));
}

/** Shown by tests; the program puts nothing down to anybody by itself. */
function unsettledOpening({ tieIns }: Report): Opening[] {
  const labels = tieIns.filter(isUnsettled).map(({ tieIn }) => tieIn.label);
  if (labels.length === 0) return [];
  const is = forCount(labels.length, "is", "are");
  return [
    {
      closes: `Settle whose ${sayList(labels)} ${is}, as tests have shown`,
      pressing: PRESSING.soon,
    },
  ];
}

/** A shift or stretch that the pairs rest on and nobody has accepted; none needs no word. */
function alignmentOpening({ alignment }: Report): Opening[] {
  if (alignment === null) return [];
  const open = [alignment, ...alignment.own].some(
    ({ shift, scale, decision }) => decision === null && (shift !== 0 || scale !== 0),
  );
  if (!open) return [];
  return [
    { closes: "Accept or refuse how the record lines up with the camera", pressing: PRESSING.soon },
  ];
}

function undecidedOpening({ tieIns }: Report): Opening[] {
  const count = tieIns.filter(waitsForDecision).length;
  if (count === 0) return [];
  const them =
    count === 1 ? "the pairing that is proposed" : `the ${count} pairings that are proposed`;
  return [{ closes: `Accept, change or refuse ${them}`, pressing: PRESSING.soon }];
}

/** Entries that no tie-in answers to and nobody has explained. */
function unansweredOpening(file: LineFile, { entries }: Report): Opening[] {
  const open = entries.filter(
    (finding) =>
      isOpenEntry(finding) &&
      file.entries.some(({ id, explanation }) => id === finding.entryId && explanation === ""),
  );
  const labels = open.map(
    ({ entryId }) => file.entries.find(({ id }) => id === entryId)?.label ?? "",
  );
  if (open.length === 0) return [];
  const words = `${sayCount(open.length, "entry", "entries")} of the record`;
  return [
    {
      closes: `Find or explain ${words} that no tie-in answers to: ${sayList(labels.map((label) => `“${label}”`))}`,
      pressing: PRESSING.stalls,
    },
  ];
}
