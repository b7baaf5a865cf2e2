import type { Mark } from "./mark.ts";
import type { Speech, Word } from "./speech.ts";

/** A mark with its place in the talk. */
export type Said<M extends Mark = Mark> = M & {
  /** Position among all marks. */
  readonly at: number;
  readonly clause: number;
  readonly sentence: number;
  /** The clause in which it was put right; its own where nothing was. */
  readonly until: number;
  /** Thousandths of a second; null in text without times. */
  readonly time: number | null;
};

export type Of<W extends Mark["what"]> = Said<Extract<Mark, { what: W }>>;

/** The talk with everything that was understood in it. */
export interface Talk {
  readonly speech: Speech;
  readonly said: readonly Said[];
}

export function talkOf(speech: Speech, marks: readonly Mark[]): Talk {
  const said = marks.map((mark, at): Said => {
    const word = speech.words[mark.from];
    return {
      ...mark,
      at,
      clause: word?.clause ?? 0,
      sentence: word?.sentence ?? 0,
      until: word?.clause ?? 0,
      time: word?.time ?? null,
    };
  });
  return { speech, said };
}

export function isTurn(mark: Mark | undefined, ...turns: readonly string[]): boolean {
  return mark?.what === "turn" && turns.includes(mark.turn);
}

/** The words of a span, small letters, one space between. */
export function wordsOf(talk: Talk, from: number, to: number): string {
  return talk.speech.words
    .slice(Math.max(0, from), Math.max(0, to))
    .map((word) => word.text)
    .join(" ");
}

/** The words of one clause. */
export function clauseWords(talk: Talk, clause: number): readonly Word[] {
  return talk.speech.words.filter((word) => word.clause === clause);
}

export function inClause(talk: Talk, clause: number): Said[] {
  return talk.said.filter((mark) => mark.clause === clause);
}

export function inSentence(talk: Talk, sentence: number): Said[] {
  return talk.said.filter((mark) => mark.sentence === sentence);
}

/** What stood in the text from one word to another, as it was written. */
export function quoteOf(talk: Talk, fromClause: number, toClause: number): string {
  const words = talk.speech.words.filter(
    (word) => word.clause >= fromClause && word.clause <= toClause,
  );
  const from = words[0]?.from ?? 0;
  const to = words.at(-1)?.to ?? from;
  return talk.speech.spoken.slice(from, to).trim();
}
