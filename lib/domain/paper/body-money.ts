import { consentStanding } from "../consent/standing.ts";
import type { PermitState } from "../facts/permit.ts";
import type { TieInFinding } from "../findings/report.ts";
import { heldAt, type Owed, owedBy } from "../ledger/owed.ts";
import { LEDGER_WORDS } from "../ledger/words.ts";
import type { Cents } from "../money/cents.ts";
import { formatCents } from "../money/format-cents.ts";
import { permitStateOf } from "../permit/steps.ts";
import { citationOf, sourceOf } from "../responsibility/citation.ts";
import { workStanding } from "./body-work.ts";
import {
  heading,
  heldStretches,
  lead,
  list,
  paragraph,
  replyBy,
  table,
  whereIs,
  workLines,
  workTable,
  workTitle,
} from "./common.ts";
import { knownOwner, type LetterFacts, otherSharers, pipeOf } from "./facts.ts";
import type { LetterBlock } from "./letter.ts";
import { letterStrip } from "./letter-strip.ts";
import { alternativeRows, sumBlocks } from "./sum.ts";

/** Rule and reason, who answers where, the work, the reader's share and its sum, what is left out. */
export function splitBody(facts: LetterFacts): LetterBlock[] {
  const { words, place, share } = facts;
  const by = replyBy(facts);
  return [
    ...lead(share === null ? null : words.lead.split(place, formatCents(share.amount), by)),
    paragraph(words.split.opening),
    ...shareBlocks(facts),
    letterStrip(facts, "yours"),
    heading(words.split.rule),
    ...ruleBlocks(facts),
    heading(words.split.steps),
    ...sumBlocks(facts, totalLine(facts)),
    ...(share === null ? [heading(words.split.work), ...workTable(facts)] : []),
    ...answersBlocks(facts),
    ...alternativeBlocks(facts),
    heading(words.split.others),
    paragraph(othersLine(facts)),
    heading(words.split.excluded),
    ...list(excludedLines(facts)),
    heading(words.split.payment),
    ...list(paymentLines(facts)),
  ];
}

/** What all of it costs, and that the enclosed statement lists it. */
function totalLine({ split, words }: LetterFacts): string {
  if (split === null) return "";
  return `${words.split.stepsOf(formatCents(split.total))} ${words.split.enclosed}`;
}

/** How a share would be paid, as far as the office said; and that this letter makes nothing due. */
function paymentLines({ office, words }: LetterFacts): string[] {
  const { payDays, depositPercent } = office;
  return [
    ...(payDays === null ? [] : [words.split.payDays(payDays)]),
    ...(depositPercent === null ? [] : [words.split.deposit(depositPercent)]),
    words.split.ifNo,
  ];
}

function shareBlocks({ words, place, share }: LetterFacts): LetterBlock[] {
  if (share === null) return [paragraph(words.split.noShare(place))];
  const amount = amountBlock(words.split.amount(place), share.amount);
  if (share.recoverable === 0) return [amount];
  return [amount, paragraph(words.split.carried(formatCents(share.recoverable)))];
}

function amountBlock(words: string, amount: Cents): LetterBlock {
  return { kind: "amount", words, amount: formatCents(amount) };
}

function ruleBlocks({ words, split }: LetterFacts): LetterBlock[] {
  if (split === null) return [paragraph(words.split.nothingWritten)];
  const rule = words.rule[split.rule];
  const reason = split.reason === "" ? "" : words.split.reason(split.reason);
  return [paragraph(`${words.split.ruleLine(rule.title, rule.sentence)} ${reason}`.trim())];
}

/** A rule's source in the reader's language; an agreement stands by its name. */
function citedWords({ file, words }: LetterFacts, citation: string): string {
  const rule = file.authority?.rules.find((each) => citationOf(each) === citation);
  return rule === undefined ? citation : words.split.cited(sourceOf(rule), words.day(rule.asOf));
}

function answersBlocks(facts: LetterFacts): LetterBlock[] {
  const { report, words } = facts;
  const rows = heldStretches(report.reaches).map(({ from, to, holder, citation }) => [
    words.stretch(from, to),
    words.holder[holder],
    citation === "" ? words.split.nothingWritten : citedWords(facts, citation),
  ]);
  const [where = "", who = "", source = ""] = rows[0] ?? [];
  if (rows.length === 0) return [];
  if (rows.length === 1)
    return [heading(words.split.answers), paragraph(words.split.answersLine(where, who, source))];
  return [heading(words.split.answers), ...table(words.split.answersHead, rows)];
}

function othersLine(facts: LetterFacts): string {
  const others = otherSharers(facts);
  return others.length === 0
    ? facts.words.split.noOthers
    : facts.words.split.othersLine(facts.words.list(others));
}

/** What the amounts leave out, in the reader’s language. */
function excludedLines(facts: LetterFacts): string[] {
  const { split } = facts.words;
  return [...excludedParts(facts), split.excludedHidden, split.excludedCause];
}

