import os from "node:os";
import { PDFDocument } from "@cantoo/pdf-lib";
import { type Limits, openApart } from "#lib/apart/apart.ts";
import { drawLetter, type LetterTask } from "./draw-letter.tsx";
import { readyFonts } from "./fonts.ts";
import type { Part } from "./join-pdf.ts";

const ENTRY = "lib/documents/letters.apart.ts";

/** Fewer are drawn sooner than a second process is up. */
const WORTH_ANOTHER = 8;
/** Each process holds some 300 MB of typefaces and pages. */
const MOST_PROCESSES = 4;
const LIMITS: Limits = { time: 20 * 60_000, memory: 1_500 };

/** Letters for another process to draw, with the pictures that they name. */
export interface LettersToDraw {
  readonly tasks: readonly LetterTask[];
  readonly uploads: ReadonlyMap<string, Uint8Array>;
}

export type DrawnPart = Pick<Part, "title"> & { readonly bytes: Uint8Array };

/**
 * All letters as documents, in their order. Many are drawn on several processors, a share on each,
 * and come out the same byte for byte; `processes` says how many work, this one among them. What
 * another process could not draw, this one does, so that a refusal is told in its words.
 */
export async function drawLetters(
  tasks: readonly LetterTask[],
  uploads: ReadonlyMap<string, Uint8Array>,
  processes = processesFor(tasks.length),
): Promise<Part[]> {
  await readyFonts();
  const share = Math.ceil(tasks.length / processes);
  const [own = [], ...others] = Array.from({ length: processes }, (_, at) =>
    tasks.slice(at * share, (at + 1) * share),
  );
  // Waited for together: where one is refused, nothing is left that fails unheard.
  const [mine, theirs] = await Promise.all([
    drawnHere(own, uploads),
    Promise.all(others.map((each) => drawnApart({ tasks: each, uploads }))),
  ]);
  const parts = [mine];
  for (const [at, found] of theirs.entries())
    parts.push(found ?? (await drawnHere(others[at] ?? [], uploads)));
  return parts.flat();
}

function processesFor(letters: number): number {
  const useful = Math.floor(letters / WORTH_ANOTHER);
  return Math.max(1, Math.min(useful, os.availableParallelism(), MOST_PROCESSES));
}

async function drawnHere(
  tasks: readonly LetterTask[],
  uploads: ReadonlyMap<string, Uint8Array>,
): Promise<Part[]> {
  const parts: Part[] = [];
  for (const task of tasks) parts.push(...(await drawLetter(task, uploads)));
  return parts;
}

/** Null where the other process gave no answer. */
async function drawnApart(letters: LettersToDraw): Promise<Part[] | null> {
  const other = openApart<LettersToDraw, DrawnPart[]>(ENTRY, LIMITS);
  try {
    const answer = await other.ask(letters);
    if (!answer.ok) return null;
    return await Promise.all(answer.value.map(readBack));
  } finally {
    other.close();
  }
}

async function readBack({ title, bytes }: DrawnPart): Promise<Part> {
  return { title, document: await PDFDocument.load(bytes, { updateMetadata: false }) };
}
