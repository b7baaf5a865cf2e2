import type { Notice } from "#lib/domain/facts/notice.ts";
import type { LetterLanguages } from "#lib/domain/party/letter-languages.ts";

const LETTER_LANGUAGES: Record<string, LetterLanguages> = {
  en: { language: "en", alsoIn: null },
  es: { language: "es", alsoIn: null },
  "en es": { language: "en", alsoIn: "es" },
  "es en": { language: "es", alsoIn: "en" },
};

/** What a draft's list of languages offers. */
export const LANGUAGE_CHOICES = [
  { value: "en", label: "English" },
  { value: "es", label: "Spanish" },
  { value: "en es", label: "English, then Spanish" },
  { value: "es en", label: "Spanish, then English" },
];

/** As the list of languages has it. */
export function languageChoice({ language, alsoIn }: LetterLanguages): string {
  return alsoIn === null ? language : `${language} ${alsoIn}`;
}

/** What was chosen in the list; nothing where it is none of its words. */
export function languagesOf(choice: string): { readonly languages?: LetterLanguages } {
  const languages = LETTER_LANGUAGES[choice];
  return languages === undefined ? {} : { languages };
}

/** Beside a name where a letter is in more than English; empty where it is not. */
export function languageWords({ language, alsoIn }: Pick<Notice, "language" | "alsoIn">): string {
  if (alsoIn !== null) return "in English and Spanish";
  return language === "es" ? "in Spanish" : "";
}