/** What the amounts leave out besides what is discovered later. */
export function excludedParts({ report, words }: LetterFacts): string[] {
  const held = heldStretches(report.reaches);
  const where = (holder: "authority" | "unclear") =>
    held.filter((each) => each.holder === holder).map(({ from, to }) => words.stretch(from, to));
  const unknown = report.tieIns.filter((each) => each.live && knownOwner(each) === null);
  return [
    ...where("authority").map(words.split.excludedAuthority),
    ...where("unclear").map(words.split.excludedUnclear),
    ...(unknown.length === 0
      ? []
      : [words.split.excludedUnknown(words.list(unknown.map(({ tieIn }) => tieIn.label)))]),
  ];
}

function alternativeBlocks(facts: LetterFacts): LetterBlock[] {
  const rows = alternativeRows(facts);
  if (rows.length === 0) return [];
  const { split } = facts.words;
  return [heading(split.alternatives), ...table(split.alternativesHead, rows, { numeric: [1] })];
}

/** Amount, what it rests on, day to pay by, and the sum behind it. */
export function demandBody(facts: LetterFacts): LetterBlock[] {
  const { words, place, notice } = facts;
  return [
    ...lead(words.lead.demand(place, formatCents(demanded(facts)), replyBy(facts))),
    paragraph(words.demand.opening(place)),
    ...owedBlocks(facts),
    ...(notice.replyBy === null ? [paragraph(words.demand.dueOpen)] : []),
    ...payToBlocks(facts),
    paragraph(
      notice.replyBy === null
        ? words.demand.disputeOpen
        : words.demand.dispute(words.weekday(notice.replyBy)),
    ),
    heading(words.demand.basis),
    ...list([...versionLines(facts), ...evidenceLines(facts), consentLine(facts)]),
    heading(words.demand.enclosed),
    ...list([...enclosedAccount(facts), ...words.demand.enclosedLines]),
    heading(words.split.steps),
    ...sumBlocks(facts),
    heading(words.split.work),
    ...workTable(facts),
    letterStrip(facts, "yours"),
  ];
}

/** To whom and how to pay; nothing where the office has not said. */
export function payToBlocks({ office, words }: LetterFacts): LetterBlock[] {
  if (office.payee === "") return [];
  const methods = office.payMethods.map((method) => words.demand.method[method]);
  const last = methods.at(-1) ?? "";
  const named =
    methods.length < 2 ? last : `${methods.slice(0, -1).join(", ")} ${words.demand.or} ${last}`;
  return [paragraph(words.demand.payTo(office.payee, named))];
}

/** What the reader is asked for: what is open on their account, or their share before an invoice. */
export function demanded(facts: LetterFacts): Cents {
  return owedOf(facts)?.open ?? (facts.share?.amount ?? 0) - heldFor(facts);
}

/** A deposit that came in before anything was invoiced. */
function heldFor({ file, property }: LetterFacts): Cents {
  return property === null ? 0 : heldAt(file, property.id);
}

function owedOf({ file, party, property, report }: LetterFacts): Owed | null {
  if (property === null) return null;
  return owedBy(file, { partyId: party.id, propertyId: property.id }, report.today);
}

function owedBlocks(facts: LetterFacts): LetterBlock[] {
  const { words, place, notice } = facts;
  const owed = owedOf(facts);
  const { demand } = LEDGER_WORDS[notice.language];
  const held = heldFor(facts);
  if (owed === null && held === 0) return [amountBlock(words.split.amount(place), demanded(facts))];
  if (owed === null)
    return [
      amountBlock(demand.amount(place), demanded(facts)),
      ...list([demand.deposit(formatCents(facts.share?.amount ?? 0), formatCents(held))]),
    ];
  const settled = formatCents(owed.settled);
  const { overdueSince } = owed;
  return [
    amountBlock(demand.amount(place), owed.open),
    ...list([
      ...(owed.settled === 0 ? [] : [demand.state(formatCents(owed.invoiced), settled)]),
      ...(overdueSince === null ? [] : [demand.oldest(words.day(overdueSince))]),
    ]),
  ];
}

function enclosedAccount(facts: LetterFacts): string[] {
  return owedOf(facts) === null ? [] : [LEDGER_WORDS[facts.notice.language].demand.enclosed];
}

function versionLines({ words, split }: LetterFacts): string[] {
  if (split === null) return [];
  const rule = words.rule[split.rule];
  return [
    words.demand.version(split.number, words.day(split.chosenOn)),
    words.split.ruleLine(rule.title, rule.sentence),
  ];
}

function evidenceLines({ own, words }: LetterFacts): string[] {
  return own.map((finding) => {
    const { demand } = words;
    return demand.tieIn(finding.tieIn.label, demand[demandReason(finding)]);
  });
}

function demandReason({ tieIn, standing }: TieInFinding) {
  if (tieIn.ownerAccepted) return "reasonAccepted";
  if (standing === "accepted-by-ruling") return "reasonRuled";
  return standing === "undocumented" ? "reasonTested" : "reasonRecord";
}

