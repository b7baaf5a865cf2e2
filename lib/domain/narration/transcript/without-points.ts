import type { Word } from "./word.ts";

type Cut = "none" | "clause" | "sentence";

/**
 * The words of talk without points, as captions made by a machine are: cut where the speaker begins
 * anew, and what begins like a question marked as one.
 */
export function cutWithoutPoints(words: readonly Word[]): Word[] {
  return withQuestions(withClauses(words));
}

/** `is that a crack`, without a mark behind it. */
const INVERTED =
  /^(?:(?:so|and|okay|hey|wait|now|oh|what|but) )?(?:is|are|was|were|does|do|did|could|would) (?:that|this|it|those|these|there|you|we|he|they)\b/;

function withQuestions(words: readonly Word[]): Word[] {
  const starts = new Map<number, string>();
  for (const [at, { sentence }] of words.entries())
    if (!starts.has(sentence))
      starts.set(
        sentence,
        words
          .slice(at, at + 4)
          .map(({ text }) => text)
          .join(" "),
      );
  return words.map((word) => ({
    ...word,
    asks: word.asks || INVERTED.test(starts.get(word.sentence) ?? ""),
  }));
}

/** Words with which people who do not pause begin the next thing that they have to say. */
const OPENERS: readonly (readonly [words: string, cut: Cut])[] = [
  ["okay", "sentence"],
  ["ok so", "sentence"],
  ["alright", "sentence"],
  ["all right", "sentence"],
  ["and then", "sentence"],
  ["so then", "sentence"],
  ["then at", "sentence"],
  ["then roots", "sentence"],
  ["then there's", "sentence"],
  ["so at", "sentence"],
  ["and at", "sentence"],
  ["moving on", "sentence"],
  ["and there's", "clause"],
  ["and there is", "clause"],
  ["and you got", "clause"],
  ["and you've got", "clause"],
  ["and we've got", "clause"],
  ["there's", "clause"],
  ["there is", "clause"],
  ["here's", "clause"],
  ["and that's", "clause"],
  ["that's", "clause"],
  ["that one", "clause"],
  ["and the", "clause"],
  ["and a", "clause"],
  ["so", "clause"],
  ["but", "clause"],
  ["because", "clause"],
  ["i mean", "clause"],
  ["looks like", "clause"],
  ["you can see", "clause"],
  ["see how", "clause"],
];

/** In talk without points, cuts where the speaker begins anew. */
function withClauses(words: readonly Word[]): Word[] {
  let clauses = 0;
  let sentences = 0;
  return words.map((word, at): Word => {
    const cut = at > 0 && words[at - 1]?.clause === word.clause ? openingAt(words, at) : "none";
    if (cut !== "none") clauses += 1;
    if (cut === "sentence") sentences += 1;
    return { ...word, clause: word.clause + clauses, sentence: word.sentence + sentences };
  });
}

/** `nine and a half`, `and three quarters`. */
function isFraction(words: readonly Word[], at: number): boolean {
  return words
    .slice(at, at + 4)
    .some(({ text }) => /^(half|quarters?|thirds?|tenths?)$/.test(text));
}

/** `at twenty there’s`: the next place, and what is there. */
const AT_NUMBER =
  /^(and )?(at|around) ((\d[\d.]*|zero|one|two|three|four|five|six|seven|eight|nine|ten|\w+teen|eleven|twelve|twenty|thirty|forty|fifty|sixty|seventy|eighty|ninety|hundred|oh|point|and|a|half|quarter|feet|foot) ){1,5}(there's|there is|here's|here is|we've|we|you've|you|i've|i)( |$)/;

function openingAt(words: readonly Word[], at: number): Cut {
  const before = words[at - 1]?.text ?? "";
  if (/^(and|so|okay|that|it|at|is|the|then|but|looks)$/.test(before)) return "none";
  if (words[at - 1]?.sentence === words[at]?.sentence && isFraction(words, at)) return "none";
  const { breath } = words[at] ?? { breath: -1 };
  const next = words
    .slice(at, at + 8)
    .filter((word) => word.breath === breath)
    .map(({ text }) => text);
  if (AT_NUMBER.test(next.join(" "))) return "sentence";
  const ahead = next.slice(0, 4).join(" ");
  return OPENERS.find(([text]) => ahead === text || ahead.startsWith(`${text} `))?.[1] ?? "none";
}
