import { type Of, type Said, type Talk, talkWith, wordsOf } from "../meaning/said.ts";

/** What a pipe is made of piece by piece. */
const PIECE =
  /\b(joint|section|stick|length|piece|segment|tile|hub|bell|coupling)( (number|no|#))?( ,)?$/;
/** So many pieces told one after another show that somebody counts them. */
const COUNTS = 3;
/** So many pieces go by uncounted between two that are told. */
const SKIPPED = 4;

type NumberSaid = Of<"distance"> | Of<"other">;

/**
 * `Joint one. Joint two, clean. … Joint fourteen, open.`: whoever counts the pieces of the pipe
 * gives their numbers, and none of these, told with the piece or as the next by itself, is a footage.
 */
export function withoutCounted(talk: Talk): Talk {
  const counted = countedIn(talk);
  if (counted.size === 0) return talk;
  const said = talk.said.map((mark): Said => {
    if (mark.what !== "distance" || !counted.has(mark.at)) return mark;
    const { at, clause, sentence, until, time, from, to } = mark;
    const value = mark.distance.from / 100;
    return { what: "other", value, why: "a count", at, clause, sentence, until, time, from, to };
  });
  return talkWith(talk.speech, said);
}

function countedIn(talk: Talk): Set<number> {
  const counted = new Set<number>();
  const numbers = talk.said.filter((mark): mark is NumberSaid => countOf(mark) !== null);
  const named = numbers.filter((mark) => isNamed(talk, mark));
  const first = countOf(named[0]) ?? 0;
  if (first > SKIPPED || !named.every((mark, at) => follows(named[at - 1], mark))) return counted;
  if (new Set(named.map((mark) => countOf(mark))).size < COUNTS) return counted;
  let last = 0;
  for (const mark of numbers) {
    const value = countOf(mark) ?? 0;
    const next = value >= last && value <= last + SKIPPED && isBare(talk, mark);
    if (mark.at < (named[0]?.at ?? 0) || !(isNamed(talk, mark) || next)) continue;
    counted.add(mark.at);
    last = value;
  }
  return counted;
}

/** The whole number that a mark may count with. */
function countOf(mark: Said | undefined): number | null {
  if (mark?.what === "other" && /^(a count|nothing)/.test(mark.why)) return mark.value;
  if (mark?.what !== "distance" || mark.distance.kind !== "at") return null;
  const { from, choice, to } = mark.distance;
  return from % 100 === 0 && (to === null || choice) ? from / 100 : null;
}

function isNamed(talk: Talk, mark: Said): boolean {
  return isBare(talk, mark) && PIECE.test(wordsOf(talk, mark.from - 3, mark.from));
}

/** Without feet, and not on the counter. */
function isBare(talk: Talk, mark: Said): boolean {
  const own = wordsOf(talk, mark.from, mark.to + 2);
  return !/\b(feet|foot|ft|point|even|flat|counter)\b|\./.test(own);
}

function follows(before: Said | undefined, mark: Said): boolean {
  const step = (countOf(mark) ?? 0) - (countOf(before) ?? 0);
  return before === undefined || (step >= 0 && step <= SKIPPED * 2);
}
