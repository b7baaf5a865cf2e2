import { groupedBy, type Of, type Said, type Talk, talkWith } from "../meaning/said.ts";

/** So many of its numbers tell that a voice calls depths. */
const HINTS = 2;
/** Readings that another voice has to give. */
const READINGS = 3;

/**
 * Of two voices one may read the counter and the other call out how deep the camera lies: all
 * numbers of a voice that says so of several are depths, so long as another voice gives footages.
 */
export function withoutDepthCalls(talk: Talk): Talk {
  const voices = groupedBy(
    talk.said.filter(({ what }) => what === "distance" || what === "other"),
    (mark): string | null => whoSays(talk, mark),
  );
  const callers = new Set<string | null>(
    [...voices].flatMap(([who, marks]) => {
      const others = [...voices].some(
        ([other, theirs]) =>
          other !== who && theirs.filter((mark) => !isDepth(talk, mark)).length >= READINGS,
      );
      const depths = marks.filter((mark) => isDepth(talk, mark)).length;
      return who !== null && others && depths >= HINTS ? [who] : [];
    }),
  );
  if (callers.size === 0) return talk;
  return talkWith(
    talk.speech,
    talk.said.map((mark) =>
      mark.what === "distance" && callers.has(whoSays(talk, mark)) ? asDepth(mark) : mark,
    ),
  );
}

function whoSays(talk: Talk, mark: Said): string | null {
  return talk.speech.words[mark.from]?.who ?? null;
}

/** Told as deep, or right behind `depth`. */
function isDepth(talk: Talk, mark: Said): boolean {
  if (mark.what === "other" && mark.why === "a depth") return true;
  const { words } = talk.speech;
  const own = (from: number, to: number) =>
    words
      .slice(Math.max(0, from), to)
      .filter(({ sentence }) => sentence === mark.sentence)
      .map(({ text }) => text)
      .join(" ");
  return (
    /^(deep|down to it|of cover)\b/.test(own(mark.to, mark.to + 2)) ||
    /\b(depth|deep)( is| of| at| about)?$/.test(own(mark.from - 2, mark.from))
  );
}

function asDepth(mark: Of<"distance">): Said {
  const { at, clause, sentence, until, time, from, to } = mark;
  const value = mark.distance.from / 100;
  return { what: "other", value, why: "a depth", at, clause, sentence, until, time, from, to };
}
