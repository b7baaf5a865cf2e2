import type { LineFile } from "../facts/line-file.ts";
import type { Notice } from "../facts/notice.ts";
import type { Language } from "../say/language.ts";
import { LETTER_WORDS } from "./facts.ts";
import type { Letter } from "./letter.ts";

/**
 * The date of a letter that was sent, in the language in which somebody reads about it: the letter
 * itself carries it in its own. As the letter has it where no delivery says which day it was.
 */
export function letterDate(
  { deliveries }: Pick<LineFile, "deliveries">,
  { notice, letter }: { notice: Pick<Notice, "id">; letter: Pick<Letter, "date" | "language"> },
  language: Language,
): string {
  const sent = deliveries.find(
    ({ noticeId, sentOn }) =>
      noticeId === notice.id && LETTER_WORDS[letter.language].day(sentOn) === letter.date,
  );
  return sent === undefined ? letter.date : LETTER_WORDS[language].day(sent.sentOn);
}
