import type { Anchor, Run, SelfLeveling } from "../facts/run.ts";
import { type Cft, formatFeet } from "../length/station.ts";
import { anchorWords } from "./anchor-words.ts";
import { anchorProblems, converterFor } from "./convert.ts";
import { FOOTAGE_WORDS, readingWords } from "./footage.ts";

const HEAD_WORDS: Record<SelfLeveling, string> = {
  yes: "Self-leveling head.",
  no: "The head turns, so its clock positions are kept as unsure and do not set a side.",
  unknown: "Whether the head is self-leveling is not recorded.",
};

/**
 * What follows for a reading from how a run was made and what it is tied to, in one or two sentences:
 * `31.5 ft on the counter is 60.5 ft from the main.` Where known points contradict it, what they ask.
 */
export function resultWords(run: Run, anchors: readonly Anchor[], counter: Cft): string {
  const [problem] = anchorProblems(run, anchors);
  if (problem !== undefined)
    return anchorWords(problem, { anchors, run, name: run.name || "the run" });
  const place = converterFor(run, anchors).toStation(counter);
  if (place === null)
    return `${readingWords(run, counter)} Once tied to a known point, it becomes feet from the main.`;
  return `${formatFeet(counter)} on the counter is ${formatFeet(place.station)} from the main.`;
}

/** How a run was made, in sentences: which way it looked, what it was measured from, its head. */
export function madeWords(run: Run): string {
  const flipped = run.looks === "downstream" ? " Its left is the right side looking upstream." : "";
  return `Looked ${run.looks}, its footage measured from ${FOOTAGE_WORDS[run.measuredFrom]}.${flipped} ${HEAD_WORDS[run.selfLeveling]}`;
}
