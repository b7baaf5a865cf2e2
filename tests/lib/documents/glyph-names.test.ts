import { expect, test } from "vitest";
import { renderLetters } from "#lib/documents/render-letters.tsx";
import { composeLetter } from "#lib/domain/paper/compose.ts";
import type { Letter } from "#lib/domain/paper/letter.ts";
import { readPdf } from "#tests/support/pdf.ts";
import { sampleLine, sampleNotice } from "#tests/support/sample-line.ts";

/** Rendering is slow where other work runs beside it. */
/** A letter with nothing in it but these words. */
function letterOf(text: string): Letter {
  const letter = composeLetter({ ...sampleLine(), notice: sampleNotice("ottilie", "p12") });
  return { ...letter, blocks: [{ kind: "paragraph", text }] };
}

// Alone in its file: the renderer keeps glyphs for the whole process, and this is about the first.
test("renderLetters() keeps a mark readable that an earlier letter used as a part of another", async () => {
  await renderLetters([letterOf("“Joint sewer agreement”")]);
  const text = readPdf(await renderLetters([letterOf("The owner’s word")])).text(1);
  expect(text).toContain("The owner’s word");
});
