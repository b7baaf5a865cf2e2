import { agreementProgress } from "../agreement/agreement-progress.ts";
import type { Agreement } from "../facts/authority.ts";
import type { LineFile, Office } from "../facts/line-file.ts";
import { plainFeet } from "../length/station.ts";
import { addressLines, formatAddress } from "../party/address.ts";
import { letterLanguagesIn } from "../party/letter-languages.ts";
import type { Language } from "../say/language.ts";
import type { Day } from "../time/day.ts";
import { formatDate } from "../time/format-day.ts";
import { AGREEMENT_WORDS, type AgreementWords, READING_COPY } from "./agreement-words.ts";
import { EN } from "./words-en.ts";
import { ES } from "./words-es.ts";

/** The draft of an agreement that is to be recorded, as data. What is not known is a blank to fill in. */
export interface AgreementPaper {
  readonly language: Language;
  /** Of a copy that is for reading alone: what it is, in its language and in English; null: the draft. */
  readonly copy: typeof READING_COPY | null;
  readonly title: string;
  readonly day: Day;
  readonly draft: string;
  /** To whom the county recorder sends it back. */
  readonly returnTo: readonly string[];
  readonly parties: readonly AgreementPartyPaper[];
  readonly lots: readonly AgreementLot[];
  readonly sections: readonly { readonly title: string; readonly text: readonly string[] }[];
}

interface AgreementPartyPaper {
  readonly name: string;
  readonly lots: string;
}

interface AgreementLot {
  readonly place: string;
  readonly parcel: string;
  readonly legal: string;
  readonly share: string;
}

const BLANK = "____________________";
const SHORT_BLANK = "__________";

interface Composed {
  readonly file: LineFile;
  readonly office: Office;
  readonly today: Day;
}

/** Composes the draft. Nothing in it is anybody’s law: the terms are what was typed in the file. */
export function agreementPaper(facts: Composed, agreement: Agreement): AgreementPaper {
  return composed(facts, agreement, "en");
}

/**
 * The draft in Spanish, to read beside it: with no line to sign on and no room for a recorder. Null
 * where no title holder is written to in Spanish.
 */
export function readingCopy(facts: Composed, agreement: Agreement): AgreementPaper | null {
  const languagesOf = letterLanguagesIn(facts.file, facts.office);
  const { holders } = agreementProgress(facts.file, agreement);
  const wanted = holders.some(({ partyId, propertyIds }) =>
    propertyIds.some((propertyId) => {
      const { language, alsoIn } = languagesOf({ partyId, propertyId });
      return language === "es" || alsoIn === "es";
    }),
  );
  return wanted ? composed(facts, agreement, "es") : null;
}

function composed(
  { file, office, today }: Composed,
  agreement: Agreement,
  language: Language,
): AgreementPaper {
  const words = AGREEMENT_WORDS[language];
  const { holders } = agreementProgress(file, agreement);
  const placeOf = (propertyId: string) => {
    const property = file.properties.find(({ id }) => id === propertyId);
    return property === undefined ? BLANK : formatAddress(property.address) || BLANK;
  };
  return {
    language,
    copy: language === "es" ? READING_COPY : null,
    title: words.title(agreement.title),
    day: today,
    draft: words.draft(
      language === "en" ? formatDate(today) : ES.day(today),
      file.authority?.name ?? null,
    ),
    returnTo: [office.name, ...addressLines(office.address)],
    parties: holders.map(({ holder, capacity, capacityMissing, propertyIds }) => ({
      name: partyName(words, { holder, capacity: capacityMissing ? BLANK : capacity }),
      lots: propertyIds.map(placeOf).join("; "),
    })),
    lots: lotsOf(file, agreement, { placeOf, language }),
    sections: sectionsOf(file, agreement, language),
  };
}

function partyName(
  words: AgreementWords,
  { holder, capacity }: { readonly holder: string; readonly capacity: string },
): string {
  return capacity === "" ? holder : words.by(holder, capacity);
}

function lotsOf(
  file: LineFile,
  { shares }: Agreement,
  { placeOf, language }: { placeOf: (propertyId: string) => string; language: Language },
): AgreementLot[] {
  const named = shares.filter(({ parts }) => parts > 0);
  const all = named.reduce((sum, { parts }) => sum + parts, 0);
  return named.map(({ propertyId, parts }) => {
    const property = file.properties.find(({ id }) => id === propertyId);
    return {
      place: placeOf(propertyId),
      parcel: property?.parcel || SHORT_BLANK,
      legal: property?.legalDescription || BLANK,
      share: AGREEMENT_WORDS[language].parts(parts, all),
    };
  });
}

function sectionsOf(
  file: LineFile,
  agreement: Agreement,
  language: Language,
): AgreementPaper["sections"] {
  const words = AGREEMENT_WORDS[language];
  return [
    {
      title: words.pipe,
      text: [pipeText(file, language), coversText(agreement, language)],
    },
    { title: words.shares, text: [words.sharesAre] },
    { title: words.terms, text: termsText(agreement, language) },
  ];
}

function pipeText({ line }: LineFile, language: Language): string {
  const words = AGREEMENT_WORDS[language];
  const { material } = language === "en" ? EN : ES;
  const more = [
    line.upperEnd === null ? "" : words.long(plainFeet(line.upperEnd)),
    line.diameter === null ? "" : words.wide(String(line.diameter)),
    line.material === "unknown" ? "" : `, ${material[line.material]}`,
  ];
  return words.pipeIs(line.name, line.town || BLANK, more.join(""));
}

function coversText({ fromStation, toStation }: Agreement, language: Language): string {
  const { covers } = AGREEMENT_WORDS[language];
  if (fromStation === null && toStation === null) return covers.whole;
  const from = plainFeet(fromStation ?? 0);
  return toStation === null ? covers.up(from) : covers.between(from, plainFeet(toStation));
}

function termsText({ terms, termsEs }: Agreement, language: Language): string[] {
  const { termsInEnglish } = AGREEMENT_WORDS[language];
  const own = paragraphs(language === "es" ? termsEs : terms);
  if (own.length > 0) return own;
  const english = paragraphs(terms);
  if (english.length > 0) return [termsInEnglish, ...english];
  return [`${BLANK}${BLANK}${BLANK}`, `${BLANK}${BLANK}${BLANK}`];
}

function paragraphs(text: string): string[] {
  return text
    .split(/\n+/)
    .map((each) => each.trim())
    .filter((each) => each !== "");
}
