import { notSaidBy, type PathStep, pathSteps, type Withholding } from "../consent/refusal-steps.ts";
import { type ConsentRow, consentTable } from "../consent/table.ts";
import type { ConsentKind } from "../facts/consent.ts";
import { LETTERS } from "../facts/letter-kind.ts";
import type { LineFile } from "../facts/line-file.ts";
import type { ScopeItem } from "../facts/scope.ts";
import type { Share } from "../findings/outcome.ts";
import type { Report } from "../findings/report.ts";
import { type Cft, formatFeet, plainFeet } from "../length/station.ts";
import { consentsAsked } from "../notices/asked.ts";
import { type Chase, chaseList } from "../notices/told.ts";
import { waitingReplies } from "../party/reply.ts";
import { sayProperty } from "../party/say.ts";
import { agreedScope, scopeInForce } from "../sharing/scope-in-force.ts";
import { latestSplit } from "../split/latest-split.ts";
import { bearsDemand } from "../tiein/evidence.ts";
import type { Day } from "../time/day.ts";

/** What one property keeps back: a no, an objection, or no answer past the day that was asked for. */
interface Withheld {
  readonly propertyId: string;
  readonly place: string;
  /** A spoken no outranks an objection, and that a silence. */
  readonly how: Withholding;
  readonly kinds: readonly ConsentKind[];
  readonly partyIds: readonly string[];
  /** The day from which the next steps are counted: of the no, or the day the answer was due. */
  readonly since: Day;
}

/** What becomes of one piece of the work without them. */
export interface WithoutThem {
  readonly itemId: string;
  readonly title: string;
  readonly can: "all" | "part" | "none";
  /** The stretches that can go ahead, for `part`. */
  readonly free: readonly { readonly from: Cft; readonly to: Cft }[];
  readonly sentence: string;
}

export interface RefusalPath {
  readonly withheld: Withheld;
  readonly work: readonly WithoutThem[];
  /** Titles of options under which they would have a line of their own. */
  readonly ownLine: readonly string[];
  /** Tests, the record as accepted, or their own word show that they are on the line. */
  readonly shown: boolean;
  readonly steps: readonly PathStep[];
  /** What the authority’s data leave open. */
  readonly notSaid: readonly string[];
}

/** What is so of every piece of the work alike, in a sentence; null where they differ, or for one alone. */
export function sameForAll(work: readonly WithoutThem[]): string | null {
  const [first, ...others] = work;
  if (first === undefined || others.length === 0 || first.can === "part") return null;
  if (others.some(({ sentence }) => sentence !== first.sentence)) return null;
  if (first.can === "all") return "All of it can proceed without them.";
  return first.sentence.replace(/^Not without them/, "None of it without them");
}

/** For each property that refuses or stays silent: what can go ahead, what cannot, and what is lawful next. */
export function refusalPaths(file: LineFile, report: Report): RefusalPath[] {
  return withheldOn(file, report).map((withheld) => ({
    withheld,
    work: scopeInForce(file).map((item) => withoutThem(file, report, { withheld, item })),
    ownLine: ownLineOptions(file, withheld.propertyId),
    shown: isShown(report, withheld.propertyId),
    steps: pathSteps(file, withheld),
    notSaid: notSaidBy(file),
  }));
}

/** Money is asked only of those whose tie-in is shown to be theirs. */
function isShown({ tieIns }: Pick<Report, "tieIns">, propertyId: string): boolean {
  return tieIns.some(
    ({ propertyId: whose, standing, decided, level, tieIn }) =>
      whose === propertyId &&
      (bearsDemand(level, tieIn.ownerAccepted) || (decided && standing !== "undocumented")),
  );
}

const ASKED: readonly ConsentKind[] = ["enter", "dig", "pay", "agreement-signed"];

/**
 * Who keeps what back today. An objection counts as a no until somebody has dealt with it. A letter
 * that was never answered, or whose objection was dealt with and nothing said since, counts from the
 * day that it named.
 */
function withheldOn(file: LineFile, report: Report): Withheld[] {
  const late = chaseList(file, report.today).filter(
    ({ reason }) => reason === "reply-late" || reason === "not-settled",
  );
  return consentTable(file, report).flatMap(
    (row): Withheld[] =>
      refusedAt(file, row) ?? objectedAt(file, row) ?? silentAt(file, row, late) ?? [],
  );
}

