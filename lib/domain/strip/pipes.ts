import type { LineFile } from "../facts/line-file.ts";
import { MATERIAL_WORDS } from "../facts/line-words.ts";
import type { Report } from "../findings/report.ts";
import type { Cft } from "../length/station.ts";
import type { StripBand, StripPipe } from "./drawing.ts";

/** The trunk as pieces of one material and size each; reaches that are alike are one piece. */
export function pipesOf(file: LineFile, report: Report, extent: Cft): StripPipe[] {
  const pipes: StripPipe[] = [];
  for (const { from, to, material, diameter } of report.reaches) {
    const words = pipeWords(MATERIAL_WORDS[material], diameter);
    const last = pipes.at(-1);
    if (last !== undefined && last.to === from && last.words === words) {
      pipes[pipes.length - 1] = { ...last, to };
    } else pipes.push({ from, to, material, words });
  }
  if (pipes.length > 0) return pipes;
  const { material, diameter } = file.line;
  return [{ from: 0, to: extent, material, words: pipeWords(MATERIAL_WORDS[material], diameter) }];
}

/** `6 in PVC`; what is not known of either is said. */
export function pipeWords(material: string, diameter: number | null): string {
  const word = material === "unknown" ? "material unknown" : material;
  return diameter === null ? word : `${diameter} in ${word}`;
}

/**
 * The pipe in words, piece by piece, where the legend cannot tell them apart: pieces of one material in
 * several sizes.
 */
export function sizeBands(pipes: readonly StripPipe[]): StripBand[] {
  const words = new Set(pipes.map((pipe) => pipe.words));
  const materials = new Set(pipes.map(({ material }) => material));
  return words.size > materials.size ? [pipeBand(pipes)] : [];
}

/** The pipe in words, piece by piece, as a band under it. */
export function pipeBand(pipes: readonly StripPipe[]): StripBand {
  const cells = pipes.map(({ from, to, words }) => ({
    from,
    to,
    words,
    loud: false,
    hatch: "none" as const,
  }));
  return { title: "Pipe", cells };
}
