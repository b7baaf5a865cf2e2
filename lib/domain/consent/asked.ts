import type { LetterKind } from "../letter/notice.ts";
import type { ConsentKind } from "./consent.ts";
import { askedOnScreen } from "./signable.ts";

/** The consents that a letter of this kind asks for, on screen or on paper. */
export function consentsAsked(kind: LetterKind): readonly ConsentKind[] {
  return kind === "joint-agreement" ? ["agreement-signed"] : askedOnScreen(kind);
}
