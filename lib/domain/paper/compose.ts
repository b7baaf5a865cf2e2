import type { Office } from "../facts/line-file.ts";
import { consentsAsked } from "../notices/asked.ts";
import { windowLines } from "../party/address.ts";
import { mailTo } from "../party/mail-to.ts";
import { formatPhone } from "../party/phone.ts";
import { dayAt } from "../time/days.ts";
import { cautionBlocks } from "./cautions.ts";
import {
  asCopied,
  copyCover,
  copyTitle,
  isCopy,
  type Original,
  originalOf,
  sentBlocks,
} from "./copy.ts";
import { type LetterFacts, type LetterInput, letterFacts, placeOf } from "./facts.ts";
import { LETTER_PLANS } from "./kinds/index.ts";
import type { Letter, LetterBlock } from "./letter.ts";
import { wordedBody } from "./worded.ts";

/**
 * One letter as data: only its reader's own share, nobody blamed, the standing cautions always
 * there, in the notice's language; where it has a second one, the whole letter again in that.
 * PDF, web page and mail text are all made from it.
 * Throws where the notice names a party that the file has not.
 */
export function composeLetter(input: LetterInput): Letter {
  const { alsoIn } = input.notice;
  const first = composeIn(input);
  if (alsoIn === null) return first;
  const notice = { ...input.notice, language: alsoIn };
  return { ...first, also: composeIn({ ...input, notice }) };
}

function composeIn(input: LetterInput): Letter {
  const facts = letterFacts(input);
  const { notice, words, report, office } = facts;
  const plan = LETTER_PLANS[notice.kind];
  const reference = referenceOf(facts);
  const day = notice.sentAt === null ? report.today : dayAt(notice.sentAt, office.zone);
  return {
    kind: notice.kind,
    asks: isCopy(facts.file, notice) || plan.asksNothing?.(facts) ? [] : consentsAsked(notice.kind),
    language: notice.language,
    title: titleOf(facts),
    day,
    date: words.day(day),
    from: senderLines(office),
    to: windowLines(addressee(facts), mailTo(facts.file, facts.notice), facts.party.careOf),
    reference,
    subject: words.subject(titleOf(facts), facts.place),
    answerBy: answerBy(facts),
    greeting:
      facts.party.kind === "resident"
        ? words.frame.greetingResident
        : words.frame.greeting(facts.party.name, facts.party.kind === "person"),
    blocks: blocksOf(facts),
    closing: words.frame.closing,
    footer: footerOf(facts, reference),
    stations: report.tieIns.flatMap(({ station }) => (station === null ? [] : [station])),
  };
}

function titleOf(facts: LetterFacts): string {
  const { title, titleFor } = LETTER_PLANS[facts.notice.kind];
  const own = titleFor?.(facts) ?? title[facts.notice.language];
  return isCopy(facts.file, facts.notice) ? copyTitle(facts, own) : own;
}

function blocksOf(facts: LetterFacts): LetterBlock[] {
  const { notice, words, office } = facts;
  const by = notice.createdBy === "" ? office.name : notice.createdBy;
  return [
    ...(isCopy(facts.file, notice) ? copyBlocks(facts) : saidBlocks(facts)),
    {
      kind: "signature",
      lines: [words.frame.forOffice(by, office.name), ...contactLines(facts)],
    },
    ...slipOf(facts),
  ];
}

/** What is said to a letter's reader, with what they are warned of. */
function saidBlocks(facts: LetterFacts): LetterBlock[] {
  const { notice } = facts;
  const body = wordedBody(facts, LETTER_PLANS[notice.kind].body(facts));
  return [
    ...body.filter(isLead),
    ...ownParagraphs(notice.ownWords),
    ...body.filter((block) => !isLead(block)),
    ...cautionBlocks(facts),
  ];
}

/** A copy: a few words to its reader, then all that the letter says to its own. */
function copyBlocks(facts: LetterFacts): LetterBlock[] {
  const original = originalOf(facts);
  const [asked, ...cover] = copyCover(facts, original);
  return [
    ...(asked === undefined ? [] : [asked]),
    ...ownParagraphs(facts.notice.ownWords),
    ...cover,
    ...(original === null ? cautionBlocks(facts) : asCopied(copied(original))),
  ];
}

/** As it went out; before that, as it would. */
function copied({ facts, sent }: Original): LetterBlock[] {
  return sent === null ? saidBlocks(facts) : sentBlocks(sent);
}

function isLead(block: LetterBlock): boolean {
  return block.kind === "paragraph" && block.lead === true;
}

/** The office's personal note, each blank line a new paragraph. It follows what is asked and replaces nothing. */
function ownParagraphs(text: string): LetterBlock[] {
  return text
    .split(/\n\s*\n/)
    .map((part) => part.trim())
    .filter((part) => part !== "")
    .map((part) => ({ kind: "paragraph", text: part }));
}

function contactLines({ office, words }: LetterFacts): string[] {
  return [
    office.phone === "" ? "" : `${words.frame.telephone} ${formatPhone(office.phone)}`,
    office.email === "" ? "" : `${words.frame.email} ${office.email}`,
  ].filter((line) => line !== "");
}

/** Only a letter that has an answer slip asks for an answer by a day. */
function answerBy(facts: LetterFacts): string {
  const { notice, words } = facts;
  if (notice.replyBy === null || choicesOf(facts).length === 0) return "";
  return words.weekday(notice.replyBy);
}

function choicesOf(facts: LetterFacts): readonly string[] {
  if (isCopy(facts.file, facts.notice)) return [];
  return LETTER_PLANS[facts.notice.kind].choices(facts);
}

function slipOf(facts: LetterFacts): LetterBlock[] {
  const choices = choicesOf(facts);
  if (choices.length === 0) return [];
  return [{ kind: "answer-slip", choices, returnBy: answerBy(facts) }];
}

function senderLines({ name, address, phone, email }: Office): string[] {
  return [
    name,
    placeOf(address),
    [address.city, `${address.state} ${address.zip}`.trim()]
      .filter((part) => part !== "")
      .join(", "),
    formatPhone(phone),
    email,
  ].filter((line) => line !== "");
}

function footerOf({ office, words }: LetterFacts, reference: string): string {
  const license = office.license === "" ? "" : words.frame.license(office.license);
  return [office.name, license, reference].filter((part) => part !== "").join(" · ");
}

/** `Q7F2-A91C`: short enough to read out on the telephone, from the line's id and the letter's. */
function referenceOf({ file, notice }: LetterFacts): string {
  return `${shortCode(file.line.id)}-${shortCode(notice.id)}`;
}

function shortCode(id: string): string {
  const plain = id.replace(/[^0-9a-z]/gi, "").toUpperCase();
  return plain.slice(-5) || "0";
}

/** For a trust or firm the capacity of who signs stays out of the window: the name is the title's. */
function addressee({ party }: LetterFacts): string {
  return party.name;
}
