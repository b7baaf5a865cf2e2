import type { Material } from "../../facts/line.ts";
import {
  inClause,
  inSentence,
  isTurn,
  type Of,
  quoteOf,
  type Said,
  sentenceWords,
  type Talk,
  wordsOf,
} from "./said.ts";
import type { Sense } from "./sense.ts";

/** What was said about a thing besides its name. */
export interface About {
  readonly clock: number | null;
  readonly diameter: number | null;
  readonly material: Material;
  readonly hedges: readonly string[];
  readonly aboutRecord: string;
  /** Clauses that hold any of it. */
  readonly clauses: readonly number[];
}

type Trait = Of<"clock"> | Of<"diameter"> | Of<"material">;

/** Clock, size, material, hedges and what was said of the record, each given to the nearest thing. */
export function aboutOf(talk: Talk, sense: Sense, thing: Said): About {
  const around = [-1, 0, 1, 2].flatMap((by) => inSentence(talk, thing.sentence + by));
  const traits = around.filter(
    (mark): mark is Trait =>
      isTrait(mark) &&
      (mark.what === "clock" || hasPipe(thing)) &&
      !sense.unreal.has(mark.at) &&
      ownerOf(talk, sense, mark) === thing.at,
  );
  const clocks = traits.filter((mark) => mark.what === "clock");
  const clock = clocks.findLast((mark) => isHour(talk, mark)) ?? clocks[0];
  const diameter = traits.find((mark) => mark.what === "diameter");
  const material = traits.find((mark) => mark.what === "material");
  const record = recordOf(talk, sense, thing);
  return {
    clock: clock?.clock ?? floorOf(talk, thing),
    diameter: diameter?.inches ?? null,
    material: material?.material ?? "unknown",
    hedges: hedgesOf(talk, sense, thing),
    aboutRecord: record.map((clause) => quoteOf(talk, clause, clause)).join("; "),
    clauses: [...traits.flatMap((mark) => [mark.clause, mark.until]), ...record],
  };
}

/** Only a branch has a pipe of its own; a crack has neither size nor material. */
function hasPipe(thing: Said): boolean {
  return thing.what === "thing" && /^(tie-in|cleanout)$/.test(thing.thing.kind);
}

/** An hour is closer than a side: `on the left, about ten o’clock`. */
function isHour(talk: Talk, mark: Said): boolean {
  return /clock|:/.test(wordsOf(talk, mark.from, mark.to));
}

/** `the bottom is rotted out` says where in its name. */
function floorOf(talk: Talk, thing: Said): number | null {
  return /\bbottom\b/.test(wordsOf(talk, thing.from, thing.to)) ? 6 : null;
}

function isTrait(mark: Said): boolean {
  return mark.what === "clock" || mark.what === "diameter" || mark.what === "material";
}

/** A thing that can own traits. */
export function isOwner(sense: Sense, mark: Said): mark is Of<"thing"> {
  return mark.what === "thing" && !sense.unreal.has(mark.at) && !sense.pointers.has(mark.at);
}

/**
 * The thing to which a trait belongs. In its own clause: the thing that it stands right before
 * (`four inch wye`), else the one before it, else the one after. Otherwise the last thing of the
 * sentence, the next, or the last of the sentence before.
 */
function ownerOf(talk: Talk, sense: Sense, trait: Said): number | null {
  const own = nearestIn(
    talk,
    inClause(talk, trait.clause).filter((mark) => isOwner(sense, mark)),
    trait,
  );
  if (own !== null) return own;
  const sentence = inSentence(talk, trait.sentence).filter((mark) => isOwner(sense, mark));
  const before = sentence.findLast((mark) => mark.at < trait.at);
  const after = sentence.find((mark) => mark.at > trait.at);
  if (before ?? after) return (before ?? after)?.at ?? null;
  if (inSentence(talk, trait.sentence).some((mark) => mark.what === "distance")) return null;
  return lastOwner(talk, sense, trait)?.at ?? null;
}

/** So many sentences back, in one breath, a thing is still what is spoken of: `Wye. Active. Left.` */
const STILL = 2;

/** The last thing of the sentence before; within a breath, of the one before that as well. */
function lastOwner(talk: Talk, sense: Sense, mark: Said): Said | null {
  const { words } = talk.speech;
  for (let back = 1; back <= STILL; back += 1) {
    const marks = inSentence(talk, mark.sentence - back);
    const last = marks.findLast((other) => isOwner(sense, other));
    if (last && (back === 1 || words[last.from]?.breath === words[mark.from]?.breath)) return last;
    if (marks.some((other) => other.what === "distance")) return null;
  }
  return null;
}

function nearestIn(talk: Talk, things: readonly Said[], trait: Said): number | null {
  const before = things.findLast((mark) => mark.at < trait.at);
  const after = things.find((mark) => mark.at > trait.at);
  if (!before || !after) return (before ?? after)?.at ?? null;
  const adjective = trait.what !== "clock" && after.from - trait.to <= 2;
  const joined = /\band\b/.test(wordsOf(talk, before.to, trait.from));
  return adjective || joined ? after.at : before.at;
}