function refusedAt(file: LineFile, row: ConsentRow): Withheld[] | null {
  const refused = keptBack(row, ["refused", "withdrawn"]);
  if (refused.kinds.length === 0) return null;
  const { propertyId } = row;
  const place = sayProperty(file, propertyId);
  return [{ propertyId, place, ...refused, how: "refused", since: dayOfNo(file, row, refused) }];
}

/** Somebody may object to a letter that asks for nothing yet: until then nothing is counted on. */
const EVERYTHING: readonly ConsentKind[] = ["enter", "dig", "pay"];

/** An objection by one who signs for the property, to any letter about it, that still waits. */
function objectedAt(file: LineFile, row: ConsentRow): Withheld[] | null {
  const objections = waitingReplies(file).flatMap((reply) => {
    const notice = file.notices.find(({ id }) => id === reply.noticeId);
    const signs = row.signers.some(({ partyId }) => partyId === notice?.partyId);
    if (reply.kind !== "disagrees" || notice === undefined || !signs) return [];
    return notice.propertyId === row.propertyId ? [{ reply, notice }] : [];
  });
  const [first] = objections.map(({ reply }) => reply.receivedOn).toSorted();
  if (first === undefined) return null;
  const asked = objections.flatMap(({ notice }) => [
    ...(LETTERS[notice.kind].objectedTo ?? consentsAsked(notice.kind)),
  ]);
  const needed = ASKED.filter((kind) => row.cells[kind].needed && !row.cells[kind].inHand);
  const open = needed.length > 0 ? needed : EVERYTHING;
  const kinds = asked.length > 0 ? ASKED.filter((kind) => asked.includes(kind)) : open;
  const { propertyId } = row;
  const partyIds = [...new Set(objections.map(({ notice }) => notice.partyId))];
  const place = sayProperty(file, propertyId);
  return [{ propertyId, place, how: "objected", kinds, partyIds, since: first }];
}

function silentAt(file: LineFile, row: ConsentRow, chases: readonly Chase[]): Withheld[] | null {
  const { propertyId, signers } = row;
  const late = chases.filter(
    ({ partyId, noticeId }) =>
      signers.some((signer) => signer.partyId === partyId) &&
      file.notices.find(({ id }) => id === noticeId)?.propertyId === propertyId,
  );
  const silent = keptBack(row, [null, "asked"]);
  const partyIds = silent.partyIds.filter((id) => late.some(({ partyId }) => partyId === id));
  const [since] = late.map(({ since: day }) => day).toSorted();
  if (since === undefined || silent.kinds.length === 0 || partyIds.length === 0) return null;
  const place = sayProperty(file, propertyId);
  return [{ propertyId, place, how: "silent", kinds: silent.kinds, partyIds, since }];
}

interface Kept {
  readonly kinds: readonly ConsentKind[];
  readonly partyIds: readonly string[];
}

/** The consents that are needed and not in hand, with who of the signers stands so. */
function keptBack(row: ConsentRow, standings: readonly (string | null)[]): Kept {
  const cells = ASKED.flatMap((kind) => {
    const { needed, inHand, open } = row.cells[kind];
    const by = open.filter(({ standing }) => standings.includes(standing));
    const spoken = standings.includes("refused");
    return by.length > 0 && !inHand && (needed || spoken) ? [{ kind, by }] : [];
  });
  return {
    kinds: cells.map(({ kind }) => kind),
    partyIds: [...new Set(cells.flatMap(({ by }) => by.map(({ partyId }) => partyId)))],
  };
}

function dayOfNo(file: LineFile, { propertyId }: ConsentRow, { kinds, partyIds }: Kept): Day {
  const days = file.consents
    .filter(
      (consent) =>
        consent.propertyId === propertyId &&
        partyIds.includes(consent.partyId) &&
        kinds.includes(consent.kind) &&
        (consent.state === "refused" || consent.state === "withdrawn"),
    )
    .map(({ stateOn }) => stateOn)
    .toSorted();
  return days.at(-1) ?? "";
}

interface Asked {
  readonly withheld: Withheld;
  readonly item: ScopeItem;
}

/**
 * A piece of work can go ahead without them where it is not on their lot or branch (if they keep
 * entry or digging back), and where no part of its price is theirs (if they keep their money back).
 * A stretch can go ahead in part.
 */
