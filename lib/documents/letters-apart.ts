import os from "node:os";
import { PDFDocument } from "@cantoo/pdf-lib";
import { type Limits, openApart } from "#lib/apart/apart.ts";
import { drawLetter, type LetterTask } from "./draw-letter.tsx";
import { readyFonts } from "./fonts.ts";
import type { Part } from "./join-pdf.ts";

const ENTRY = "lib/documents/letters.apart.ts";

/** So many letters are drawn until another process is up: it gets as many fewer than this one. */
const STARTING = 19;
/** Another process is worth its start from so many letters for each. */
const WORTH_ANOTHER = 20;
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
  const [own = [], ...others] = sharesOf(tasks, processes);
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

/** In their order: what this process draws, then what each other does; none of them nothing. */
export function sharesOf<T>(all: readonly T[], processes: number): T[][] {
  const others = processes - 1;
  const even = Math.ceil((all.length + STARTING * others) / processes);
  const own = Math.min(even, Math.max(1, all.length - others));
  const share = Math.ceil((all.length - own) / Math.max(1, others));
  const parts = Array.from({ length: others }, (_, at) =>
    all.slice(own + at * share, own + (at + 1) * share),
  );
  return [all.slice(0, own), ...parts].filter((part) => part.length > 0);
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
