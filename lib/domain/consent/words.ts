import { formatPhone } from "../party/phone.ts";
import type { Language } from "../say/language.ts";
import { EN, type LinkWords } from "./words-en.ts";
import { ES } from "./words-es.ts";

/** The words of a private link's page, by language. */
export const LINK_WORDS: Record<Language, LinkWords> = { en: EN, es: ES };

/** Changes whenever a word of the consent to electronic records does. */
export const DISCLOSURE_VERSION = "2026-11-27.2";

/** The consent to electronic records as it is shown and kept: one text, its paragraphs parted. */
export function disclosureText(
  language: Language,
  office: { readonly name: string; readonly phone: string; readonly email: string },
): string {
  const reach = [formatPhone(office.phone), office.email].filter((each) => each !== "").join(", ");
  const contact = reach === "" ? "" : `, ${reach}`;
  return LINK_WORDS[language].disclosure(office.name, contact).join("\n\n");
}
