import { asideClauses } from "./aside.ts";
import { isDismissed, toldNotSeen } from "./mood.ts";
import { isNoFinding } from "./no-finding.ts";
import { type Claims, claimedClauses, isClaimed, isOfRecord } from "./record-claims.ts";
import { hearsayFrom } from "./reported.ts";
import {
  clauseWords,
  inClause,
  inSentence,
  isTurn,
  labelOf,
  type Of,
  type Said,
  spanAt,
  type Talk,
  wordsOf,
} from "./said.ts";
import { antecedentOf, isSame, lastOfKind, nearTurn } from "./told-before.ts";

/** What the talk as a whole says about its marks: which are real, which only talked about. */
export interface Sense {
  /** Denied, only expected, or claimed by the record: nothing was seen. */
  readonly unreal: ReadonlySet<number>;
  /** Things named only to say where something else is: `past the wye`. */
  readonly pointers: ReadonlySet<number>;
  /** Things that were named before, `that same wye`, with the earlier mark where it is plain which. */
  readonly again: ReadonlyMap<number, number | null>;
  /** Things that were told before, and named with no place: no row unless they add to one. */
  readonly known: ReadonlySet<number>;
  /** Clauses that speak of the record. */
  readonly recordClauses: ReadonlySet<number>;
}

/** Sorts what was seen from what was denied, hoped for, or read off the record card. */
export function senseOf(talk: Talk): Sense {
  const unreal = new Set<number>();
  const recordClauses = new Set<number>();
  const claiming = claimedClauses(talk, recordClauses);
  const aside = asideClauses(talk);
  for (const clause of recordClauses) if (aside.has(clause)) recordClauses.delete(clause);
  for (const at of toldNotSeen(talk)) unreal.add(at);
  for (const mark of talk.said)
    if (aside.has(mark.clause) || isUnreal(talk, mark, { claiming, unreal })) unreal.add(mark.at);
  const things = talk.said.filter((mark): mark is Of<"thing"> => mark.what === "thing");
  for (const mark of things) for (const at of takenBack(talk, mark)) unreal.add(at);
  return {
    unreal,
    recordClauses,
    known: ats(things, (mark) => isKnown(talk, mark, unreal)),
    pointers: ats(
      things,
      (mark) =>
        isPointedPast(talk, mark) || isBetween(talk, mark) || isReference(talk, mark, unreal),
    ),
    again: new Map(
      things.flatMap((mark) => {
        const before = antecedentOf(talk, mark, unreal);
        const known = before !== null || isSame(talk, mark);
        return known ? [[mark.at, before?.at ?? null]] : [];
      }),
    ),
  };
}

/** So many sentences on, it is still spoken of whether it is one. */
const DOUBT = 12;

/** `so it isn’t a hole`, `don’t call it an offset`. */
const DENIED =
  /\b(?:isn't|ain't|not|wasn't|(?:don't|wouldn't|won't|not) (?:call|calling) (?:it|that|this)) (?:really )?(?:a|an)$/;

/** What was named so, no other footage read off since, and now is said to be none. */
function takenBack(talk: Talk, mark: Of<"thing">): number[] {
  if (!DENIED.test(wordsOf(talk, mark.from - 5, mark.from))) return [];
  const alike = (old: Said) => old.what === "thing" && labelOf(old) === labelOf(mark);
  const read = talk.said.findLast(
    (old) =>
      old.at < mark.at &&
      old.what === "distance" &&
      old.distance.kind === "at" &&
      !inSentence(talk, old.sentence).some(alike),
  );
  return talk.said.flatMap((old) =>
    alike(old) &&
    old.at <= mark.at &&
    old.at > (read?.at ?? -1) &&
    mark.sentence - old.sentence <= DOUBT
      ? [old.at]
      : [],
  );
}

const CALLED = /^(call|calling) (that|this|it)$/;

function isUnreal(
  talk: Talk,
  mark: Said,
  { claiming, unreal }: { claiming: Claims; unreal: ReadonlySet<number> },
): boolean {
  if (mark.what === "turn") return false;
  // `and I’ll call that nought`: said so, it is
  if (mark.what === "distance" && CALLED.test(wordsOf(talk, mark.from - 2, mark.from)))
    return false;
  const clause = inClause(talk, mark.clause);
  if (isClaimed(mark, clause, claiming) || isExpected(mark, clause)) return true;
  if (isHearsay(talk, mark, clause)) return true;
  if (mark.what === "distance" && isOfRecord(talk, mark)) return true;
  if (mark.what === "thing")
    return isNoFinding(talk, mark) || isDenied(talk, mark, unreal) || isDismissed(talk, mark);
  return (
    mark.what === "material" &&
    (isDenied(talk, mark, unreal) || /^or\b/.test(clauseWords(talk, mark.clause)))
  );
}

function ats<M extends Said>(marks: readonly M[], test: (mark: M) => boolean): Set<number> {
  return new Set(marks.filter(test).map((mark) => mark.at));
}

