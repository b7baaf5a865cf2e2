import type { LedgerEntry } from "../facts/ledger-entry.ts";
import type { LineFile, Office } from "../facts/line-file.ts";
import type { Address, Party, Property } from "../facts/party.ts";
import { accountEntries } from "../ledger/accounts.ts";
import type { Account } from "../ledger/balance.ts";
import { billedParties, billedTo } from "../ledger/billed-to.ts";
import { LEDGER_WORDS, type LedgerWords } from "../ledger/words.ts";
import type { Cents } from "../money/cents.ts";
import { formatCents } from "../money/format-cents.ts";
import { addressLines, windowLines } from "../party/address.ts";
import { languagesOfAll } from "../party/letter-languages.ts";
import { formatPhone } from "../party/phone.ts";
import type { Language } from "../say/language.ts";
import type { Day } from "../time/day.ts";
import { LETTER_WORDS, placeOf } from "./facts.ts";
import type { LetterBlock } from "./letter.ts";
import type { LetterWords } from "./words-en.ts";

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
  /** To cut off and return with a check; none where nothing is open or the office takes no checks. */
  readonly slip?: PaymentSlip;
  /** The same paper in the other language, where not all of its readers want the same. */
  readonly also?: AccountPaper;
}

/** The foot of an invoice. */
export interface PaymentSlip {
  readonly cut: string;
  readonly title: string;
  /** The office's address, for the window of a return envelope: at most three lines and the name. */
  readonly remitTo: readonly string[];
  /** Label and value. */
  readonly lines: readonly (readonly [string, string])[];
  readonly amount: readonly [string, string];
  /** Left open for a pen. */
  readonly enclosed: string;
}

/** What invoices and statements are made from. */
export interface PaperInput {
  readonly file: LineFile;
  readonly office: Office;
  readonly today: Day;
}

/** One account with its party, its place and its reader’s words. */
export interface PaperFacts extends PaperInput {
  readonly language: Language;
  readonly party: Party;
  readonly property: Property;
  readonly place: string;
  readonly words: LedgerWords;
  readonly frame: LetterWords;
  readonly entries: readonly LedgerEntry[];
}

/**
 * A paper in each language that one of those wants to whom the account is billed, the billed
 * party's first. Throws where the account names no one in the file.
 */
export function inReadersLanguages(
  input: PaperInput,
  account: Account,
  make: (facts: PaperFacts) => AccountPaper,
): AccountPaper {
  const { file, office } = input;
  const property = file.properties.find(({ id }) => id === account.propertyId) ?? null;
  const readers = billedParties(file, account);
  const [first, ...others] = languagesOfAll(readers, { property, office });
  const paper = make(factsFor(input, account, first));
  const [second] = others;
  if (second === undefined) return paper;
  // One slip asks for the money once.
  const { slip: _slip, ...also } = make(factsFor(input, account, second));
  return { ...paper, also };
}

function factsFor(
  input: PaperInput,
  { partyId, propertyId }: Account,
  language: Language,
): PaperFacts {
  const party = input.file.parties.find(({ id }) => id === partyId);
  const property = input.file.properties.find(({ id }) => id === propertyId);
  if (party === undefined || property === undefined)
    throw new Error(`Account of ${partyId} at ${propertyId} names no one in the file`);
  return {
    ...input,
    language,
    party,
    property,
    place: placeOf(property.address),
    words: LEDGER_WORDS[language],
    frame: LETTER_WORDS[language],
    entries: accountEntries(input.file, { partyId, propertyId }),
  };
}

/** What every paper bears: sender, addressees, reference, license. */
export function framed(facts: PaperFacts, reference: string) {
  const { file, office, party, property, today, frame, language } = facts;
  const names = billedTo(file, { partyId: party.id, propertyId: property.id });
  const license = office.license === "" ? "" : frame.frame.license(office.license);
  return {
    language,
    day: today,
    from: [
      office.name,
      ...addressLines(office.address),
      formatPhone(office.phone),
      office.email,
    ].filter((line) => line !== ""),
    to: windowLines(names.join(" & "), mailingOf(party, property), party.careOf),
    reference,
    footer: [office.name, license, reference].filter((part) => part !== "").join(" · "),
  };
}

function mailingOf(party: Party, property: Property): Address {
  return party.mailing ?? property.address;
}

/** Short enough for a check: the line's code, and the number of the account's first entry. */
export function referenceOf({ file, entries }: PaperFacts): string {
  const line =
    file.line.id
      .replace(/[^0-9a-z]/gi, "")
      .toUpperCase()
      .slice(-5) || "0";
  return `${line}-A${entries[0]?.number ?? 0}`;
}

/** The one amount that a paper is about. */
export function amount(words: string, cents: Cents): LetterBlock {
  return { kind: "amount", words, amount: formatCents(cents) };
}
