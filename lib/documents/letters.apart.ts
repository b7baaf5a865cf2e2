// A process of its own that draws a share of many letters; letters-apart.ts asks it.
import { workApart } from "#lib/apart/work-apart.ts";
import { drawLetter } from "./draw-letter.tsx";
import { readyFonts } from "./fonts.ts";
import type { DrawnPart, LettersToDraw } from "./letters-apart.ts";

workApart(async ({ tasks, uploads }: LettersToDraw): Promise<DrawnPart[]> => {
  await readyFonts();
  const parts: DrawnPart[] = [];
  for (const task of tasks)
    for (const { title, bytes } of await drawLetter(task, uploads)) parts.push({ title, bytes });
  return parts;
});
