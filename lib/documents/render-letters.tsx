import type { Letter } from "#lib/domain/paper/letter.ts";
import type { AccountPaper } from "#lib/domain/paper/paper-frame.ts";
import type { Statement } from "#lib/domain/paper/statement.ts";
import { accountPart } from "./account-document.tsx";
import { addressLayout } from "./address-layout.ts";
import { fewestPages } from "./fewest-pages.ts";
import { readyFonts } from "./fonts.ts";
import { joinParts, type Part } from "./join-pdf.ts";
import { LetterDocument } from "./letter-document.tsx";
import { isPlain, LETTER_SETTINGS, PLAIN_SETTINGS } from "./letter-settings.ts";
import { readyPictures } from "./pictures.ts";
import { printable } from "./printable.ts";
import { statementPart } from "./statement-document.tsx";

/** A letter is set no closer than it has to be to keep to two pages in each of its languages. */
const MOST_PAGES = 2;

/**
 * Letters as one PDF in Letter size, each from a fresh page with its own page numbers and a place
 * in the outline; ready to print, fold at the ticks and put into #10 window envelopes. The same
 * letters give the same bytes. `uploads` are the bytes of the stored pictures that they name, by id;
 * one that is not there leaves its caption alone. An enclosed statement or invoices follow their letter. Slow (some 100 ms a letter): for the worker process only.
 * Throws DocumentRefused with words where a letter cannot be printed as it is, or none is given.
 */
export async function renderLetters(
  letters: readonly Letter[],
  uploads: ReadonlyMap<string, Uint8Array> = new Map(),
  enclosed: ReadonlyMap<Letter, Statement | readonly AccountPaper[]> = new Map(),
): Promise<Uint8Array> {
  const [first] = letters;
  if (!first) throw new RangeError("Cannot render letters: none given");
  await readyFonts();
  const parts: Part[] = [];
  for (const letter of letters) {
    parts.push(await renderOne(letter, uploads));
    const papers = enclosed.get(letter);
    if (papers !== undefined) parts.push(...(await partsOf(papers)));
  }
  const joined = await joinParts(parts, {
    title: letters.length === 1 ? first.subject : `${letters.length} letters`,
    author: first.from[0] ?? "",
    subject: letters.map(({ reference }) => reference).join(", "),
    language: first.language,
    day: first.day,
  });
  return joined.save();
}

async function partsOf(papers: Statement | readonly AccountPaper[]): Promise<Part[]> {
  if ("subject" in papers) return [await statementPart(papers)];
  const parts: Part[] = [];
  for (const paper of papers) parts.push(await accountPart(paper));
  return parts;
}

async function renderOne(letter: Letter, uploads: ReadonlyMap<string, Uint8Array>): Promise<Part> {
  const [name = ""] = letter.to;
  const clean = printable(letter, `The letter to ${name}`);
  const address = addressLayout(clean.to);
  const pictures = await readyPictures(clean.blocks, uploads);
  const languages = clean.also === undefined ? 1 : 2;
  const drawn = (settings: typeof LETTER_SETTINGS, most: number) =>
    fewestPages(settings, most * languages, (setting) => (
      <LetterDocument letter={clean} address={address} pictures={pictures} setting={setting} />
    ));
  const title = `${name}: ${clean.title}`;
  if (isPlain(clean)) {
    const document = await drawn(PLAIN_SETTINGS, 1);
    if (document.getPageCount() <= MOST_PAGES * languages) return { title, document };
  }
  return { title, document: await drawn(LETTER_SETTINGS, MOST_PAGES) };
}
