import type { Wording } from "../facts/wording.ts";
import { formatPhone } from "../party/phone.ts";
import {
  parseWording,
  type WordingField,
  type WordingPart,
  type WordingPiece,
} from "../wording/parse-wording.ts";
import { heading, list, paragraph, workBegins } from "./common.ts";
import { type LetterFacts, type LetterInput, letterFacts } from "./facts.ts";
import { LETTER_PLANS } from "./kinds/index.ts";
import type { LetterBlock } from "./letter.ts";
import type { LetterWords } from "./words-en.ts";

/**
 * The body of a letter in the office's own wording, where it has one in this language. What is computed
 * stays whole and in its order, under its headings; the house's standing sentences give way only in
 * kinds whose plan lets them. What is asked stays first, and cautions, signature and slip follow, since
 * they are no part of any wording.
 */
export function wordedBody(facts: LetterFacts, body: readonly LetterBlock[]): LetterBlock[] {
  const parts = partsOf(facts);
  if (parts === null) return [...body];
  const kept = LETTER_PLANS[facts.notice.kind].ownProse ? factual(facts.words, body) : body;
  return parts.flatMap((part) => (part.kind === "facts" ? kept : blocksOf(facts, part)));
}

/** Fields of the wording of which the file knows nothing yet, each as what to enter. */
export function wordingGaps(facts: LetterFacts): string[] {
  const pieces = (partsOf(facts) ?? []).flatMap((part) => {
    if (part.kind === "facts") return [];
    return part.kind === "list" ? part.lines.flat() : part.pieces;
  });
  const fields = pieces.flatMap((piece) => (typeof piece === "string" ? [] : [piece.field]));
  return [...new Set(fields)]
    .filter((field) => VALUES[field](facts) === "")
    .map((field) => `The office’s wording names {${field}}, which is not on file.`);
}

/**
 * The house's text of a letter as a wording to start from: its standing sentences, with `{facts}` where
 * the first thing stands that is computed. Kinds that keep their sentences begin with `{facts}` alone.
 */
export function houseWording(input: LetterInput): string {
  const facts = letterFacts(input);
  const { ownProse, body } = LETTER_PLANS[facts.notice.kind];
  if (!ownProse) return "{facts}";
  const standing = standingTexts(facts.words);
  const prose = body(facts).filter((block) => !isLead(block) && block.kind !== "heading");
  const first = prose.findIndex((block) => !isStanding(standing, block));
  const texts = (blocks: readonly LetterBlock[]) =>
    blocks.filter((block) => isStanding(standing, block)).map(asTyped);
  const at = first < 0 ? prose.length : first;
  return [...texts(prose.slice(0, at)), "{facts}", ...texts(prose.slice(at))].join("\n\n");
}

function asTyped(block: LetterBlock): string {
  if (block.kind === "list") return block.lines.map((line) => `- ${line}`).join("\n");
  return block.kind === "paragraph" ? block.text : "";
}

function partsOf({ office, notice }: LetterFacts): readonly WordingPart[] | null {
  const own = (office.wordings ?? []).find(
    (each: Wording) => each.kind === notice.kind && each.language === notice.language,
  );
  if (own === undefined) return null;
  const parsed = parseWording(own.text);
  return parsed.ok ? parsed.value : null;
}

function blocksOf(facts: LetterFacts, part: Exclude<WordingPart, { kind: "facts" }>) {
  const said = (pieces: readonly WordingPiece[]) =>
    pieces
      .map((piece) => (typeof piece === "string" ? piece : saidBy(facts, piece.field)))
      .join("");
  if (part.kind === "list") return list(part.lines.map(said));
  return [part.kind === "heading" ? heading(said(part.pieces)) : paragraph(said(part.pieces))];
}

function saidBy(facts: LetterFacts, field: WordingField): string {
  const value = VALUES[field](facts);
  return value === "" ? facts.words.notSet : value;
}

/** What each field says in a letter; empty: nothing is on file. */
const VALUES: Record<WordingField, (facts: LetterFacts) => string> = {
  reader: ({ party }) => party.name,
  place: ({ place }) => place,
  line: ({ file }) => file.line.name,
  town: ({ file }) => file.line.town,
  office: ({ office }) => office.name,
  phone: ({ office }) => formatPhone(office.phone),
  email: ({ office }) => office.email,
  writer: ({ notice, office }) => (notice.createdBy === "" ? office.name : notice.createdBy),
  today: ({ words, report }) => words.day(report.today),
  "reply by": ({ notice, words }) => (notice.replyBy === null ? "" : words.weekday(notice.replyBy)),
  "work begins": (facts) => {
    const day = workBegins(facts);
    return day === null ? "" : facts.words.weekday(day);
  },
  authority: ({ file }) => file.authority?.name ?? "",
};

/** A body without the house's standing sentences: what says something of this file, and its headings. */
function factual(words: LetterWords, body: readonly LetterBlock[]): LetterBlock[] {
  const standing = standingTexts(words);
  const kept = body.filter(
    (block) => isLead(block) || block.kind === "heading" || !isStanding(standing, block),
  );
  // A heading stays only over something.
  return kept.filter((block, at) => {
    const next = kept[at + 1];
    return block.kind !== "heading" || (next !== undefined && next.kind !== "heading");
  });
}

function isLead(block: LetterBlock): boolean {
  return block.kind === "paragraph" && block.lead === true;
}

/** Whether a block is the same in every letter: no more than standing words. */
function isStanding(standing: ReadonlySet<string>, block: LetterBlock): boolean {
  if (block.kind === "list") return block.lines.every((line) => standing.has(line));
  return block.kind === "paragraph" && standing.has(block.text);
}

const known = new Map<LetterWords, ReadonlySet<string>>();

/** Every text of the house's words that takes nothing from a file. */
function standingTexts(words: LetterWords): ReadonlySet<string> {
  const found = known.get(words) ?? new Set(textsIn(words));
  known.set(words, found);
  return found;
}

function textsIn(words: unknown): string[] {
  if (typeof words === "string") return [words];
  if (words === null || typeof words !== "object") return [];
  return Object.values(words).flatMap(textsIn);
}
