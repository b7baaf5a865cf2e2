import type { LetterKind } from "../letter/notice.ts";
import type { ConsentKind } from "./consent.ts";

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
