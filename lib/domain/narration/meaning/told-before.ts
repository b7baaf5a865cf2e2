import { inClause, inSentence, isTurn, type Of, type Said, type Talk, wordsOf } from "./said.ts";

/** `that same wye`; in `same spot as the lateral` the lateral is told for the first time. */
export function isSame(talk: Talk, mark: Of<"thing">): boolean {
  if (/\b(as|at|by|with) (the|a|an)$/.test(wordsOf(talk, mark.from - 2, mark.from))) return false;
  return nearTurn(talk, mark, ["same"], 2);
}

/** How far back, in sentences, a thing can be meant by `that tap` or `that’s a wye`. */
const BACK = 3;

/** The earlier mention of a thing that is plainly named again; null where it is a new one. */
export function antecedentOf(
  talk: Talk,
  mark: Of<"thing">,
  unreal: ReadonlySet<number>,
): Said | null {
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
export function lastOfKind(
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

/** Right behind one of the turns, with so many words between at most. */
export function nearTurn(talk: Talk, mark: Said, turns: readonly string[], words: number): boolean {
  const before = talk.said[mark.at - 1];
  return (
    before !== undefined &&
    isTurn(before, ...turns) &&
    before.clause === mark.clause &&
    mark.from - before.to <= words
  );
}