function consentLine({ file, party, property, share, words }: LetterFacts): string {
  const given = file.consents.find(
    (consent) =>
      consent.kind === "pay" &&
      consentStanding(file, consent) === "current" &&
      consent.partyId === party.id &&
      consent.propertyId === property?.id &&
      consent.amount === share?.amount,
  );
  return given
    ? words.demand.agreed(words.day(given.stateOn), formatCents(given.amount ?? 0))
    : words.demand.notAgreed;
}

/** What was done and what it came to; papers, warranty, and who is responsible from now on. */
export function doneBody(facts: LetterFacts): LetterBlock[] {
  const { words } = facts;
  const standing = workStanding(facts);
  const opening = {
    final: words.done.opening,
    dug: words.done.openingDug,
    open: hasPermit(facts) ? words.done.openingOpen : words.done.openingNoPermit,
  }[standing];
  const costs = costBlocks(facts);
  return [
    paragraph(opening(pipeOf(facts))),
    ...workPart(facts, standing),
    ...(costs.length === 0 ? [] : [heading(words.done.cost), ...costs]),
    heading(words.done.papers),
    ...list(paperLines(facts)),
    heading(words.done.next),
    ...list(nextLines(facts)),
    heading(words.done.warranty),
    paragraph(warrantyWords(facts)),
    letterStrip(facts, "done"),
  ];
}

function hasPermit({ file }: LetterFacts): boolean {
  return file.permits.some((permit) => !isDropped(permitStateOf(file, permit)));
}

function isDropped(state: PermitState): boolean {
  return state === "withdrawn" || state === "superseded" || state === "denied";
}

/** What was built, as it was said; while nobody has said it, the work as it was planned. */
function workPart(facts: LetterFacts, standing: ReturnType<typeof workStanding>): LetterBlock[] {
  const { words } = facts;
  const built = builtLines(facts);
  if (standing === "open" || built.length === 0)
    return [heading(words.done.planned), ...list(workLines(facts))];
  return [heading(words.done.work), ...list(built)];
}

function builtLines(facts: LetterFacts): string[] {
  const { file, words } = facts;
  return file.built.map(({ itemId, on, words: said }) => {
    const item = file.scope.find(({ id }) => id === itemId);
    const what =
      item === undefined
        ? words.done.whole
        : words.entry.areaWork(workTitle(item, facts), whereIs(item, facts));
    return words.done.built(what, words.day(on), said);
  });
}

/** By the money book where the reader was invoiced; by the split before that. */
function costBlocks(facts: LetterFacts): LetterBlock[] {
  const { words, place, share, split } = facts;
  const owed = owedOf(facts);
  if (owed !== null)
    return [
      amountBlock(words.done.invoiced(place), owed.invoiced),
      ...list([words.done.account(formatCents(owed.settled), formatCents(owed.open))]),
    ];
  if (split === null) return [];
  return [
    paragraph(words.done.total(formatCents(split.total))),
    ...(share === null ? [] : [amountBlock(words.done.share(place), share.amount)]),
  ];
}

function warrantyWords(facts: LetterFacts): string {
  const { file, words } = facts;
  const { warrantyMonths, warrantyCovers } = file.line;
  if (warrantyMonths === null) return words.done.warrantyNone;
  const from = finalDay(facts);
  return words.done.warrantyLine(
    warrantyMonths,
    from === null ? "" : words.day(from),
    warrantyCovers,
  );
}

/** The day on which the last permit became final; null while one is not. */
function finalDay(facts: LetterFacts): string | null {
  if (workStanding(facts) !== "final") return null;
  const { permitSteps } = facts.file;
  return (
    permitSteps
      .filter(({ state }) => state === "final")
      .map(({ on }) => on)
      .toSorted()
      .at(-1) ?? null
  );
}

function paperLines({ file, words }: LetterFacts): string[] {
  const agreements = file.agreements.map(({ title, recordingNumber }) =>
    recordingNumber === ""
      ? words.done.unrecorded(title)
      : words.done.recorded(title, recordingNumber),
  );
  const permits = file.permits.flatMap((permit) => {
    const state = permitStateOf(file, permit);
    if (isDropped(state)) return [];
    const word = state === "final" ? words.done.final : words.done.open;
    return [words.done.permit(permit.number, word)];
  });
  const inspections = file.inspections
    .filter((inspection) => inspection.result === "passed")
    .map(({ title, bookedFor }) => words.done.inspection(title, words.day(bookedFor)));
  const asBuilt = file.permitSteps
    .filter(({ state }) => state === "as-built-submitted")
    .map(({ on }) => words.done.asBuilt(words.day(on)));
  return [
    ...(agreements.length === 0 ? [words.done.noAgreement] : agreements),
    ...permits,
    ...asBuilt,
    ...inspections,
  ];
}

function nextLines({ report, words }: LetterFacts): string[] {
  const held = heldStretches(report.reaches);
  if (held.length === 0) return [words.done.nextUnknown];
  return held.map(({ from, to, holder }) =>
    words.done.nextLine(words.stretch(from, to), words.holder[holder]),
  );
}
