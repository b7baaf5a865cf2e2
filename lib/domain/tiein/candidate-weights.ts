import type { TestKind } from "../facts/test.ts";

/** What may speak for or against a property. */
export type ClueKind =
  | TestKind
  | "test-not-seen"
  | "test-inconclusive"
  | "entry-near"
  | "entry-far"
  | "entry-unplaced"
  | "same-build"
  | "other-build"
  | "other-side"
  | "lot-crossed"
  | "connected-without"
  | "candidate-without"
  | "no-record"
  | "between-neighbors"
  | "beside-neighbor"
  | "out-of-order"
  | "numbers-join-here"
  | "numbers-join-opposite"
  | "water-note"
  | "own-tie-in-near"
  | "has-own";

interface ClueWeight {
  readonly weight: number;
  /** What it is, for people who want to see how candidates are put in order. */
  readonly words: string;
}

/**
 * Every weight in one place. They only put candidates in order and are no probabilities. A test that
 * was seen outweighs place and record (trade practice: evidence before guess); one that saw nothing
 * weighs little, since slow pipes, traps and blockages hide dye.
 */
export const CLUE_WEIGHTS: Readonly<Record<ClueKind, ClueWeight>> = {
  excavation: { weight: 100, words: "Excavation showed it leads there" },
  dye: { weight: 40, words: "Dye from there was seen" },
  flow: { weight: 35, words: "Water from there was seen" },
  trace: { weight: 30, words: "A trace points there" },
  statement: { weight: 25, words: "A statement names it" },
  "entry-near": { weight: 15, words: "Record entry within 15 ft with no match" },
  "lot-crossed": { weight: 14, words: "The line crosses its lot here" },
  "connected-without": { weight: 12, words: "Connected, no tie-in of its own found" },
  smoke: { weight: 10, words: "Smoke showed there" },
  "candidate-without": { weight: 10, words: "Possibly connected, no tie-in known" },
  "between-neighbors": { weight: 9, words: "House number fits between the tie-ins on both sides" },
  "own-tie-in-near": { weight: 8, words: "Its own tie-in is within 15 ft" },
  "entry-unplaced": { weight: 6, words: "Record entry without a location" },
  "entry-far": { weight: 1, words: "Record entry farther away" },
  "water-note": { weight: 5, words: "Note mentions a water bill or meter" },
  "beside-neighbor": { weight: 4, words: "House number fits beyond the nearest tie-in" },
  "no-record": { weight: 3, words: "No record shows a connection of its own" },
  "numbers-join-here": { weight: 3, words: "Its side of the street joins on this side" },
  "same-build": { weight: 3, words: "Size and material are those on its record entry" },
  "test-inconclusive": { weight: 0, words: "Inconclusive test" },
  "other-build": { weight: -2, words: "Size or material differ from its record entry" },
  "test-not-seen": { weight: -3, words: "A test saw nothing (weak)" },
  "numbers-join-opposite": { weight: -3, words: "Its side of the street joins opposite" },
  "other-side": { weight: -4, words: "Its record entry lies on the other side" },
  "out-of-order": { weight: -4, words: "House number out of sequence here" },
  "has-own": { weight: -6, words: "It has a tie-in of its own already" },
};

/** One thing that speaks for a property (weight above 0) or against it. */
export interface Clue {
  readonly kind: ClueKind;
  readonly weight: number;
  readonly sentence: string;
}

export function clue(kind: ClueKind, sentence: string): Clue {
  return { kind, weight: CLUE_WEIGHTS[kind].weight, sentence };
}
