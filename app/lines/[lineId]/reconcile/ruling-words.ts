import type { RulingKind } from "#lib/domain/facts/ruling.ts";

/** Rulings as choices of a form. */
export const RULING_CHOICES: Record<RulingKind, string> = {
  legalise: "It may stay, with permit, fees and agreement",
  disconnect: "It is to be cut off until it complies",
  "own-connection": "It is to get a connection of its own",
  "accepted-as-legacy": "It is accepted as it is, from before the rule",
  "record-corrected": "The record was wrong; the as-built corrects it",
  cap: "It is to be capped, being proven dead",
  "evidence-asked": "More evidence is wanted first",
};
