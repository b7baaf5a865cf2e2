import type { LineFile } from "../facts/line-file.ts";
import type { Notice } from "../facts/notice.ts";
import { LETTER_SAID, METHOD_WORDS } from "../facts/notice-words.ts";
import { formatAddress, stateLetters } from "../party/address.ts";
import { mailTo } from "../party/mail-to.ts";
import type { Language } from "../say/language.ts";
import { formatDate } from "../time/format-day.ts";
import { inMailingOrder } from "./mailing-order.ts";

const LANGUAGE_NAMES: Record<Language, string> = { en: "English", es: "Spanish" };

export const LIST_HEAD = [
  "No.",
  "Name",
  "Care of",
  "Street",
  "Unit",
  "City",
  "State",
  "ZIP",
  "About",
  "Letter",
  "Language",
  "Email",
  "Method",
  "Date sent",
  "Tracking number",
] as const;

/** Letters in the order in which they are printed and put into trays. */
export function orderedNotices(file: LineFile, notices: readonly Notice[]): Notice[] {
  return inMailingOrder(notices, (notice) => mailTo(file, notice));
}

/** The mailing list of these letters, in mailing order: one row each, as text. */
export function mailingList(file: LineFile, notices: readonly Notice[]): string[][] {
  return orderedNotices(file, notices).map((notice, at) => {
    const party = file.parties.find(({ id }) => id === notice.partyId);
    const address = mailTo(file, notice);
    const about = file.properties.find(({ id }) => id === notice.propertyId);
    const attempt = file.deliveries.findLast(({ noticeId }) => noticeId === notice.id);
    const languages = [notice.language, ...(notice.alsoIn === null ? [] : [notice.alsoIn])];
    return [
      String(at + 1),
      party?.name ?? "",
      party?.careOf ?? "",
      address.street,
      address.unit,
      address.city,
      stateLetters(address.state),
      address.zip,
      about === undefined ? "" : formatAddress(about.address),
      LETTER_SAID[notice.kind],
      languages.map((language) => LANGUAGE_NAMES[language]).join(" and "),
      party?.email ?? "",
      attempt === undefined ? "" : METHOD_WORDS[attempt.method],
      attempt === undefined ? "" : formatDate(attempt.sentOn),
      attempt?.tracking ?? "",
    ];
  });
}
