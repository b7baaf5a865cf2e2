import type { Speech } from "../transcript/speech.ts";
import type { Mark, Span } from "../vocabulary/mark.ts";

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
  readonly clauses: ReadonlyMap<number, readonly Said[]>;
  readonly sentences: ReadonlyMap<number, readonly Said[]>;
  /** Words of each clause, by their indexes. */
  readonly spans: readonly Span[];
}

/** The speech with its marks by clause and sentence. */
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
  return talkWith(speech, said);
}

/** The talk with these marks, looked up by clause and by sentence. */
export function talkWith(speech: Speech, said: readonly Said[]): Talk {
  const clauses = groupedBy(said, (mark) => mark.clause);
  const sentences = groupedBy(said, (mark) => mark.sentence);
  return { speech, said, clauses, sentences, spans: spansOf(speech) };
}

/** Marks or words by what each has. */
export function groupedBy<T, K>(said: readonly T[], key: (mark: T) => K): Map<K, T[]> {
  const groups = new Map<K, T[]>();
  for (const mark of said) {
    const group = groups.get(key(mark));
    if (group) group.push(mark);
    else groups.set(key(mark), [mark]);
  }
  return groups;
}

function spansOf({ words }: Speech): Span[] {
  const spans: Span[] = [];
  for (const [index, { clause }] of words.entries())
    spans[clause] = { from: spans[clause]?.from ?? index, to: index + 1 };
  return spans;
}

/** Whether a mark is a turn of the talk, of one of these ways. */
export function isTurn(mark: Mark | undefined, ...turns: readonly string[]): boolean {
  return mark?.what === "turn" && turns.includes(mark.turn);
}

/** What is one kind of row: the fault, else the kind. */
export function labelOf({ thing }: Of<"thing">): string {
  return thing.fault ?? thing.kind;
}

/** The words of a span, small letters, one space between. */
export function wordsOf(talk: Talk, from: number, to: number): string {
  return talk.speech.words
    .slice(Math.max(0, from), Math.max(0, to))
    .map((word) => word.text)
    .join(" ");
}

/** The words of one clause. */
export function clauseWords(talk: Talk, clause: number): string {
  const span = spanAt(talk, clause);
  return wordsOf(talk, span.from, span.to);
}

/** The words of the clauses in which a sentence says anything that was understood. */
export function sentenceWords(talk: Talk, sentence: number): string {
  const marks = inSentence(talk, sentence);
  const first = marks[0];
  const last = marks.at(-1);
  if (!first || !last) return "";
  return wordsOf(talk, spanAt(talk, first.clause).from, spanAt(talk, last.clause).to);
}

/** The words of a clause. */
export function spanAt(talk: Talk, clause: number): Span {
  return talk.spans[clause] ?? { from: 0, to: 0 };
}

/** The marks of a clause, in the order of speaking. */
export function inClause(talk: Talk, clause: number): readonly Said[] {
  return talk.clauses.get(clause) ?? [];
}

/** The marks of a sentence, in the order of speaking. */
export function inSentence(talk: Talk, sentence: number): readonly Said[] {
  return talk.sentences.get(sentence) ?? [];
}

/** What stood in the text from one clause to another, as it was written. */
export function quoteOf(talk: Talk, fromClause: number, toClause: number): string {
  const { from, to } = lettersOf(talk, fromClause, toClause);
  return talk.speech.spoken.slice(from, to).trim();
}

/** Where the words from one clause to another stand in what was said, by its letters. */
export function lettersOf(talk: Talk, fromClause: number, toClause: number): Span {
  const { words } = talk.speech;
  const last = Math.min(toClause, talk.spans.length - 1);
  const from = words[spanAt(talk, fromClause).from]?.from ?? 0;
  return { from, to: words[spanAt(talk, last).to - 1]?.to ?? from };
}
