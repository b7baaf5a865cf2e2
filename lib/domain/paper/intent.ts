import type { ScreenKind, Terms } from "../consent/signable.ts";
import type { LinkWords } from "../consent/words-en.ts";
import { formatCents } from "../money/format-cents.ts";
import type { Letter } from "./letter.ts";

interface Intended {
  readonly kind: ScreenKind;
  readonly terms: Terms;
  readonly office: string;
  readonly place: string;
  readonly letter: Pick<Letter, "reference">;
  /** The letter's date in the language of the sentence. */
  readonly date: string;
}

/**
 * The sentence that is ticked before signing: one kind of consent, on what, by which letter. The
 * page shows it and the signature keeps it, both from here.
 */
export function intentSentence(
  words: LinkWords,
  { kind, terms, office, place, letter, date }: Intended,
): string {
  const put = { office, place, reference: letter.reference, date };
  const what =
    kind === "pay"
      ? words.intents.pay(put, formatCents(terms.amount ?? 0), terms.versionNumber ?? 0)
      : words.intents[kind](put);
  return `${what} ${words.intentLetter(put)}`;
}