/** Whose it is, where `past the` stands for others. */
const PAST_THEIRS =
  /\b(past|beyond|before|after|behind|beside|short of) (her|his|their|my|our|its|this|these|those|that|the|your)( [\w']+)?$/;

/** `past the wye`, `past that wye`; in `past that the joint is open` the joint is what was found. */
function isPointedPast(talk: Talk, mark: Said): boolean {
  const before = talk.said[mark.at - 1];
  const whole =
    before && /\b(that|this|it|there|here)$/.test(wordsOf(talk, before.from, before.to));
  if (PAST_THEIRS.test(wordsOf(talk, before?.to ?? 0, mark.from))) return true;
  return nearTurn(talk, mark, ["beyond", "short-of"], whole ? 0 : 1);
}

/** `between the offset and the first wye`: what bounds the stretch, named before. */
function isBetween(talk: Talk, mark: Said): boolean {
  const { from } = spanAt(talk, mark.clause);
  const lead = wordsOf(talk, from, mark.from);
  return /\b(in )?between (the|that|this|those|your)( [\w']+){0,4}( and (the|that|this|your)( [\w']+){0,2})?$/.test(
    lead,
  );
}

/**
 * `clean from the hole on`, `through the roots now`: told before, and named for what is beyond. What
 * follows on `feet from the main` is named anew.
 */
function isReference(talk: Talk, mark: Of<"thing">, unreal: ReadonlySet<number>): boolean {
  const begins = Math.max(
    mark.from - 5,
    spanAt(talk, mark.clause).from,
    talk.said[mark.at - 1]?.to ?? 0,
  );
  return (
    /\b(from|since|besides|except|except for|other than|aside from|apart from|than|unlike|compared to|through|back to) (the|that|those|your)( [\w']+)?$|\bwith (?:only |just )?(?:the )?(one|two|three|four)$|\b(up|down) to (that|those)( [\w']+)?$/.test(
      wordsOf(talk, begins, mark.from),
    ) && lastOfKind(talk, mark, unreal) !== undefined
  );
}

/** What speaks of the spot where the camera is. */
const AT_HAND =
  /\b(?:here|there|now|again|still|more|back|starts?|starting|begins?|another|next|see|got|i'm|we're|comes?|coming)\b/;

/** `I told her the roots are the worst of it`: one of its kind was told, and no place is told now. */
function isKnown(talk: Talk, mark: Of<"thing">, unreal: ReadonlySet<number>): boolean {
  if (!/\b(?:the|those|that)(?: [\w']+)?$/.test(wordsOf(talk, mark.from - 2, mark.from)))
    return false;
  if (/^(?:main|bend|blockage)$/.test(mark.thing.kind)) return false;
  const beside = inSentence(talk, mark.sentence);
  const placed = beside.some(
    (other) =>
      other.what === "clock" || (other.what === "distance" && other.distance.kind === "at"),
  );
  const words = talk.speech.words.filter(({ sentence }) => sentence === mark.sentence);
  // Once nothing is read off any more, it is gone through again.
  const over = !talk.said.some(({ at, what }) => what === "distance" && at > mark.at);
  if (placed || (!over && AT_HAND.test(words.map(({ text }) => text).join(" ")))) return false;
  return lastOfKind(talk, mark, unreal) !== undefined;
}

function isExpected(mark: Said, clause: readonly Said[]): boolean {
  const turn = clause.findLast((other) => isTurn(other, "expected") && other.to <= mark.from);
  if (!turn) return false;
  // `gonna be from the main back up to the house, zero, it’s clay`: whoever sets the counter speaks for himself.
  return !clause.some(
    (other) =>
      (isTurn(other, "self") ||
        (isTurn(other, "in-pipe") && mark.from - other.to > 2) ||
        (other.what === "distance" && other.distance.from === 0)) &&
      other.from >= turn.to &&
      other.to <= mark.from,
  );
}

/** Others said so, or the speaker had thought so, and he does not go on to say what he sees himself. */
function isHearsay(talk: Talk, mark: Said, clause: readonly Said[]): boolean {
  const from = hearsayFrom(talk, mark.clause);
  if (from === null || mark.from < from) return false;
  // `he said it’s like a hundred to the main, counter’s zero, it’s clay`: whoever sets the counter speaks for himself.
  return !clause.some(
    (other) =>
      (isTurn(other, "self") || (other.what === "distance" && other.distance.from === 0)) &&
      other.from >= from &&
      other.to <= mark.from,
  );
}

/** `no roots`, `didn’t see any cracks or roots`, `no cracks, roots or bellies`. */
function isDenied(talk: Talk, mark: Said, unreal: ReadonlySet<number>): boolean {
  const clause = inClause(talk, mark.clause);
  const turn = clause.findLast((other) => isTurn(other, "negation") && other.to <= mark.from);
  if (turn) {
    const between = clause.filter((other) => other.from >= turn.to && other.to <= mark.from);
    const broken = between.some(
      (other) => isTurn(other, "self", "closes") || other.what === "distance",
    );
    const listed = /\b(or|nor)\b/.test(wordsOf(talk, turn.to, mark.from));
    return !broken && (mark.from - turn.to <= 5 || listed);
  }
  return isListedDenial(talk, mark, unreal);
}

/** A clause that is only the next thing of a list whose last thing was denied. */
function isListedDenial(talk: Talk, mark: Said, unreal: ReadonlySet<number>): boolean {
  const before = talk.said[mark.at - 1];
  if (before?.what !== "thing" || !unreal.has(before.at) || before.sentence !== mark.sentence)
    return false;
  const lead = wordsOf(talk, before.to, mark.from);
  const alone = inClause(talk, mark.clause).every((other) => other.what === "thing");
  return alone && /^(or|nor|and|any|or any)?$/.test(lead);
}
