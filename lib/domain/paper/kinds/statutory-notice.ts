import type { StatutoryPaper } from "../../facts/statutory-paper.ts";
import { formatCents } from "../../money/format-cents.ts";
import { sayCount } from "../../say/count.ts";
import { type Order, ordersOf } from "../../statutory/orders.ts";
import { isOpenPaper, papersOn } from "../../statutory/papers.ts";
import { formatFullDay } from "../../time/format-day.ts";
import { paragraph, table } from "../common.ts";
import type { LetterFacts } from "../facts.ts";
import type { LetterBlock } from "../letter.ts";
import type { LetterPlan } from "../letter-plan.ts";

/**
 * A paper that the state's law asks of the contractor, in the office's own text: what the statute says
 * word for word is not the program's to make up.
 */
export const STATUTORY_NOTICE: LetterPlan = {
  title: {
    en: "Notice under state law",
    es: "Aviso conforme a la ley estatal",
  },
  titleFor: (facts) => {
    const paper = paperOf(facts);
    if (paper === null) return null;
    return facts.notice.language === "es" && paper.titleEs.trim() !== ""
      ? paper.titleEs
      : paper.title;
  },
  recipients: (file) =>
    papersOn(file)
      .filter(isOpenPaper)
      .map(({ paper, partyId, propertyId }) => ({
        ...{ partyId, propertyId, tieInId: null, splitId: null },
        paperId: paper.id,
      })),
  about: "paper",
  body: statutoryBody,
  choices: () => [],
  cautions: ["official"],
  gaps: [hasPaper, hasText, isConfirmed, hasContractDay],
  due: (file, report) => {
    const open = papersOn(file).filter(isOpenPaper);
    const days = open.flatMap(({ by }) => by ?? []).toSorted();
    const [first] = days;
    if (open.length === 0) return null;
    const when =
      first === undefined
        ? ""
        : `, the first ${first < report.today ? "was due" : "due"} ${formatFullDay(first)}`;
    return { because: `${sayCount(open.length, "statutory paper")} not given yet${when}` };
  },
};

/** The paper that a letter gives; null where the authority has it no longer. */
function paperOf({ file, notice }: LetterFacts): StatutoryPaper | null {
  return file.authority?.statutoryPapers.find(({ id }) => id === notice.paperId) ?? null;
}

function orderOf({ file, notice, property }: LetterFacts): Order | null {
  const here = ordersOf(file).filter(({ propertyId }) => propertyId === property?.id);
  return here.find(({ partyId }) => partyId === notice.partyId) ?? here[0] ?? null;
}

/** The office's text in the letter's language; the English one where there is no other. */
function textOf({ notice }: LetterFacts, paper: StatutoryPaper): string {
  return notice.language === "es" && paper.textEs.trim() !== "" ? paper.textEs : paper.text;
}

function statutoryBody(facts: LetterFacts): LetterBlock[] {
  const { words, office, place, notice } = facts;
  const { statutory } = words;
  const paper = paperOf(facts);
  if (paper === null) return [paragraph(statutory.noText)];
  const order = orderOf(facts);
  const text = textOf(facts, paper);
  const isOther = notice.language === "es" && text !== "" && paper.textEs.trim() === "";
  return [
    ...(paper.confirmedBy === ""
      ? [{ kind: "caution" as const, title: statutory.check, text: statutory.checkText }]
      : []),
    ...(paper.citation.trim() === "" ? [] : [paragraph(statutory.under(paper.citation))]),
    ...(isOther ? [paragraph(statutory.otherLanguage)] : []),
    ...linesOf(text === "" ? statutory.noText : text).map((line) => paragraph(line)),
    ...table(
      [statutory.about, ""],
      [
        [statutory.property, place],
        [statutory.contractor, office.name],
        ...(office.license === "" ? [] : [[statutory.license, office.license]]),
        [statutory.signed, order?.on ? words.day(order.on) : words.notSet],
        ...(order?.amount ? [[statutory.amount, formatCents(order.amount)]] : []),
      ],
    ),
  ];
}

function linesOf(text: string): string[] {
  return text
    .split("\n")
    .map((line) => line.trim())
    .filter((line) => line !== "");
}

function hasPaper(facts: LetterFacts): string | null {
  return paperOf(facts) === null
    ? "The authority’s rules no longer have this statutory paper."
    : null;
}

function hasText(facts: LetterFacts): string | null {
  const paper = paperOf(facts);
  if (paper === null) return null;
  if (paper.text.trim() === "")
    return `The text of “${paper.title}” is not entered: under Office, with the authority’s statutory papers.`;
  return facts.notice.language === "es" && paper.textEs.trim() === ""
    ? `“${paper.title}” has no Spanish text: it stands in English in a Spanish letter.`
    : null;
}

function isConfirmed(facts: LetterFacts): string | null {
  const paper = paperOf(facts);
  if (paper === null || paper.text.trim() === "" || paper.confirmedBy !== "") return null;
  return `No one has checked the text of “${paper.title}” against the statute: an admin confirms it under Office.`;
}

function hasContractDay(facts: LetterFacts): string | null {
  const paper = paperOf(facts);
  if (paper?.event !== "contract" || orderOf(facts)?.on) return null;
  return "The day of the contract is not on file: enter it under “Statutory papers”.";
}
