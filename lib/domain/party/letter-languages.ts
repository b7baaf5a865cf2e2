import type { LineFile, Office } from "../facts/line-file.ts";
import type { Party, PartyLanguage, Property } from "../facts/party.ts";
import { LANGUAGES, type Language } from "../say/language.ts";

/** The language that comes first in a letter, and the one that follows in the same document. */
export interface LetterLanguages {
  readonly language: Language;
  readonly alsoIn: Language | null;
}

/** What besides the reader's own wish decides on the languages of a letter. */
interface Asked {
  readonly property: Pick<Property, "bothLanguages"> | null;
  readonly office: Pick<Office, "bothLanguages">;
}

/**
 * In which languages a letter goes to somebody: both where they or the property ask for both, or
 * where nobody has asked them and the office says so; else their own, English where it is unknown.
 * A public body that was never asked gets English.
 */
export function letterLanguages(
  { kind, language: wish }: Pick<Party, "kind" | "language">,
  { property, office }: Asked,
): LetterLanguages {
  const language = firstLanguage(wish);
  const both =
    wish === "both" ||
    (kind !== "public-body" &&
      (property?.bothLanguages === true || (wish === "unknown" && office.bothLanguages)));
  return { language, alsoIn: both ? otherLanguage(language) : null };
}

/** `letterLanguages` by the ids of a letter; without an office set up none asks for both. */
export function letterLanguagesIn(
  { parties, properties }: Pick<LineFile, "parties" | "properties">,
  office: Pick<Office, "bothLanguages"> | null,
): (to: { readonly partyId: string; readonly propertyId: string | null }) => LetterLanguages {
  return ({ partyId, propertyId }) => {
    const party = parties.find(({ id }) => id === partyId);
    const property = properties.find(({ id }) => id === propertyId) ?? null;
    if (party === undefined) return { language: "en", alsoIn: null };
    return letterLanguages(party, { property, office: office ?? { bothLanguages: false } });
  };
}

/** The language to begin with; English unless Spanish alone was asked for. */
function firstLanguage(wish: PartyLanguage): Language {
  return wish === "es" ? "es" : "en";
}

function otherLanguage(language: Language): Language {
  return language === "en" ? "es" : "en";
}

/** Every language that one of several readers of the same paper wants, the first reader's first. */
export function languagesOfAll(
  readers: readonly Pick<Party, "kind" | "language">[],
  asked: Asked,
): readonly [Language, ...Language[]] {
  const each = readers.flatMap((reader) => {
    const { language, alsoIn } = letterLanguages(reader, asked);
    return alsoIn === null ? [language] : [language, alsoIn];
  });
  const [first = "en", ...rest] = each;
  return [first, ...LANGUAGES.filter((one) => one !== first && rest.includes(one))];
}
