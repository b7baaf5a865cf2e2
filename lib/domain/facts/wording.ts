import type { Language } from "../say/language.ts";
import type { Instant } from "../time/day.ts";
import type { LetterKind } from "./notice.ts";

/** The house’s own wording, as a version. */
export const HOUSE_WORDING = 0;

/** How the office words one kind of letter in one language. A version is never changed. */
export interface Wording {
  readonly kind: LetterKind;
  readonly language: Language;
  /** From 1. */
  readonly version: number;
  /** Paragraphs, headings and lists with fields in braces (wording/parse-wording.ts). */
  readonly text: string;
  readonly savedBy: string;
  readonly savedAt: Instant;
}

/** From when a version is the one that letters are written in; the house’s is `HOUSE_WORDING`. */
export interface WordingUse extends Pick<Wording, "kind" | "language" | "version"> {
  readonly by: string;
  readonly at: Instant;
}
