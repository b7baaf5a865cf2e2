import type { LineFile } from "../../facts/line-file.ts";
import { OWNING_ROLES } from "../../facts/party.ts";
import type { Report } from "../../findings/report.ts";
import { formatCents } from "../../money/format-cents.ts";
import { citationOf, sourceOf } from "../../responsibility/citation.ts";
import { latestSplit } from "../../split/latest-split.ts";
import { isStale } from "../../split/stale.ts";
import { atEvery, shareHolders } from "../addressed.ts";
import {
  heading,
  heldStretches,
  lead,
  list,
  paragraph,
  replyBy,
  table,
  workTable,
} from "../common.ts";
import { excludedParts } from "../excluded.ts";
import { type LetterFacts, otherSharers } from "../facts.ts";
import type { LetterBlock } from "../letter.ts";
import type { LetterPlan } from "../letter-plan.ts";
import { letterStrip } from "../letter-strip.ts";
import { amountBlock, shareGap } from "../reader-account.ts";
import { alternativeRows, sumBlocks } from "../sum.ts";

/** Owners are asked whether they agree to their share; tenants never are. */
export const PROPOSED_SPLIT: LetterPlan = {
  title: {
    en: "Proposed cost split for the shared sewer",
    es: "Propuesta de reparto del costo del desagüe compartido",
  },
  recipients: (file) => atEvery(file, shareHolders(file), OWNING_ROLES),
  about: "split",
  wantsReply: true,
  body: splitBody,
  choices: ({ words, share }) => words.split.choices(formatCents(share?.amount ?? 0)),
  cautions: ["proposal", "records"],
  gaps: [hasPayTerms, shareGap, isFresh],
  due: splitChosen,
};

function hasPayTerms({ office }: LetterFacts): string | null {
  return office.payDays === null || office.depositPercent === null
    ? "How and when a share is paid is not entered: add days to pay and deposit under Office."
    : null;
}

function isFresh({ split, outcome }: LetterFacts): string | null {
  if (split === null || outcome !== null) return null;
  return "The split is out of date: facts have changed since it was chosen. Update the split first.";
}

function splitChosen(file: LineFile, report: Report) {
  const version = latestSplit(file);
  if (version === null || isStale(report, version)) return null;
  return { because: `Version ${version.number} of the split is chosen` };
}

/** Rule and reason, who answers where, the work, the reader's share and its sum, what is left out. */
function splitBody(facts: LetterFacts): LetterBlock[] {
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

function alternativeBlocks(facts: LetterFacts): LetterBlock[] {
  const rows = alternativeRows(facts);
  if (rows.length === 0) return [];
  const { split } = facts.words;
  return [heading(split.alternatives), ...table(split.alternativesHead, rows, { numeric: [1] })];
}
