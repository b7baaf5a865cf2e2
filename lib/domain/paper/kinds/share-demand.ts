import { consentStanding } from "../../consent/standing.ts";
import type { LineFile } from "../../facts/line-file.ts";
import { COPY_ROLES, OWNING_ROLES } from "../../facts/party.ts";
import type { Report, TieInFinding } from "../../findings/report.ts";
import { heldAt, openAt } from "../../ledger/owed.ts";
import { overdueAccounts } from "../../ledger/sentence.ts";
import { LEDGER_WORDS } from "../../ledger/words.ts";
import { formatCents } from "../../money/format-cents.ts";
import { sayCount } from "../../say/count.ts";
import { latestSplit } from "../../split/latest-split.ts";
import { ASKS_FOR_MONEY } from "../../stops/stopped-by.ts";
import { DEMAND_LEVEL } from "../../tiein/evidence.ts";
import { mayBeDemanded } from "../../tiein/may-be-demanded.ts";
import { type About, atEvery, shareHolders } from "../addressed.ts";
import { heading, lead, list, paragraph, replyBy, workTable } from "../common.ts";
import type { LetterFacts } from "../facts.ts";
import type { LetterBlock } from "../letter.ts";
import type { LetterPlan } from "../letter-plan.ts";
import { letterStrip } from "../letter-strip.ts";
import {
  amountBlock,
  demanded,
  heldFor,
  owedOf,
  payeeGap,
  payToBlocks,
  shareGap,
} from "../reader-account.ts";
import { sumBlocks } from "../sum.ts";

/** An owner is asked to pay, and only where the tie-in is on record, shown by tests or accepted by its owner. */
export const SHARE_DEMAND: LetterPlan = {
  title: {
    en: "Payment request for your share",
    es: "Solicitud de pago de su parte",
  },
  recipients: (file, report) => atEvery(file, demandable(file, report), OWNING_ROLES),
  // A lien on the lot may follow from it, or stand before it.
  copiesTo: COPY_ROLES,
  named: "always",
  wantsReply: true,
  deeds: () => ASKS_FOR_MONEY,
  body: demandBody,
  choices: (facts) => facts.words.demand.choices(formatCents(demanded(facts))),
  cautions: ["official", "records"],
  gaps: [payeeGap, shareGap, isOpen, isDemandable],
  due: moneyPastDue,
};

function demandable(file: LineFile, report: Report): About[] {
  const owing =
    latestSplit(file)?.shares.filter(
      ({ propertyId, amount }) =>
        propertyId !== null && (openAt(file, propertyId) ?? amount - heldAt(file, propertyId)) > 0,
    ) ?? [];
  const holders = shareHolders(file).filter(({ propertyId }) =>
    owing.some((share) => share.propertyId === propertyId),
  );
  return holders.filter(({ propertyId }) =>
    report.tieIns.some(
      (finding) => finding.propertyId === propertyId && mayBeDemanded(finding, report),
    ),
  );
}

function isOpen(facts: LetterFacts): string | null {
  const { share, place } = facts;
  if (share === null || demanded(facts) > 0) return null;
  return `${place} has no balance due.`;
}

function isDemandable({ own, report, place }: LetterFacts): string | null {
  return own.some((finding) => mayBeDemanded(finding, report))
    ? null
    : `Nothing on file shows well enough that ${place} is on the line; a payment demand needs level ${DEMAND_LEVEL} evidence or the owner’s written acceptance.`;
}

function moneyPastDue(file: LineFile, { today }: Report) {
  const late = overdueAccounts(file, today);
  return late.length === 0 ? null : { because: `${sayCount(late.length, "account")} past due` };
}

/** Amount, what it rests on, day to pay by, and the sum behind it. */
function demandBody(facts: LetterFacts): LetterBlock[] {
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
