import { CONSENT_KINDS, type ConsentKind } from "../facts/consent.ts";
import { LETTERS, type LetterKind } from "../facts/letter-kind.ts";
import type { Notice } from "../facts/notice.ts";

/** The consents that a letter of this kind asks for, on screen or on paper. */
export function consentsAsked(kind: LetterKind): readonly ConsentKind[] {
  return LETTERS[kind].asks;
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
  return asksIn(frozen) ?? consentsAsked(kind);
}

/** What a frozen letter says that it asks for; null where it says nothing that can be read. */
function asksIn(frozen: string): readonly ConsentKind[] | null {
  try {
    const letter: unknown = JSON.parse(frozen);
    const asks = typeof letter === "object" && letter !== null ? Reflect.get(letter, "asks") : null;
    return Array.isArray(asks) ? CONSENT_KINDS.filter((kind) => asks.includes(kind)) : null;
  } catch {
    return null;
  }
}
