import { LEDGER_WORDS } from "../ledger/words.ts";
import { LETTER_WORDS } from "./facts.ts";
import type { Letter, LetterBlock } from "./letter.ts";
import type { AccountPaper } from "./paper-frame.ts";
import type { LetterWords } from "./words-en.ts";

const WIDTH = 72;

type BlockOf<K extends LetterBlock["kind"]> = Extract<LetterBlock, { kind: K }>;

/**
 * A letter as plain text for the body of a mail message: the same facts in the same order, lines of
 * at most 72 signs where words allow it, the drawing as its sentences. A letter in two languages
 * says at its head that the other follows.
 */
export function letterText(letter: Letter): string {
  const { also } = letter;
  if (also === undefined) return textIn(letter);
  const { frame } = LETTER_WORDS[also.language];
  const below = `${frame.alsoHere[0]}: ${frame.below}`;
  return `${below}\n\n${textIn(letter)}\n${"=".repeat(WIDTH)}\n\n${textIn(also)}`;
}

/** An invoice as plain text for the body of the message that brings it, with how to object to it. */
export function invoiceText(paper: AccountPaper): string {
  const { also } = paper;
  if (also === undefined) return invoiceTextIn(paper);
  const { frame } = LETTER_WORDS[also.language];
  const below = `${frame.alsoHere[0]}: ${frame.below}`;
  return `${below}\n\n${invoiceTextIn(paper)}\n${"=".repeat(WIDTH)}\n\n${invoiceTextIn(also)}`;
}

function invoiceTextIn({
  language,
  from,
  to,
  aside,
  subject,
  blocks,
  footer,
  reference,
}: AccountPaper) {
  const words = LETTER_WORDS[language];
  const [name = ""] = to;
  const head = [
    ...from,
    "",
    name,
    ...aside.map(([label, value]) => `${label}: ${value}`),
    "",
    ...wrap(subject),
    "",
    ...wrap(`${LEDGER_WORDS[language].invoice.attached} ${words.cover.disputePast}`),
  ];
  const body = blocks.flatMap((block) => [
    "",
    ...blockLines(block, { closing: "", reference }, words),
  ]);
  return `${[...head, ...body, "", "-- ", ...wrap(footer)].join("\n")}\n`;
}

function textIn(letter: Letter): string {
  const words = LETTER_WORDS[letter.language];
  const [name = "", ...rest] = letter.from;
  const head = [
    name,
    ...rest,
    "",
    `${words.frame.date}: ${letter.date}`,
    `${words.frame.reference}: ${letter.reference}`,
    ...(letter.answerBy === "" ? [] : [`${words.frame.answerBy}: ${letter.answerBy}`]),
    "",
    ...wrap(letter.subject),
    "",
    letter.greeting,
  ];
  const body = letter.blocks.flatMap((block) => ["", ...blockLines(block, letter, words)]);
  return `${[...head, ...body, "", "-- ", ...wrap(letter.footer)].join("\n")}\n`;
}

type Ended = Pick<Letter, "closing" | "reference">;

function blockLines(block: LetterBlock, letter: Ended, words: LetterWords): string[] {
  switch (block.kind) {
    case "paragraph":
      return wrap(block.text);
    case "heading":
      return [block.text.toUpperCase()];
    case "list":
      return block.lines.flatMap((line) => wrap(line, "- ", "  "));
    case "table":
      return tableLines(block);
    case "amount":
      return [`${block.words}: ${block.amount}`];
    case "caution":
      return [`! ${block.title}`, ...wrap(block.text, "  ", "  ")];
    case "strip":
      return stripLines(block);
    case "pictures":
      return block.pictures.flatMap(({ caption }) => wrap(caption, `${words.picture.tag} `, "  "));
    case "signature":
      return [letter.closing, "", ...block.lines];
    case "answer-slip":
      return slipLines(block, letter, words);
  }
}

function stripLines({ drawing, caption }: BlockOf<"strip">): string[] {
  const sentences = [...drawing.above, ...drawing.onPipe, ...drawing.below]
    .toSorted((a, b) => a.station - b.station)
    .map((mark) => mark.sentence)
    .filter((sentence) => sentence !== "");
  return [...wrap(caption), ...sentences.flatMap((sentence) => wrap(sentence, "- ", "  "))];
}

function slipLines(
  { choices, returnBy }: BlockOf<"answer-slip">,
  letter: Ended,
  words: LetterWords,
): string[] {
  return [
    words.frame.slipTitle.toUpperCase(),
    ...(returnBy === "" ? [] : wrap(words.frame.slipBy(returnBy))),
    `${words.frame.slipAbout}: ${letter.reference}`,
    ...choices.flatMap((choice) => wrap(choice, "[ ] ", "    ")),
  ];
}

/** Columns side by side where they fit; else each row as its own short lines. */
function tableLines({ head, rows, numeric }: BlockOf<"table">): string[] {
  const titled = head.some((title) => title !== "");
  const all = titled ? [head, ...rows] : rows;
  const widths = head.map((_, column) => Math.max(...all.map((row) => (row[column] ?? "").length)));
  const total = widths.reduce((sum, width) => sum + width + 2, -2);
  if (total > WIDTH) return rows.flatMap((row) => stackedRow(head, row));
  return all.map((row) =>
    row
      .map((text, column) => {
        const width = widths[column] ?? 0;
        return numeric.includes(column) ? text.padStart(width) : text.padEnd(width);
      })
      .join("  ")
      .trimEnd(),
  );
}

function stackedRow(head: readonly string[], row: readonly string[]): string[] {
  const [first = "", ...rest] = row;
  const lines = rest.flatMap((text, index) => {
    if (text === "") return [];
    const title = head[index + 1] ?? "";
    return wrap(title === "" ? text : `${title}: ${text}`, "    ", "      ");
  });
  return [...wrap(first, "- ", "  "), ...lines];
}

function wrap(text: string, first = "", next = ""): string[] {
  const lines: string[] = [];
  let line = first;
  let empty = true;
  for (const word of text.split(/\s+/)) {
    if (!empty && line.length + 1 + word.length > WIDTH) {
      lines.push(line);
      line = next;
      empty = true;
    }
    line = empty ? `${line}${word}` : `${line} ${word}`;
    empty = false;
  }
  return [...lines, line];
}
