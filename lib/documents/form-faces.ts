import * as fontkit from "@cantoo/fontkit";
import { type PDFDocument, type PDFFont, StandardFonts } from "@cantoo/pdf-lib";
import { regularFontBytes } from "./fonts.ts";

/** The typefaces to set words in. */
export interface Faces {
  /** A plain face that has every sign of the text: the usual one of forms wherever that will do. */
  readonly faceFor: (text: string) => Promise<PDFFont>;
}

export function facesOf(document: PDFDocument): Faces {
  let usual: PDFFont | null = null;
  let own: PDFFont | null = null;
  return {
    async faceFor(text) {
      usual ??= await document.embedFont(StandardFonts.Helvetica);
      if (hasEvery(usual, text)) return usual;
      if (own === null) {
        document.registerFontkit(fontkit);
        own = await document.embedFont(regularFontBytes());
      }
      return own;
    },
  };
}

function hasEvery(font: PDFFont, text: string): boolean {
  const known = new Set(font.getCharacterSet());
  return [...text].every((sign) => sign === "\n" || known.has(sign.codePointAt(0) ?? 0));
}

/** Line ends as one sign; other signs that print nothing as spaces. */
export function clean(text: string): string {
  return text
    .normalize("NFC")
    .replace(/\r\n?/g, "\n")
    .replace(/[^\P{Cc}\n]/gu, " ");
}
