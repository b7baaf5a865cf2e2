import type { Tone } from "#lib/domain/strip/strip-shape.ts";

/** Colors on paper. They read the same in gray. */
export const INK: Record<Tone, string> = {
  ink: "#18222c",
  soft: "#55616c",
  faint: "#c3c9cc",
  loud: "#a8270f",
  paper: "#ffffff",
};
