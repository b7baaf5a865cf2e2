import type { PrintedWords } from "#lib/domain/form/printed-label.ts";

/** Letters above the line they stand on, as a part of their size. */
const RISE = 0.8;

/**
 * The words on a PDF’s pages with their places, upright ones alone. Nothing where it can’t be told: a
 * form is of use without them. Called in a process of its own, as whatever reads a stranger’s file.
 */
export async function printedWords(bytes: Uint8Array): Promise<PrintedWords[]> {
  try {
    // Loaded here, so that only the process that reads a form carries it.
    const { getDocument, Util, VerbosityLevel } = await import("pdfjs-dist/legacy/build/pdf.mjs");
    const document = await getDocument({
      data: new Uint8Array(bytes),
      isEvalSupported: false,
      disableFontFace: true,
      useSystemFonts: false,
      verbosity: VerbosityLevel.ERRORS,
    }).promise;
    const words: PrintedWords[] = [];
    for (let number = 1; number <= document.numPages; number += 1) {
      const page = await document.getPage(number);
      const { transform } = page.getViewport({ scale: 1 });
      for (const item of (await page.getTextContent()).items) {
        if (!("str" in item) || item.str.trim() === "") continue;
        const [, slant, , size, left, base] = Util.transform(transform, item.transform);
        const height = Math.abs(size);
        if (Math.abs(slant) > 0.01 * height) continue;
        words.push({
          ...{ page: number, left, top: base - height * RISE },
          ...{ width: item.width, height, text: item.str },
        });
      }
    }
    await document.destroy();
    return words;
  } catch {
    return [];
  }
}
