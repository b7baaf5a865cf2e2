import type { Day } from "../calendar/day.ts";
import { latestSplit } from "../consent/standing.ts";
import type { LineFile, Office } from "../file/line-file.ts";
import { heading, list, paragraph, table } from "../letter/common.ts";
import { LETTER_WORDS, placeOf } from "../letter/facts.ts";
import type { LetterBlock } from "../letter/letter.ts";
import type { LetterWords } from "../letter/words-en.ts";
import type { Cents } from "../money/cents.ts";
import { formatCents } from "../money/format-cents.ts";
import { addressLines, windowLines } from "../party/address.ts";
import type { Address, Language, Party, Property } from "../party/party.ts";
import { AGES, ageingOf } from "./ageing.ts";
import { type Account, accountsOf, balanceOf, entriesOf, standingEntries } from "./balance.ts";
import { billedTo } from "./billed-to.ts";
import type { LedgerEntry } from "./entry.ts";
import { shareIn } from "./propose.ts";
import { statementRows } from "./statement-of-account.ts";
import { LEDGER_WORDS, type LedgerWords } from "./words.ts";

/** An invoice or a statement as data: web page and PDF are made from it. Its reader's money alone. */
export interface AccountPaper {
  readonly language: Language;
  readonly title: string;
  readonly day: Day;
  readonly from: readonly string[];
  /** At most five lines, in the envelope's window. */
  readonly to: readonly string[];
  /** What stands beside the address: label and value. */
  readonly aside: readonly (readonly [string, string])[];
  readonly subject: string;
  readonly reference: string;
  readonly blocks: readonly LetterBlock[];
  readonly footer: string;
}

export interface PaperInput {
  readonly file: LineFile;
  readonly office: Office;
  readonly today: Day;
}

interface PaperFacts extends PaperInput {
  readonly party: Party;
  readonly property: Property;
  readonly place: string;
  readonly words: LedgerWords;
  readonly frame: LetterWords;
  readonly entries: readonly LedgerEntry[];
}

/**
 * The statement of one account, in its party's language: every entry with the running balance, what
 * is open and since when. Throws where the account names nobody in the file.
 */
export function statementPaper(input: PaperInput, account: Account): AccountPaper {
  const facts = factsFor(input, account);
  const { words, frame, place, today } = facts;
  const reference = referenceOf(facts);
  return {
    ...framed(facts, reference),
    title: words.statement.title,
    aside: [
      [frame.frame.date, frame.day(today)],
      [frame.frame.reference, reference],
    ],
    subject: words.statement.subject(place),
    blocks: [
      paragraph(words.statement.opening(place, input.file.line.name)),
      ...openBlocks(facts),
      ...rowBlocks(facts, account),
      ...ageBlocks(facts),
      paragraph(words.statement.ask),
    ],
  };
}

/** An invoice as it stands today, in its party's language. Throws where it is not in the file. */
export function invoicePaper(input: PaperInput, entryId: string): AccountPaper {
  const invoice = input.file.ledger.find(({ id, kind }) => id === entryId && kind === "invoice");
  if (invoice === undefined) throw new Error(`There is no invoice ${entryId}`);
  const facts = factsFor(input, invoice);
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
  };
}

/**
 * The papers for a list of properties and invoices, in its order: for a property the statement of
 * each account there, for an invoice the invoice. What is in the file no more is left out.
 */
export function accountPapers(input: PaperInput, subjectIds: readonly string[]): AccountPaper[] {
  const { file } = input;
  return subjectIds.flatMap((id) => {
    if (file.properties.some((property) => property.id === id))
      return accountsOf(file.ledger)
        .filter(({ propertyId }) => propertyId === id)
        .map((account) => statementPaper(input, account));
    const invoice = file.ledger.find((entry) => entry.id === id && entry.kind === "invoice");
    return invoice === undefined ? [] : [invoicePaper(input, id)];
  });
}

function factsFor(input: PaperInput, { partyId, propertyId }: Account): PaperFacts {
  const party = input.file.parties.find(({ id }) => id === partyId);
  const property = input.file.properties.find(({ id }) => id === propertyId);
  if (party === undefined || property === undefined)
    throw new Error(`Account of ${partyId} at ${propertyId} names nobody in the file`);
  return {
    ...input,
    party,
    property,
    place: placeOf(property.address),
    words: LEDGER_WORDS[party.language],
    frame: LETTER_WORDS[party.language],
    entries: entriesOf(input.file.ledger, { partyId, propertyId }),
  };
}

