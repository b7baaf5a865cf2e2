import { OWNING_ROLES } from "../../facts/party.ts";
import { accountEntries } from "../../ledger/accounts.ts";
import { type Aging, agingOf } from "../../ledger/aging.ts";
import { openAt } from "../../ledger/owed.ts";
import type { Cents } from "../../money/cents.ts";
import { formatCents } from "../../money/format-cents.ts";
import { ASKS_FOR_MONEY } from "../../stops/stopped-by.ts";
import { atEvery, shareHolders } from "../addressed.ts";
import { lead, paragraph, table } from "../common.ts";
import type { LetterFacts } from "../facts.ts";
import type { LetterBlock } from "../letter.ts";
import type { LetterPlan } from "../letter-plan.ts";
import { payeeGap, payToBlocks } from "../reader-account.ts";

/** Owners with a balance due get their invoice with the day and how to pay or dispute it. */
export const INVOICE_COVER: LetterPlan = {
  title: {
    en: "Your invoice for the shared sewer work",
    es: "Su factura por la obra del desagüe compartido",
  },
  recipients: (file) =>
    atEvery(
      file,
      shareHolders(file).filter(({ propertyId }) => (openAt(file, propertyId) ?? 0) > 0),
      OWNING_ROLES,
    ),
  deeds: () => ASKS_FOR_MONEY,
  body: coverBody,
  choices: coverChoices,
  cautions: ["official"],
  gaps: [hasBill],
};

function hasBill(facts: LetterFacts): string | null {
  return billOf(facts) === null
    ? `${facts.place} has no invoice with a balance due.`
    : payeeGap(facts);
}

/** The open invoices of the reader's account at the property; null where there is none. */
function billOf({ file, party, property, report }: LetterFacts): Aging | null {
  if (property === null) return null;
  const account = { partyId: party.id, propertyId: property.id };
  const aging = agingOf(accountEntries(file, account), report.today);
  return aging.invoices.length === 0 ? null : aging;
}

function openOn({ invoices }: Aging): Cents {
  return invoices.reduce((sum, { open }) => sum + open, 0);
}

function coverChoices(facts: LetterFacts): readonly string[] {
  const bill = billOf(facts);
  return bill === null ? [] : facts.words.cover.choices(formatCents(openOn(bill)));
}

/** What is due and when, how to pay, and how to say that something is wrong. */
function coverBody(facts: LetterFacts): LetterBlock[] {
  const { words, place } = facts;
  const { cover } = words;
  const bill = billOf(facts);
  const [dueOn] = bill?.invoices.map((each) => each.dueOn).toSorted() ?? [];
  if (bill === null || dueOn === undefined) return [paragraph(cover.none)];
  const total = openOn(bill);
  const isPast = dueOn < facts.report.today;
  const one = isPast ? cover.leadPast : cover.lead;
  const many = isPast ? cover.leadManyPast : cover.leadMany;
  const leadOf = bill.invoices.length > 1 ? many : one;
  const rows = bill.invoices.map(({ entry, open, dueOn }) => [
    cover.number(entry.number),
    words.day(entry.on),
    words.day(dueOn),
    formatCents(open),
  ]);
  const sums = rows.length < 2 ? [] : [[cover.total, "", "", formatCents(total)]];
  return [
    ...lead(leadOf(place, formatCents(total), words.weekday(dueOn))),
    paragraph(cover.opening),
    ...table(cover.head, [...rows, ...sums], { numeric: [3], totals: sums.length }),
    ...payToBlocks(facts),
    paragraph(isPast ? cover.disputePast : cover.dispute),
  ];
}
