import type { Word } from "../transcript/word.ts";
import { groupedBy } from "./said.ts";

/** Nobody says so many words in a sentence; it is talk without points. */
const LONG = 30;

/** The sentences; those that are too long clause by clause. */
export function partsOf(words: readonly Word[]): Word[][] {
  return [...groupedBy(words, ({ sentence }) => sentence).values()].flatMap((sentence) =>
    sentence.length > LONG ? [...groupedBy(sentence, ({ clause }) => clause).values()] : [sentence],
  );
}
