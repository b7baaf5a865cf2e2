import type { RulingKind } from "#lib/domain/facts/ruling.ts";

/** Rulings as choices of a form. */
export const RULING_CHOICES: Record<RulingKind, string> = {
  legalise: "May remain, with permit, fees and agreement",
  disconnect: "Disconnect until compliant",
  "own-connection": "Must get its own connection",
  "accepted-as-legacy": "Accepted as is (grandfathered)",
  "record-corrected": "Record was wrong; the as-built corrects it",
  cap: "Cap (proven inactive)",
  "evidence-asked": "More evidence required",
};
