import type { Cft } from "../../length/station.ts";
import { speechOf } from "../transcript/speech.ts";
import { marksIn } from "./scan.ts";

/** The first distance that some spoken words give: `the card has it at twenty-one`; null where they give none. */
export function distanceIn(words: string): Cft | null {
  const cue = { start: null, end: null, text: words, line: 1 };
  const marks = marksIn(speechOf([cue], "plain").words);
  const found = marks.find((mark) => mark.what === "distance" && mark.distance.kind === "at");
  return found?.what === "distance" ? found.distance.from : null;
}
