import type { Fault, ObservationKind } from "./run.ts";

/** Plain English of what a camera saw, as a log says it. */
export const OBSERVATION_WORDS: Record<ObservationKind, string> = {
  "tie-in": "tie-in",
  fault: "defect",
  blockage: "blockage",
  crossing: "crossing",
  water: "water",
  deposit: "debris",
  material: "material",
  bend: "bend",
  cleanout: "cleanout",
  remark: "note",
};

/** In alphabetical order. */
export const FAULT_WORDS: Record<Fault, string> = {
  belly: "belly",
  broken: "broken",
  collapsed: "collapsed",
  "protruding-tie-in": "connection sticking into pipe",
  crack: "crack",
  deformed: "deformed",
  hole: "hole",
  infiltration: "infiltration",
  "offset-joint": "offset joint",
  "open-joint": "open joint",
  roots: "roots",
  "worn-surface": "worn pipe wall",
};
