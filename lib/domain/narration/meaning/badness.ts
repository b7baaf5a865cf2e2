import type { Degree } from "../../facts/run.ts";
import { spokenNumber } from "../number/spoken-number.ts";
import {
  inClause,
  inSentence,
  type Of,
  type Said,
  sentenceWords,
  spanAt,
  type Talk,
  wordsOf,
} from "./said.ts";
import type { Sense } from "./sense.ts";

/** How bad a thing is, as it was said. */
export interface Badness {
  readonly degree: Degree | null;
  /** Percent of the bore. */
  readonly reduction: number | null;
  /** Inches of water. */
  readonly waterDepth: number | null;
}

interface Ground {
  readonly talk: Talk;
  readonly sense: Sense;
}

const NONE: Badness = { degree: null, reduction: null, waterDepth: null };

/** Words of degree; those that take a worse one back stand first: `nothing too terrible, slight`. */
const SLIGHT =
  /\b(slight|slightly|light|lightly|minor|little|small|fine|tiny|hairline|hairlines|nothing (too )?(terrible|bad|crazy|serious)|not (too |that |so |real )?(bad|terrible)|a bit|a few|barely|just starting|some)\b/;
const MEDIUM = /\b(medium|moderate|moderately|fair amount|decent|pretty good|good sized)\b/;
const SEVERE =
  /\b(severe|severely|heavy|heavily|bad|badly|terrible|worst|awful|major|big|huge|massive|large|whole lotta|whole lot of|packed|solid|completely|lots of|all the way around|a ton of|horrible|thick)\b/;

/**
 * Degree, share of the bore and depth of water of a thing, from its clause, the clauses beside it
 * that name nothing else, and the sentence behind it if that names nothing. Of a branch nothing is told.
 */
export function badnessOf({ talk, sense }: Ground, mark: Of<"thing">): Badness {
  if (!/^(fault|water|deposit|blockage)$/.test(mark.thing.kind)) return NONE;
  const near = nearWords(talk, sense, mark);
  return {
    degree: mark.thing.kind === "water" ? null : degreeIn(near),
    reduction: TAKES.test(mark.thing.fault ?? mark.thing.kind) ? reductionIn(near) : null,
    waterDepth: holdsWater(mark) ? depthIn(near) : null,
  };
}

/** What takes part of the bore; of an open joint a share tells nothing. */
const TAKES =
  /^(roots|deposit|blockage|water|belly|deformed|collapsed|protruding-tie-in|offset-joint|infiltration)$/;

function holdsWater({ thing }: Of<"thing">): boolean {
  return thing.kind === "water" || thing.fault === "belly";
}

function nearWords(talk: Talk, sense: Sense, mark: Of<"thing">): string {
  const clauses = clausesNear(talk, sense, mark).map((clause) => {
    const { from, to } = spanAt(talk, clause);
    return wordsOf(talk, from, to);
  });
  const next = inSentence(talk, mark.sentence + 1);
  const behind = next.some((other) => other.what === "thing" || isPlace(other))
    ? ""
    : sentenceWords(talk, mark.sentence + 1) || plainSentence(talk, mark.sentence + 1);
  return [...clauses, behind].join(" , ");
}

function isPlace(mark: Said): boolean {
  return mark.what === "distance" && mark.distance.kind === "at";
}

/** The words of a sentence in which nothing was understood: `These are bad.` */
function plainSentence(talk: Talk, sentence: number): string {
  return talk.speech.words
    .filter((word) => word.sentence === sentence)
    .map((word) => word.text)
    .join(" ");
}

/** Its own clause, and those of the sentence up to the next thing either way. */
function clausesNear(talk: Talk, sense: Sense, mark: Of<"thing">): number[] {
  const names = (clause: number) =>
    inClause(talk, clause).some(
      (other) =>
        other.what === "thing" &&
        !sense.unreal.has(other.at) &&
        !(holdsWater(mark) && holdsWater(other)) &&
        (other.thing.kind !== mark.thing.kind || other.thing.fault !== mark.thing.fault),
    );
  const inside = (clause: number) =>
    talk.speech.words[spanAt(talk, clause).from]?.sentence === mark.sentence;
  const clauses = [mark.clause];
  for (let on = mark.clause + 1; on < talk.spans.length && inside(on) && !names(on); on += 1)
    clauses.push(on);
  for (let back = mark.clause - 1; back >= 0 && inside(back) && !names(back); back -= 1)
    clauses.unshift(back);
  return clauses;
}

function degreeIn(words: string): Degree | null {
  if (/\b(nothing|not) (too |that |so |real )?(terrible|bad|crazy|serious)\b/.test(words))
    return "slight";
  if (SEVERE.test(words)) return "severe";
  if (MEDIUM.test(words)) return "medium";
  return SLIGHT.test(words) ? "slight" : null;
}

const SHARES: readonly (readonly [words: string, percent: number])[] = [
  ["three quarters", 75],
  ["two thirds", 67],
  ["a quarter", 25],
  ["one quarter", 25],
  ["a third", 33],
  ["one third", 33],
  ["half", 50],
];

/** `sixty percent`, `reduced by three quarters`, `a third of the pipe`, `half blocked`; `20 percent open` is 80. */
function reductionIn(words: string): number | null {
  const percent = percentIn(words);
  if (percent !== null)
    return /(percent|%) (is |still )?(open|left|clear)\b/.test(words) ? 100 - percent : percent;
  const found = SHARES.find(([share]) =>
    new RegExp(
      `\\b((reduced|down|closed|blocked|takes|taking|taken|filled|lost|losing|about|maybe) (up )?(by |about |to )*${share}(?! (a|an|of an) inch| inch| foot)|${share} (of )?(the |your |our |a )?(pipe|bore|line|opening|way|full|blocked|gone|closed|plugged|of it))\\b`,
    ).test(words),
  );
  return found?.[1] ?? null;
}

function percentIn(words: string): number | null {
  const written = /\b(\d{1,3}) ?(?:%|percent)(?= |$)/.exec(words);
  if (written) return upTo100(Number(written[1]));
  const at = words.split(" ");
  const unit = at.findIndex((word) => word === "percent" || word === "%");
  for (let from = Math.max(0, unit - 3); unit > 0 && from < unit; from += 1) {
    const number = spokenNumber(at, from);
    if (number?.to === unit) return upTo100(number.value / 100);
  }
  return null;
}

function upTo100(percent: number): number | null {
  return percent <= 100 ? percent : null;
}

/** `two inches of water`, `1.5 inches deep`. */
function depthIn(words: string): number | null {
  const at = words.split(" ");
  const unit = at.findIndex((word) => word === "inch" || word === "inches");
  for (let from = Math.max(0, unit - 4); unit > 0 && from < unit; from += 1) {
    const number = spokenNumber(at, from);
    if (number?.to === unit && number.value > 0 && number.value <= 4_800) return number.value / 100;
  }
  return null;
}