function framed(facts: PaperFacts, reference: string) {
  const { file, office, party, property, today, frame } = facts;
  const names = billedTo(file, { partyId: party.id, propertyId: property.id });
  const licence = office.licence === "" ? "" : frame.frame.licence(office.licence);
  return {
    language: party.language,
    day: today,
    from: [office.name, ...addressLines(office.address), office.phone, office.email].filter(
      (line) => line !== "",
    ),
    to: windowLines(names.join(" & "), mailingOf(party, property)),
    reference,
    footer: [office.name, licence, reference].filter((part) => part !== "").join(" · "),
  };
}

function mailingOf(party: Party, property: Property): Address {
  return party.mailing ?? property.address;
}

/** Short enough for a check: the line's code, and the number of the account's first entry. */
function referenceOf({ file, entries }: PaperFacts): string {
  const line =
    file.line.id
      .replace(/[^0-9a-z]/gi, "")
      .toUpperCase()
      .slice(-5) || "0";
  return `${line}-A${entries[0]?.number ?? 0}`;
}

function openBlocks({ words, entries, today, file, property }: PaperFacts): LetterBlock[] {
  const { open } = balanceOf(entries);
  const { overdue } = ageingOf(entries, today);
  const version = latestSplit(file);
  const share = version === null ? 0 : shareIn(version, property.id);
  const shareLine =
    version === null || share === 0
      ? []
      : [words.statement.share(formatCents(share), version.number)];
  const late = overdue > 0 ? [words.statement.overdue(formatCents(overdue))] : [];
  const lines = list([...shareLine, ...late]);
  if (open === 0) return [paragraph(words.statement.settled), ...lines];
  if (open > 0) return [amount(words.statement.open, open), ...lines];
  return [amount(words.statement.held, -open), paragraph(words.statement.heldNote), ...lines];
}

function amount(words: string, cents: Cents): LetterBlock {
  return { kind: "amount", words, amount: formatCents(cents) };
}

function rowBlocks({ file, words, frame, party }: PaperFacts, account: Account): LetterBlock[] {
  const rows = statementRows(file, account, party.language);
  if (rows.length === 0) return [paragraph(words.statement.empty)];
  const sum = (side: "charged" | "settled") =>
    formatCents(rows.reduce((all, row) => all + (row[side] ?? 0), 0));
  const side = (cents: Cents | null) => (cents === null ? "" : formatCents(cents));
  const last = formatCents(rows.at(-1)?.balance ?? 0);
  return table(
    words.statement.head,
    [
      ...rows.map((row) => [
        frame.day(row.on),
        row.words,
        side(row.charged),
        side(row.settled),
        formatCents(row.balance),
      ]),
      [words.statement.sum, "", sum("charged"), sum("settled"), last],
    ],
    { numeric: [2, 3, 4], totals: 1 },
  );
}

function ageBlocks({ words, entries, today }: PaperFacts): LetterBlock[] {
  const { ages, overdue } = ageingOf(entries, today);
  if (overdue === 0) return [];
  const rows = AGES.filter((age) => ages[age] > 0).map((age) => [
    words.age[age],
    formatCents(ages[age]),
  ]);
  return [
    heading(words.statement.ages),
    ...table(words.statement.agesHead, rows, { numeric: [1] }),
    paragraph(words.statement.order),
  ];
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
  const { invoices } = ageingOf(entries, today);
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
  const contact = [office.phone, office.email].filter((part) => part !== "").join(", ");
  return [
    heading(words.invoice.howToPay),
    ...list([
      `${words.invoice.check(office.name, place)} ${words.invoice.quote(reference)}`,
      ...(contact === "" ? [] : [words.invoice.askOther(contact)]),
    ]),
    ...jointBlocks(facts),
  ];
}

function jointBlocks({ file, party, property, words, frame }: PaperFacts): LetterBlock[] {
  const names = billedTo(file, { partyId: party.id, propertyId: property.id });
  return names.length < 2 ? [] : [paragraph(words.invoice.joint(frame.list(names)))];
}
