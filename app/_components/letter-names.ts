import type { LetterKind } from "#lib/domain/facts/notice.ts";
import { LETTER_SAID } from "#lib/domain/facts/notice-words.ts";
import { capital } from "#lib/domain/say/capital.ts";

/** The kinds of letter, as they stand alone. */
export const LETTER_NAMES = Object.fromEntries(
  Object.entries(LETTER_SAID).map(([kind, words]) => [kind, capital(words)]),
) as Record<LetterKind, string>;