function withoutThem(file: LineFile, report: Report, asked: Asked): WithoutThem {
  const { withheld, item } = asked;
  const land = withheld.kinds.some((kind) => kind === "enter" || kind === "dig");
  const money = withheld.kinds.includes("pay");
  const lots = land ? onTheirLot(file, asked) : [];
  const priced = money ? pricedOnThem(file, report, asked) : [];
  const reasons = [
    ...(lots.length > 0 ? ["it is on their lot or branch, which needs their consent"] : []),
    ...(priced.length > 0 ? [priceWords(file, item)] : []),
  ];
  const known = { itemId: item.id, title: item.title };
  if (reasons.length === 0)
    return { ...known, can: "all", free: [], sentence: "It can proceed without them." };
  const free = freeOf(item, [...lots, ...priced]);
  if (free.length === 0)
    return {
      ...known,
      can: "none",
      free,
      sentence: `Not without them: ${reasons.join(", and ")}.`,
    };
  const where = free.map(({ from, to }) => `${plainFeet(from)} to ${formatFeet(to)}`).join(", ");
  return {
    ...known,
    can: "part",
    free,
    sentence: `${where} can proceed; the rest needs their consent: ${reasons.join(", and ")}.`,
  };
}

/** A stretch of the trunk, or all of an item that is none. */
type Bar = { readonly from: Cft; readonly to: Cft } | "all";

function onTheirLot(file: LineFile, { withheld, item }: Asked): Bar[] {
  if (item.place === "branch") {
    const tieIn = file.tieIns.find(({ id }) => id === item.tieInId);
    return tieIn?.propertyId === withheld.propertyId ? ["all"] : [];
  }
  const span = spanOf(item);
  if (span === null) return [];
  return file.crossings
    .filter(({ propertyId }) => propertyId === withheld.propertyId)
    .filter(({ from, to }) => span.from <= to && span.to >= from)
    .map(({ from, to }) => ({ from, to }));
}

function priceWords(file: LineFile, { payerId }: ScopeItem): string {
  return payerId === null && latestSplit(file) === null
    ? "no split is chosen, so part of the cost may be theirs"
    : "part of the cost is theirs; decide first who covers it";
}

/** Until a rule of the split is chosen, part of anything that all share may be theirs. */
function pricedOnThem(file: LineFile, report: Report, { withheld, item }: Asked): Bar[] {
  if (item.payerId !== null) return item.payerId === withheld.propertyId ? ["all"] : [];
  if (latestSplit(file) === null) return ["all"];
  const share = shareOf(file, report, withheld.propertyId);
  const steps = share?.steps.filter(({ itemId }) => itemId === item.id) ?? [];
  return steps.map(({ piece: { from, to } }) =>
    from === null || to === null || from === to ? "all" : { from, to },
  );
}

function shareOf(file: LineFile, report: Report, propertyId: string): Share | null {
  const rule = latestSplit(file)?.rule;
  const outcome = report.splits.find(({ choice }) => choice.rule === rule);
  return outcome?.shares.find((share) => share.propertyId === propertyId) ?? null;
}

function spanOf({ place, from, to }: ScopeItem): { from: Cft; to: Cft } | null {
  if (from === null || (place !== "point" && place !== "stretch")) return null;
  const other = to ?? from;
  return { from: Math.min(from, other), to: Math.max(from, other) };
}

/** What is left of a stretch between the bars; nothing of any other piece of work. */
function freeOf(item: ScopeItem, bars: readonly Bar[]): { from: Cft; to: Cft }[] {
  const span = spanOf(item);
  if (span === null || span.from === span.to || bars.includes("all")) return [];
  const stretches = bars.filter((bar) => bar !== "all").toSorted((a, b) => a.from - b.from);
  const free: { from: Cft; to: Cft }[] = [];
  let start = span.from;
  for (const { from, to } of stretches) {
    if (from > start) free.push({ from: start, to: Math.min(from, span.to) });
    start = Math.max(start, to);
  }
  return start < span.to ? [...free, { from: start, to: span.to }] : free;
}

/** Options of separate lines under which they alone pay for a piece: a line of their own. */
function ownLineOptions(file: LineFile, propertyId: string): string[] {
  return file.options
    .filter(
      ({ id, kind }) =>
        kind === "separate-lines" &&
        agreedScope(file).some((item) => item.optionId === id && item.payerId === propertyId),
    )
    .map(({ title }) => title);
}