/** Hedges in its clause, or in a clause beside it that names nothing. */
function hedgesOf(talk: Talk, sense: Sense, thing: Said): string[] {
  const hedges = inSentence(talk, thing.sentence).filter((mark) => isTurn(mark, "hedge"));
  const own = hedges.filter((mark) => {
    if (mark.clause === thing.clause) return ownHedge(talk, sense, { hedge: mark, thing });
    const names = inClause(talk, mark.clause).some((other) => isOwner(sense, other));
    return !names && Math.abs(mark.clause - thing.clause) <= 1;
  });
  return [...new Set(own.map((mark) => wordsOf(talk, mark.from, mark.to)))];
}

/** With several things in a clause, a hedge is about the next one, or the last. */
function ownHedge(
  talk: Talk,
  sense: Sense,
  { hedge, thing }: { hedge: Said; thing: Said },
): boolean {
  const things = inClause(talk, thing.clause).filter((mark) => isOwner(sense, mark));
  const next = things.find((mark) => mark.at > hedge.at) ?? things.at(-1);
  return things.length < 2 || next?.at === thing.at;
}

/** Clauses about the record that belong to a thing: of its sentence, or of the next if that names nothing. */
function recordOf(talk: Talk, sense: Sense, thing: Said): number[] {
  return [...sense.recordClauses].filter((clause) => {
    const marks = inClause(talk, clause);
    const sentence = marks[0]?.sentence ?? -1;
    return recordOwner(talk, sense, { clause, sentence })?.at === thing.at;
  });
}

/** The thing that a clause about the record comments on; null where it stands for itself. */
export function recordOwner(
  talk: Talk,
  sense: Sense,
  { clause, sentence }: { clause: number; sentence: number },
): Said | null {
  const own = inSentence(talk, sentence).filter((mark) => isOwner(sense, mark));
  const before = own.findLast((mark) => mark.clause <= clause);
  if (before ?? own[0]) return before ?? own[0] ?? null;
  const [first] = inSentence(talk, sentence);
  if (first && MEANT.test(plainSentence(talk, sentence))) return lastToldOf(talk, sense, first);
  const last = first ? (lastOwner(talk, sense, first) ?? lastToldOf(talk, sense, first)) : null;
  return speaksOfNothing(talk, sentence, last) ? null : last;
}

/** So many sentences back what is meant by `it` was told, if the speaker has not stopped for breath. */
const MEANT_BACK = 3;

function lastToldOf(talk: Talk, sense: Sense, mark: Said): Said | null {
  const { words } = talk.speech;
  const last = talk.said.findLast(
    (other) =>
      other.at < mark.at &&
      isOwner(sense, other) &&
      other.sentence < mark.sentence &&
      mark.sentence - other.sentence <= MEANT_BACK,
  );
  const own = last && words[last.from]?.breath === words[mark.from]?.breath;
  return last && (own || mark.sentence - last.sentence === 1) ? last : null;
}

/** Farther apart, hundredths of a foot, the record and the camera do not speak of one place. */
const CARD_NEAR = 600;

/** `that’s where the permit puts it`, `not where the drawing had it`: what was just named. */
const MEANT =
  /\b((not |that's |right |exactly |just )+where|(puts?|has|had|got|shows?|calls?|lists?|marks?|drew|drawn) (it|that|that one|this one|him|them)|instead of|supposed to be (at )?)\b/;

function plainSentence(talk: Talk, sentence: number): string {
  return talk.speech.words
    .filter((word) => word.sentence === sentence)
    .map((word) => word.text)
    .join(" ");
}

/** The distance at which a thing was told: of its sentence, else the one read off before it. */
function readBefore(talk: Talk, mark: Said): Said | null {
  const own = inSentence(talk, mark.sentence).find((other) => other.what === "distance");
  const before = talk.said.findLast((other) => other.at < mark.at && other.what === "distance");
  return own ?? (before && mark.sentence - before.sentence <= 2 ? before : null);
}

/** `the card shows one at forty-four, not seeing it`: about what is not there, or is elsewhere. */
function speaksOfNothing(talk: Talk, sentence: number, last: Said | null): boolean {
  const words = sentenceWords(talk, sentence);
  if (
    /\b(not seeing|don't see|didn't see|nothing (here|there)|no sign|can't find|never saw)\b/.test(
      words,
    )
  )
    return true;
  const claimed = inSentence(talk, sentence).find((mark) => mark.what === "distance");
  const seen = last && readBefore(talk, last);
  if (claimed?.what === "distance" && seen?.what === "distance")
    return Math.abs(claimed.distance.from - seen.distance.from) > CARD_NEAR;
  return claimed !== undefined;
}
