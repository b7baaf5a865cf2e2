import { asBuiltOf, type BuiltPart } from "../../closing/built-parts.ts";
import type { LineFile } from "../../facts/line-file.ts";
import { LOT_ROLES } from "../../facts/party.ts";
import type { PermitState } from "../../facts/permit.ts";
import { formatCents } from "../../money/format-cents.ts";
import { isGivenUp, permitStateOf } from "../../permit/steps.ts";
import { latestSplit } from "../../split/latest-split.ts";
import { type About, atEvery } from "../addressed.ts";
import {
  heading,
  heldStretches,
  list,
  paragraph,
  table,
  whereFrom,
  workLines,
  workTitle,
} from "../common.ts";
import { type LetterFacts, pipeOf } from "../facts.ts";
import type { LetterBlock } from "../letter.ts";
import type { LetterPlan } from "../letter-plan.ts";
import { letterStrip } from "../letter-strip.ts";
import { amountBlock, demanded, owedOf } from "../reader-account.ts";

/** All owners are told what was done, what it came to, and who maintains what from now on. */
export const CLOSE_OUT: LetterPlan = {
  title: {
    en: "Closeout documents for the shared sewer",
    es: "Documentos de cierre del desagüe compartido",
  },
  recipients: (file) => atEvery(file, withShareId(file), LOT_ROLES),
  ownProse: true,
  body: doneBody,
  choices: () => [],
  cautions: ["official", "records", "gas"],
  gaps: [isClosed, isBuilt, isSettled],
  due: permitFinal,
};

function withShareId(file: LineFile): About[] {
  const split = latestSplit(file);
  return file.properties.map(({ id }) => ({
    propertyId: id,
    tieInId: null,
    splitId: split?.id ?? null,
  }));
}

function isClosed(facts: LetterFacts): string | null {
  if (workStanding(facts) === "final") return null;
  const open = facts.file.permits.filter((permit) => permitStateOf(facts.file, permit) !== "final");
  if (open.length === 0) return "No permit is final: nothing on file shows that the work is done.";
  const names = open.map(({ number }) => (number === "" ? "without a number" : number));
  return `Permit ${names.join(", ")} is not final.`;
}

function isBuilt(facts: LetterFacts): string | null {
  if (facts.file.built.length > 0) return null;
  return "What was built is not on file: record it with the permit first.";
}

function isSettled(facts: LetterFacts): string | null {
  if (facts.share === null) return null;
  const open = demanded(facts);
  return open > 0 ? `Of the share of ${facts.place}, ${formatCents(open)} is still due.` : null;
}

function permitFinal(file: LineFile) {
  const isFinal = file.permits.some((permit) => permitStateOf(file, permit) === "final");
  return isFinal ? { because: "The permit is final" } : null;
}

/** What was done and what it came to; papers, warranty, and who is responsible from now on. */
function doneBody(facts: LetterFacts): LetterBlock[] {
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
  return isGivenUp(state) || state === "denied";
}

/** What was built, as it was said; while nobody has said it, the work as it was planned. */
function workPart(facts: LetterFacts, standing: ReturnType<typeof workStanding>): LetterBlock[] {
  const { words } = facts;
  const built = builtLines(facts);
  if (standing === "open" || built.length === 0)
    return [heading(words.done.planned), ...list(workLines(facts))];
  return [heading(words.done.work), ...list(built), ...measuredPart(facts)];
}

/** The pieces as they were measured, with their feet; nothing where nobody measured any. */
function measuredPart(facts: LetterFacts): LetterBlock[] {
  const { words, file, report } = facts;
  const { parts } = asBuiltOf(file, report);
  if (parts.length === 0) return [];
  return [
    heading(words.done.measured),
    ...table(
      words.done.measuredHead,
      parts.map((part) => pieceRow(facts, part)),
    ),
  ];
}

function pieceRow(facts: LetterFacts, part: BuiltPart): string[] {
  const { words, report } = facts;
  const { kind, tieInId, from, to, material, diameter, on } = part;
  const label = report.tieIns.find(({ tieIn }) => tieIn.id === tieInId)?.tieIn.label ?? "";
  const work = words.done.piece[kind];
  const isStretch = from !== null && to !== null && to > from;
  return [
    label === "" ? work : `${work}: ${label}`,
    placeOf(facts, part),
    isStretch ? words.feet(to - from) : "",
    words.done.pipe(
      diameter === null ? "" : words.inches(diameter),
      material === "unknown" ? "" : words.material[material],
    ),
    on === "" ? "" : words.day(on),
  ];
}

function placeOf({ words }: LetterFacts, { from, to }: BuiltPart): string {
  if (from === null) return words.unknown;
  return to === null || to === from ? words.feet(from) : words.stretch(from, to);
}

function builtLines(facts: LetterFacts): string[] {
  const { file, words } = facts;
  return file.built.map(({ itemId, on, words: said }) => {
    const item = file.scope.find(({ id }) => id === itemId);
    const what =
      item === undefined
        ? words.done.whole
        : words.entry.areaWork(workTitle(item, facts), whereFrom(item, facts));
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
    .map(({ title, bookedFor }) => words.done.inspection(words.typed(title), words.day(bookedFor)));
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

/** How far the work is by its permits: final, inspected and closed up, or before that. */
function workStanding({ file }: LetterFacts): "final" | "dug" | "open" {
  const states = file.permits
    .map((permit) => permitStateOf(file, permit))
    .filter((state) => !isGivenUp(state));
  if (states.length > 0 && states.every((state) => state === "final")) return "final";
  const inspected = [
    "passed-may-backfill",
    "as-built-submitted",
    "as-built-rejected",
    "as-built-accepted",
    "final",
  ];
  return states.length > 0 && states.every((state) => inspected.includes(state)) ? "dug" : "open";
}
