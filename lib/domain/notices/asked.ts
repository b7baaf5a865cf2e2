import type { ConsentKind } from "../facts/consent.ts";
import type { LetterKind, Notice } from "../facts/notice.ts";

/** What each letter puts to its reader for consent. */
const ASKED: Record<LetterKind, readonly ConsentKind[]> = {
  finding: [],
  "tie-in-inquiry": [],
  "test-visit": ["enter"],
  "proposed-split": ["pay"],
  "entry-consent": ["enter", "dig"],
  "joint-agreement": ["agreement-signed"],
  "work-start": [],
  "drain-pause": [],
  spill: [],
  "share-demand": [],
  "authority-response": [],
  "close-out": [],
};

/** The consents that a letter of this kind asks for, on screen or on paper. */
export function consentsAsked(kind: LetterKind): readonly ConsentKind[] {
  return ASKED[kind];
}

/**
 * The consents that this very letter asks for, as it says itself; before it was sent, or where it was
 * frozen before letters said so, those of its kind. A visit at which nobody comes in asks for none.
 */
export function consentsAskedBy({
  kind,
  frozen,
}: Pick<Notice, "kind" | "frozen">): readonly ConsentKind[] {
  if (kind !== "test-visit" || frozen === null) return consentsAsked(kind);
  return (JSON.parse(frozen) as { asks?: readonly ConsentKind[] }).asks ?? consentsAsked(kind);
}
