import * as fontkit from "@cantoo/fontkit";
import type { Language } from "#lib/domain/say/language.ts";
import type { Day } from "#lib/domain/time/day.ts";
import { regularFontBytes } from "./fonts.ts";
import { joinParts, type Part } from "./join-pdf.ts";
import { openPaper, type PrintedCode, stampCode } from "./stamp-code.ts";

/** A letter's own paper, and what is printed onto it for this mailing. */
export interface MailPiece {
  readonly title: string;
  readonly bytes: Uint8Array;
  readonly languages: readonly Language[];
  /** Null: it goes without a private page. */
  readonly code: PrintedCode | null;
}

/**
 * A mailing as one PDF: the stored papers of letters in the order given, each with the code of its
 * private page in the free part of its letterhead. With two sides of a sheet printed, a letter with an
 * odd number of pages gets an empty one behind, so that no letter begins on another's back.
 */
export async function renderMailing(
  pieces: readonly MailPiece[],
  about: { readonly title: string; readonly office: string; readonly day: Day },
): Promise<Uint8Array> {
  const parts: Part[] = [];
  for (const { title, bytes, languages, code } of pieces) {
    const document = await openPaper(bytes);
    const [first] = document.getPages();
    if (first !== undefined && code !== null) {
      document.registerFontkit(fontkit);
      const font = await document.embedFont(regularFontBytes(), { subset: true });
      stampCode(first, code, { font, languages });
      // Copied pages bring only what is written down.
      await document.flush();
    }
    if (document.getPageCount() % 2 === 1) document.addPage([612, 792]);
    parts.push({ title, document });
  }
  const joined = await joinParts(parts, {
    title: about.title,
    author: about.office,
    subject: pieces.map(({ title }) => title).join(", "),
    language: "en",
    day: about.day,
  });
  return joined.save();
}
