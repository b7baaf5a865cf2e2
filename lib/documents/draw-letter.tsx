import type { Letter } from "#lib/domain/paper/letter.ts";
import type { AccountPaper } from "#lib/domain/paper/paper-frame.ts";
import type { Statement } from "#lib/domain/paper/statement.ts";
import { accountPart } from "./account-document.tsx";
import { addressLayout } from "./address-layout.ts";
import { type Drawn, fewestPages } from "./fewest-pages.ts";
import type { Part } from "./join-pdf.ts";
import { leastPages } from "./least-pages.ts";
import { LetterDocument } from "./letter-document.tsx";
import { isPlain, LETTER_SETTINGS, PLAIN_SETTINGS } from "./letter-settings.ts";
import { readyPictures } from "./pictures.ts";
import { printable } from "./printable.ts";
import { statementPart } from "./statement-document.tsx";

/** A letter is set no closer than it has to be to keep to two pages in each of its languages. */
const MOST_PAGES = 2;

/** What goes into a letter's envelope behind it. */
export type Enclosed = Statement | readonly AccountPaper[];

/** A letter to draw, with what it encloses. */
export interface LetterTask {
  readonly letter: Letter;
  readonly enclosed: Enclosed | null;
}

/** One letter, and what it encloses behind it, each as a document of its own. */
export async function drawLetter(
  { letter, enclosed }: LetterTask,
  uploads: ReadonlyMap<string, Uint8Array>,
): Promise<(Part & Drawn)[]> {
  const drawn = await drawOne(letter, uploads);
  return enclosed === null ? [drawn] : [drawn, ...(await partsOf(enclosed))];
}

async function partsOf(papers: Enclosed): Promise<(Part & Drawn)[]> {
  if ("subject" in papers) return [await statementPart(papers)];
  const parts: (Part & Drawn)[] = [];
  for (const paper of papers) parts.push(await accountPart(paper));
  return parts;
}

async function drawOne(
  letter: Letter,
  uploads: ReadonlyMap<string, Uint8Array>,
): Promise<Part & Drawn> {
  const [name = ""] = letter.to;
  const clean = printable(letter, `The letter to ${name}`);
  const address = addressLayout(clean.to);
  const pictures = await readyPictures(clean.blocks, uploads);
  const languages = clean.also === undefined ? 1 : 2;
  const drawn = (settings: typeof LETTER_SETTINGS, most: number) =>
    fewestPages(
      settings,
      most * languages,
      (setting, total) => (
        <LetterDocument
          {...{ letter: clean, address, pictures, setting }}
          count={{ total, page: 0 }}
        />
      ),
      { least: (setting) => leastPages(clean, setting), counted: true },
    );
  const title = `${name}: ${clean.title}`;
  if (isPlain(clean)) {
    const plain = await drawn(PLAIN_SETTINGS, 1);
    if (plain.document.getPageCount() <= MOST_PAGES * languages) return { title, ...plain };
  }
  return { title, ...(await drawn(LETTER_SETTINGS, MOST_PAGES)) };
}
