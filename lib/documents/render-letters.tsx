import type { Letter } from "#lib/domain/paper/letter.ts";
import type { Enclosed } from "./draw-letter.tsx";
import { joinParts } from "./join-pdf.ts";
import { drawLetters } from "./letters-apart.ts";

/**
 * Letters as one PDF in Letter size, each from a fresh page with its own page numbers and a place
 * in the outline; ready to print, fold at the ticks and put into #10 window envelopes. The same
 * letters give the same bytes. `uploads` are the bytes of the stored pictures that they name, by id;
 * one that is not there leaves its caption alone. What a letter encloses follows it. Slow (some
 * 100 to 200 ms a letter), many of them on several processors: for the worker process only.
 * Throws DocumentRefused with words where a letter cannot be printed as it is, or none is given.
 */
export async function renderLetters(
  letters: readonly Letter[],
  uploads: ReadonlyMap<string, Uint8Array> = new Map(),
  enclosed: ReadonlyMap<Letter, Enclosed> = new Map(),
): Promise<Uint8Array> {
  const [first] = letters;
  if (!first) throw new RangeError("Cannot render letters: none given");
  const tasks = letters.map((letter) => ({ letter, enclosed: enclosed.get(letter) ?? null }));
  const parts = await drawLetters(tasks, uploads);
  const joined = await joinParts(parts, {
    title: letters.length === 1 ? first.subject : `${letters.length} letters`,
    author: first.from[0] ?? "",
    subject: letters.map(({ reference }) => reference).join(", "),
    language: first.language,
    day: first.day,
  });
  return joined.save();
}
