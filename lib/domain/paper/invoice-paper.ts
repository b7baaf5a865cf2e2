import type { LedgerEntry } from "../facts/ledger-entry.ts";
import type { Office } from "../facts/line-file.ts";
import { agingOf } from "../ledger/aging.ts";
import { standingEntries } from "../ledger/balance.ts";
import { billedTo } from "../ledger/billed-to.ts";
import { shareIn } from "../ledger/propose.ts";
import type { LedgerWords } from "../ledger/words.ts";
import type { Cents } from "../money/cents.ts";
import { formatCents } from "../money/format-cents.ts";
import { addressLines } from "../party/address.ts";
import { formatPhone } from "../party/phone.ts";
import { heading, list, paragraph, table } from "./common.ts";
import type { LetterBlock } from "./letter.ts";
import {
  type AccountPaper,
  amount,
  framed,
  inReadersLanguages,
  type PaperFacts,
  type PaperInput,
  type PaymentSlip,
  referenceOf,
} from "./paper-frame.ts";

/** An invoice as it stands today, in its readers' languages. Throws where it is not in the file. */
export function invoicePaper(input: PaperInput, entryId: string): AccountPaper {
  const invoice = input.file.ledger.find(({ id, kind }) => id === entryId && kind === "invoice");
  if (invoice === undefined) throw new Error(`There is no invoice ${entryId}`);
  return inReadersLanguages(input, invoice, (facts) => invoiceFrom(facts, invoice));
}

function invoiceFrom(facts: PaperFacts, invoice: LedgerEntry): AccountPaper {
  const { words, frame, place } = facts;
  const reference = `${referenceOf(facts)}-${invoice.number}`;
  return {
    ...framed(facts, reference),
    title: words.invoice.title,
    day: invoice.on,
    aside: [
      [words.invoice.number, String(invoice.number)],
      [frame.frame.date, frame.day(invoice.on)],
      [words.invoice.due, frame.day(invoice.dueOn ?? invoice.on)],
      [frame.frame.reference, reference],
    ],
    subject: words.invoice.subject(invoice.number, place),
    blocks: [
      ...sumBlocks(facts, invoice),
      ...(openOn(facts, invoice) === 0 ? [] : payBlocks(facts, reference)),
      ...(invoice.splitId === null ? [] : [paragraph(words.invoice.basis)]),
    ],
    ...slipOf(facts, invoice, reference),
  };
}

/** To whom checks are made out. */
function payeeOf({ payee, name }: Office): string {
  return payee === "" ? name : payee;
}

function takesChecks({ payMethods }: Office): boolean {
  return payMethods.length === 0 || payMethods.includes("check");
}

/** The payment slip at the foot, where something is open and can be paid by a mailed check. */
function slipOf(
  facts: PaperFacts,
  invoice: LedgerEntry,
  reference: string,
): { readonly slip?: PaymentSlip } {
  const { office, words, frame, file } = facts;
  const open = openOn(facts, invoice);
  const place = addressLines(office.address);
  if (open === 0 || place.length === 0 || !takesChecks(office)) return {};
  const { slip } = words;
  return {
    slip: {
      cut: slip.cut,
      title: slip.title,
      remitTo: [office.name, ...[place.slice(0, -1).join(", "), place.at(-1) ?? ""]].filter(
        (line) => line !== "",
      ),
      lines: [
        [words.invoice.number, String(invoice.number)],
        [slip.account, reference],
        [slip.from, billedTo(file, invoice).join(" & ")],
        [words.invoice.due, frame.day(invoice.dueOn ?? invoice.on)],
        [slip.payable, payeeOf(office)],
      ],
      amount: [slip.amount, formatCents(open)],
      enclosed: slip.enclosed,
    },
  };
}

function sumBlocks(facts: PaperFacts, invoice: LedgerEntry): LetterBlock[] {
  const { words, entries } = facts;
  const row = [forWhat(facts, invoice), formatCents(invoice.amount)];
  return [
    heading(words.invoice.forWhat),
    ...table(words.invoice.head, [row], { numeric: [1] }),
    ...list([...shareLines(facts, invoice), ...(invoice.note === "" ? [] : [invoice.note])]),
    ...dueBlocks(words, invoice, {
      stands: standingEntries(entries).some(({ id }) => id === invoice.id),
      open: openOn(facts, invoice),
    }),
  ];
}

/** What is still open on one invoice; nothing where it was taken back. */
function openOn({ entries, today }: PaperFacts, invoice: LedgerEntry): Cents {
  const { invoices } = agingOf(entries, today);
  return invoices.find(({ entry }) => entry.id === invoice.id)?.open ?? 0;
}

function forWhat({ file, words, place, property }: PaperFacts, invoice: LedgerEntry): string {
  const version = file.splits.find(({ id }) => id === invoice.splitId);
  if (version === undefined) return words.invoice.other(place);
  const whole = shareIn(version, property.id) === invoice.amount;
  return whole
    ? words.invoice.share(place, version.number)
    : words.invoice.part(place, version.number);
}

/** The whole share beside what was invoiced of it before. Says nothing of another owner's part. */
function shareLines(
  { file, words, property, entries }: PaperFacts,
  invoice: LedgerEntry,
): string[] {
  const version = file.splits.find(({ id }) => id === invoice.splitId);
  if (version === undefined) return [];
  const share = shareIn(version, property.id);
  const before = standingEntries(entries).reduce((sum, entry) => {
    if (entry.number >= invoice.number || entry.splitId === null) return sum;
    if (entry.kind === "invoice") return sum + entry.amount;
    return entry.kind === "credit" ? sum - entry.amount : sum;
  }, 0);
  if (before <= 0 || share !== before + invoice.amount) return [];
  return [words.invoice.ofShare(formatCents(share), formatCents(before))];
}

function dueBlocks(
  words: LedgerWords,
  invoice: LedgerEntry,
  { stands, open }: { stands: boolean; open: Cents },
): LetterBlock[] {
  if (!stands) return [paragraph(words.invoice.takenBack)];
  if (open === 0) return [paragraph(words.invoice.paidInFull)];
  if (open === invoice.amount) return [amount(words.invoice.amount, open)];
  return [
    amount(words.invoice.stillOpen, open),
    paragraph(words.invoice.paid(formatCents(invoice.amount - open))),
  ];
}

function payBlocks(facts: PaperFacts, reference: string): LetterBlock[] {
  const { office, words } = facts;
  const place = addressLines(office.address).join(", ");
  const contact = [formatPhone(office.phone), office.email]
    .filter((part) => part !== "")
    .join(", ");
  return [
    heading(words.invoice.howToPay),
    ...list([
      `${words.invoice.check(payeeOf(office), place)} ${words.invoice.quote(reference)}`,
      ...(contact === "" ? [] : [words.invoice.askOther(contact)]),
    ]),
    ...jointBlocks(facts),
  ];
}

function jointBlocks({ file, party, property, words, frame }: PaperFacts): LetterBlock[] {
  const names = billedTo(file, { partyId: party.id, propertyId: property.id });
  return names.length < 2 ? [] : [paragraph(words.invoice.joint(frame.list(names)))];
}
