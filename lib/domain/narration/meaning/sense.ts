import { asideClauses } from "./aside.ts";
import { isDismissed, toldNotSeen } from "./mood.ts";
import { isNoFinding } from "./no-finding.ts";
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

/** `card says fourteen`, `per plan at 11`, `the drawing’s got that at thirty`: the record’s own number. */
const RECORD_SAYS =
  /\b(cards?|records?|permit|plans?|drawing|map|sketch|as builts?|paperwork|paper|sheet|book|plat|print|blueprints?|gis)( (says?|said|shows?|has|have|had|got|puts?|calls?|lists?|marks?|drew|drawn|reads?|claims?|is|was|would have|had got))( (it|that|this|one|him|her|them|a|the|another|that one|this one|wye|tee|tap|lateral|connection|down|in|here|there|there's)){0,4}( (at|for|around|about|like|maybe))*$|\b(they|the (city|county|town)) (have|has|had|show|shows|got|list|put)( (it|one|that|him|her|them))?( (down|in))? (at|for)( (around|about|like))*$|\b(per|by|according to|off) (the )?(city )?(card|record|permit|plan|drawing|map|sketch)( (it's|that's|it is|should be))?( (at|around|about))*$/;

/** The record’s own number: `per plan at 11`. */
export function isOfRecord(talk: Talk, mark: Said): boolean {
  const words = talk.speech.words.slice(Math.max(0, mark.from - 9), mark.from);
  const own = words.filter(({ sentence }) => sentence === mark.sentence);
  return (
    RECORD_SAYS.test(own.map(({ text }) => text).join(" ")) ||
    isRecordOn(talk, mark) ||
    isRecordSaying(talk, mark)
  );
}

/** `I’ve got your card here. Says eighty-five to the tap.`: nothing else was named that says anything. */
function isRecordSaying(talk: Talk, mark: Said): boolean {
  const from = talk.speech.words.findIndex(({ sentence }) => sentence === mark.sentence);
  return (
    /^(and |it |which |now it )?(says|shows|reads|calls|puts|claims)( (it|that|here|the \w+|a \w+))*( (is|at|about|around))*$/.test(
      wordsOf(talk, from, mark.from),
    ) && inSentence(talk, mark.sentence - 1).some((other) => isTurn(other, "record"))
  );
}

/** `Card says forty something, can’t read it. Forty or forty-six.`: whole feet alone, behind what the record says. */
function isRecordOn(talk: Talk, mark: Said): boolean {
  if (mark.what !== "distance" || mark.distance.from % 100 !== 0 || !mark.distance.choice)
    return false;
  const alone = inSentence(talk, mark.sentence).every(({ what }) => what === "distance");
  return alone && inSentence(talk, mark.sentence - 1).some((other) => isTurn(other, "record"));
}

/** `that same wye`; in `same spot as the lateral` the lateral is told for the first time. */
function isSame(talk: Talk, mark: Of<"thing">): boolean {
  if (/\b(as|at|by|with) (the|a|an)$/.test(wordsOf(talk, mark.from - 2, mark.from))) return false;
  return nearTurn(talk, mark, ["same"], 2);
}

/** How far back, in sentences, a thing can be meant by `that tap` or `that’s a wye`. */
const BACK = 3;

/** The earlier mention of a thing that is plainly named again; null where it is a new one. */
function antecedentOf(talk: Talk, mark: Of<"thing">, unreal: ReadonlySet<number>): Said | null {
  if (isAnother(talk, mark) && !isLikened(talk, mark)) return null;
  if (mark.thing.describes && isNext(talk, mark)) return null;
  const before = lastOfKind(talk, mark, unreal);
  if (!before) return null;
  if (isCalledSame(talk, mark)) return before;
  const known = SEEN_BEFORE.test(wordsOf(talk, mark.to, mark.to + 7));
  return known || isMeantAgain(talk, mark, before) ? before : null;
}

/** Whose it is: `a tap from another home` is the tap just named. */
const WHOSE = /^(house|home|neighbor|family|unit|property|address|person|owner|building|guy|lot)\b/;

/** `another crack`, `second wye`; not `that’s another line coming in`, said of what was just named. */
export function isAnother(talk: Talk, mark: Said): boolean {
  if (isOnNext(talk, mark)) return true;
  const turn = inClause(talk, mark.clause).findLast(
    (other) =>
      isTurn(other, "another") &&
      (other.from <= mark.from || !thingsBetween(talk, mark, other)) &&
      !WHOSE.test(wordsOf(talk, other.to, other.to + 1)),
  );
  if (turn === undefined || thingsBetween(talk, turn, mark)) return false;
  return !(mark.what === "thing" && isThat(talk, turn, mark));
}

/** `next joint, same thing, offset` */
function isOnNext(talk: Talk, mark: Said): boolean {
  const { words } = talk.speech;
  const first = words.findIndex(({ sentence }) => sentence === mark.sentence);
  return /\b(next|following|second|other) (joint|bell|pipe|length|section|piece|stick|hub)s?\b/.test(
    wordsOf(talk, first, mark.from),
  );
}

function thingsBetween(talk: Talk, from: Said, to: Said): boolean {
  return talk.said
    .slice(from.at + 1, Math.max(from.at + 1, to.at))
    .some(({ what }) => what === "thing");
}

function isThat(talk: Talk, turn: Said, mark: Of<"thing">): boolean {
  if (!/\b(that's|that is|it's|it is|this is)( a)?$/.test(wordsOf(talk, turn.from - 2, turn.from)))
    return false;
  const last = talk.said.findLast(
    (old) => old.at < turn.at && (old.what === "thing" || old.what === "distance"),
  );
  return (
    last?.what === "thing" &&
    last.thing.kind === mark.thing.kind &&
    mark.sentence - last.sentence <= 1
  );
}

/** Named with `that`, or just after, and not read off elsewhere. */
function isMeantAgain(talk: Talk, mark: Of<"thing">, before: Of<"thing">): boolean {
  if (isReadElsewhere(talk, mark, before)) return false;
  if (isKnownByNow(talk, mark) || isLikened(talk, mark)) return true;
  const back = mark.sentence - before.sentence;
  if (mark.thing.describes) return back <= 1;
  const lead = wordsOf(talk, mark.from - 3, mark.from);
  if (/\b(that|this|those|these|them|the)$/.test(lead)) return back <= BACK;
  const named =
    /\b(that's|it's|that is|it is|definitely|called it)( just| only| all| basically)?( a| an| one| your| our| the| my| some)?$/.test(
      lead,
    );
  const own = inSentence(talk, mark.sentence).some((other) => other.what === "distance");
  if (!named || own) return false;
  const read = talk.said
    .slice(before.at + 1, mark.at)
    .some(({ what, sentence }) => what === "distance" && sentence !== before.sentence);
  return back <= 1 || (back <= BACK && !read);
}

/** Of these a line has few, and `the gas line` is the one that was found. */
const FEW = /^(tie-in|crossing)$/;
/** What somebody says who sees it there and then. */
const SHOWN =
  /\b(there's|here's|there is|here is|here comes|there goes|here|see|sees|seeing|got|comes?|coming|now|at|is)$/;

/** `so that saddle’s a bootleg`, `I’m leaving the camera on the gas line`: with no place told and nothing pointed at. */
function isKnownByNow(talk: Talk, mark: Of<"thing">): boolean {
  if (!FEW.test(mark.thing.kind) || mark.thing.describes || mark.thing.many) return false;
  const named = /^(.*?) ?\b(?:that|the|her|his|their)((?: [\w'-]+){1,2})?$/.exec(
    wordsOf(talk, mark.from - 4, mark.from),
  );
  if (!named) return false;
  if (wordsOf(talk, mark.to, mark.to + 1) === "again") return true;
  const placed = inSentence(talk, mark.sentence).some(
    ({ what }) => what === "distance" || what === "clock",
  );
  return !placed && named[2] === undefined && !SHOWN.test(named[1] ?? "");
}

/** `the left-hand wye, twenty-one seven on this reel. Same one.`: the whole sentence behind it. */
function isCalledSame(talk: Talk, mark: Said): boolean {
  const next = talk.speech.words
    .filter(({ sentence }) => sentence === mark.sentence + 1)
    .map(({ text }) => text)
    .join(" ");
  return /^(yeah |yep |so |that's |it's |and )*(the )?same (one|wye|tee|tap|saddle|thing|place|spot|crack|hole|roots|joint|cleanout)( as before| again)?$/.test(
    next,
  );
}

/** `a cleanout. Like a second cleanout, in the lawn`: what it is to be compared with. */
function isLikened(talk: Talk, mark: Of<"thing">): boolean {
  return /\blike (a|an|another)( [\w']+)?$/.test(wordsOf(talk, mark.from - 4, mark.from));
}

/** The last thing of its kind that was seen before it. */
function lastOfKind(
  talk: Talk,
  mark: Of<"thing">,
  unreal: ReadonlySet<number>,
): Of<"thing"> | undefined {
  return talk.said
    .slice(0, mark.at)
    .findLast(
      (old): old is Of<"thing"> =>
        old.what === "thing" &&
        !unreal.has(old.at) &&
        old.thing.kind === mark.thing.kind &&
        old.thing.fault === mark.thing.fault,
    );
}

/** `that lateral back there`, `the crack we saw going in`. */
const SEEN_BEFORE =
  /^(?:at )?(?:[\w']+ ){0,3}?(?:looks?|looked|was|were|is|are)(?: about| pretty much| still)? the same\b|^(back there|back here|(that )?(we|i) (just )?(saw|passed|had|showed|mentioned|told|called|said|was talking|talked)|from before|(from )?earlier|going in|on the way (in|out|down))\b/;

/** Farther apart, hundredths of a foot, two that were read off are two. */
const APART = 200;

/** `Twelve feet, roots in the tap`: another than the tap that was read off at five. */
function isReadElsewhere(talk: Talk, mark: Said, before: Said): boolean {
  const [here, there] = [readingOf(talk, mark), readingOf(talk, before)];
  if (here === null || there === null || here.at === there.at) return false;
  return Math.abs(here.distance.from - there.distance.from) > APART;
}

/** The reading of a thing: that with which its sentence opens, else the one behind it in its clause. */
function readingOf(talk: Talk, mark: Said): Of<"distance"> | null {
  const own = inSentence(talk, mark.sentence).filter(
    (other): other is Of<"distance"> =>
      other.what === "distance" && other.distance.kind === "at" && !other.distance.choice,
  );
  const behind = own.find((other) => other.at > mark.at && other.clause === mark.clause);
  return own.findLast((other) => other.at < mark.at) ?? behind ?? null;
}

/** `Next one is nine feet past that, somebody knocked a hole in`. */
function isNext(talk: Talk, mark: Said): boolean {
  return inSentence(talk, mark.sentence).some(
    (other) =>
      other.at < mark.at &&
      (isTurn(other, "another") ||
        (other.what === "distance" && other.distance.kind !== "extent")) &&
      !inSentence(talk, mark.sentence).some(
        (old) => old.at < mark.at && old.what === "thing" && old.thing.kind === "tie-in",
      ),
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

/** Right behind one of the turns, with so many words between at most. */
function nearTurn(talk: Talk, mark: Said, turns: readonly string[], words: number): boolean {
  const before = talk.said[mark.at - 1];
  return (
    before !== undefined &&
    isTurn(before, ...turns) &&
    before.clause === mark.clause &&
    mark.from - before.to <= words
  );
}

interface Claims {
  /** From this word on, the clause tells what the record shows. */
  readonly from: ReadonlyMap<number, number>;
}

/** `the card shows a tie-in at forty-four`: everything behind it, until the speaker speaks for himself. */
function claimedClauses(talk: Talk, recordClauses: Set<number>): Claims {
  const from = new Map<number, number>();
  let open: number | null = null;
  let sentence = -1;
  for (const [clause, marks] of byClause(talk)) {
    if (marks[0] && marks[0].sentence !== sentence) open = null;
    sentence = marks[0]?.sentence ?? sentence;
    const own = marks.find((mark) => isTurn(mark, "self"));
    if (open !== null && !own) {
      from.set(clause, 0);
      recordClauses.add(clause);
    } else open = null;
    for (const mark of marks) {
      if (isTurn(mark, "record", "record-comment")) recordClauses.add(clause);
      if (!isTurn(mark, "record", "record-comment") || !isClaiming(talk, mark)) continue;
      from.set(clause, mark.to);
      open = clause;
    }
  }
  return { from };
}

/** The record at the head of its clause tells something; behind a finding it comments on that. */
function isClaiming(talk: Talk, mark: Said): boolean {
  if (/\b(supposed|shouldn't|belong|business)\b/.test(wordsOf(talk, mark.from, mark.to)))
    return false;
  const clause = inClause(talk, mark.clause);
  const thingBefore = clause.some(
    (other) => other.to <= mark.from && (other.what === "thing" || other.what === "distance"),
  );
  const denied = isTurn(mark, "record-comment") && clause.every((other) => other.from <= mark.from);
  return !thingBefore && !denied;
}

function byClause(talk: Talk): Map<number, Said[]> {
  const map = new Map<number, Said[]>();
  for (const mark of talk.said) map.set(mark.clause, [...(map.get(mark.clause) ?? []), mark]);
  return map;
}

function isClaimed(mark: Said, clause: readonly Said[], claims: Claims): boolean {
  const from = claims.from.get(mark.clause);
  if (from === undefined || mark.from < from) return false;
  return !clause.some(
    (other) => isTurn(other, "self") && other.from >= from && other.to <= mark.from,
  );
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
