import type { LetterKind } from "../facts/letter-kind.ts";
import type { LineFile } from "../facts/line-file.ts";
import type { Notice } from "../facts/notice.ts";
import type { Report } from "../findings/report.ts";
import { isOnlyCopied } from "../party/only-copied.ts";
import { dayAt } from "../time/days.ts";
import { atEvery, type Recipient } from "./addressed.ts";
import { heading, lead, paragraph } from "./common.ts";
import { type LetterFacts, letterFacts } from "./facts.ts";
import { frozenLetter, UNREADABLE_LETTER } from "./frozen-letter.ts";
import { LETTER_PLANS } from "./kinds/index.ts";
import type { Letter, LetterBlock } from "./letter.ts";
import { COPY_EN, COPY_ES } from "./words-copy.ts";

const COPY_WORDS = { en: COPY_EN, es: COPY_ES };

/**
 * Who gets a copy of a kind of letter: those whom its plan names, at each property about which the
 * letter itself is due to somebody. Never who gets the letter itself there. No part of `recipientsOf`:
 * a copy is counted as nobody told.
 */
export function copiesOf(file: LineFile, report: Report, kind: LetterKind): Recipient[] {
  const { copiesTo, recipients } = LETTER_PLANS[kind];
  if (copiesTo === undefined) return [];
  const stops = recipients(file, report).flatMap(({ propertyId, tieInId, splitId }) =>
    propertyId === null ? [] : [{ propertyId, tieInId, splitId }],
  );
  return atEvery(file, stops, copiesTo).filter((one) => isOnlyCopied(file, one));
}

/** Whether a letter to this reader is a copy of the one to the property's owner, and asks nothing. */
export function isCopy(
  file: Pick<LineFile, "roles">,
  notice: Pick<Notice, "partyId" | "propertyId">,
): boolean {
  return isOnlyCopied(file, notice);
}

/** The letter that a copy copies, and what it says as it went out; null: it has not, or can’t be read. */
export interface Original {
  readonly facts: LetterFacts;
  readonly sent: Letter | null;
}

/**
 * What a copy copies: the last letter of its kind about the same to a reader of whom something may be
 * asked, one that was sent before a draft; null: none is written. Its facts are in the copy's language.
 */
export function originalOf(facts: LetterFacts): Original | null {
  const { file, report, office, notice } = facts;
  const about = file.notices.filter(
    (one) =>
      one.kind === notice.kind &&
      one.propertyId === notice.propertyId &&
      one.tieInId === notice.tieInId &&
      one.splitId === notice.splitId &&
      file.parties.some(({ id }) => id === one.partyId) &&
      !isCopy(file, one),
  );
  const original = about.findLast(({ state }) => state === "sent") ?? about.at(-1);
  if (original === undefined) return null;
  const { language } = notice;
  const sent = original.frozen === null ? null : frozenLetter(original.frozen);
  return {
    facts: letterFacts({ file, report, office, notice: { ...original, language, alsoIn: null } }),
    sent: sent?.also?.language === language ? sent.also : sent,
  };
}

export function copyTitle({ notice }: LetterFacts, title: string): string {
  return COPY_WORDS[notice.language].title(title);
}

/** Whose copy it is and that it asks nothing; then who is meant where the letter says “you”. */
export function copyCover(facts: LetterFacts, original: Original | null): LetterBlock[] {
  const { notice, place } = facts;
  const words = COPY_WORDS[notice.language];
  const ifPapers: Partial<Record<LetterKind, string>> = words.ifPapers;
  const more = ifPapers[notice.kind];
  return [
    ...lead(words.lead(place)),
    ...(more === undefined ? [] : [paragraph(more)]),
    paragraph(words.wrong(place)),
    ...(original === null ? [paragraph(words.none)] : originalHead(facts, original)),
  ];
}

function originalHead({ notice, words: say }: LetterFacts, { facts }: Original): LetterBlock[] {
  const { sentAt } = facts.notice;
  const day = sentAt === null ? null : say.day(dayAt(sentAt, facts.office.zone));
  const words = COPY_WORDS[notice.language];
  const { name } = facts.party;
  return [heading(words.original(name, day)), paragraph(words.you(name))];
}

/** What a letter says after it went out, without the slip to answer on and its signature. */
export function sentBlocks({ blocks }: Letter): LetterBlock[] {
  return blocks.filter(({ kind }) => kind !== "answer-slip" && kind !== "signature");
}

/** What is said in the letter as it is to its own reader: no block is set strong as if it asked. */
export function asCopied(blocks: readonly LetterBlock[]): LetterBlock[] {
  return blocks.map((block) =>
    block.kind === "paragraph" ? { kind: "paragraph", text: block.text } : block,
  );
}

/** What keeps a copy back: no letter that it copies, or no address of its reader's own. */
export function copyGaps(facts: LetterFacts): string[] {
  const { party, place, notice } = facts;
  const { copiesTo } = LETTER_PLANS[notice.kind];
  return [
    ...(copiesTo === undefined
      ? [`${party.name} is on file only as lender of ${place}, and this letter has no copies.`]
      : []),
    ...originalGap(facts),
    ...(party.mailing === null && party.email === ""
      ? [`${party.name} has no mailing address of its own: the copy would go to ${place}.`]
      : []),
  ];
}

/** A copy of what nobody was sent would be none. */
function originalGap(facts: LetterFacts): string[] {
  const original = originalOf(facts);
  const { place } = facts;
  if (original === null)
    return [`The letter to the owner of ${place} is not written yet; write and send it first.`];
  const { party, notice } = original.facts;
  if (notice.state !== "sent")
    return [`The letter to ${party.name} is not sent yet; send it before its copy.`];
  return original.sent === null ? [`${UNREADABLE_LETTER}.`] : [];
}
