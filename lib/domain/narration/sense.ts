import {
  clauseWords,
  inClause,
  inSentence,
  isTurn,
  type Of,
  type Said,
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
  /** Clauses that speak of the record. */
  readonly recordClauses: ReadonlySet<number>;
}

/** Sorts what was seen from what was denied, hoped for, or read off the record card. */
export function senseOf(talk: Talk): Sense {
  const unreal = new Set<number>();
  const recordClauses = new Set<number>();
  const claiming = claimedClauses(talk, recordClauses);
  const aside = asideSentences(talk);
  for (const clause of recordClauses)
    if (aside.has(inClause(talk, clause)[0]?.sentence ?? -1)) recordClauses.delete(clause);
  for (const mark of talk.said)
    if (aside.has(mark.sentence) || isUnreal(talk, mark, { claiming, unreal })) unreal.add(mark.at);
  const things = talk.said.filter((mark): mark is Of<"thing"> => mark.what === "thing");
  return {
    unreal,
    recordClauses,
    pointers: ats(
      things,
      (mark) =>
        isPointedPast(talk, mark) || isAfterRelative(talk, mark) || isMeasuredFrom(talk, mark),
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

/** What is so in general, was once, or ought to be: nobody sees it now. */
const GENERAL =
  /\b(always|usually|sometimes|whenever|typically|generally|most (of )?(the |these )?(laterals|houses|people|lines|pipes|roots)|remember|every (second|third|other|house|single)|look for|looks for|looking for|(is|are) good for|what they do|what happens|that's why|you never|never want|you want to|would've been|would have been|would expect|you'd expect|(a|an) \w+( \w+)? is (where|when|how|a)|you'll find|if (a|an|you|it|they|there|the|your|that|this)|(was|were) used|paid|that's where (the|all the) \w+ (is|are|runs?|goes?|get)|will kill|the way the|the right way|as a rule|in general|can cause|causes|means that|tends? to)\b/;
/** What was paid for, and what is to be done. */
const DEALS = /\b(recommend|recommends|recommending|quote|quoted|bid|bids|estimate|est\.)\b/;
/** `Roots come in at the joints`, `when you've got a hole`: what is so whenever it happens. */
const HABIT =
  /^(so |and |but )?when (you|you've|a|it|they|there's|the) |^(so |well |and |but )?(roots|cracks|bellies|people|trees|joints|taps|grease) (come|go|get|grow|like|love|want|happen|form|do|build)\b/;
/** Words by which somebody points at what is there. */
const POINTING =
  /\b(there's|there is|here's|here is|right here|right there|you got|you've got|i've got|we've got|we got|i got|see that|see this|see it|look at|i see|you can see)\b/;
/** From here on what was told is told once more. */
const RECAP =
  /\b(to sum (it )?up|sum it up|in summary|summary|summing up|recap|to recap|all told|that makes|altogether|so overall|in closing|to wrap (it )?up|wrapping up)\b/;

/** Sentences that make no rows: what is so in general, and what sums up. */
function asideSentences(talk: Talk): Set<number> {
  const aside = new Set<number>();
  const words = new Map<number, string[]>();
  for (const { sentence, text } of talk.speech.words)
    words.set(sentence, [...(words.get(sentence) ?? []), text]);
  let recap = false;
  for (const [sentence, said] of words) {
    const text = said.join(" ");
    const marks = inSentence(talk, sentence);
    recap = recap || (RECAP.test(text) && isLate(talk, sentence));
    const placed = marks.some((mark) => mark.what === "distance" && mark.distance.kind === "at");
    const habit = HABIT.test(text);
    const general = habit || GENERAL.test(text);
    if (recap || DEALS.test(text) || (general && !placed && (habit || !POINTING.test(text))))
      aside.add(sentence);
  }
  return aside;
}

/** Only what comes after most of the talk can sum it up. */
function isLate(talk: Talk, sentence: number): boolean {
  const things = talk.said.filter((mark) => mark.what === "thing");
  return things.filter((mark) => mark.sentence < sentence).length * 2 >= things.length;
}

function isUnreal(
  talk: Talk,
  mark: Said,
  { claiming, unreal }: { claiming: Claims; unreal: ReadonlySet<number> },
): boolean {
  if (mark.what === "turn") return false;
  const clause = inClause(talk, mark.clause);
  if (isClaimed(mark, clause, claiming) || isExpected(mark, clause)) return true;
  if (mark.what === "thing") return isNoFinding(talk, mark) || isDenied(talk, mark, unreal);
  return mark.what === "material" && isDenied(talk, mark, unreal);
}

/** `this lateral is in good shape`, and `or it might be rags`: another word for what was just named. */
function isNoFinding(talk: Talk, mark: Of<"thing">): boolean {
  if (mark.thing.kind === "deposit" && isBehindHole(talk, mark)) return true;
  if (mark.thing.kind === "water" && isLeak(talk, mark)) return true;
  if (isHoleOfTap(talk, mark) || isOfRoots(talk, mark)) return true;
  if (mark.thing.kind === "blockage" && isPartly(talk, mark)) return true;
  if (mark.thing.weak && !isPlain(talk, mark)) return true;
  if (/^(on|off) (the|my) (lens|camera|head)\b/.test(wordsOf(talk, mark.to, mark.to + 3)))
    return true;
  if (isAngleOfTieIn(talk, mark) || isFlowOfTieIn(talk, mark) || isPartOfMain(talk, mark))
    return true;
  const or = /^or\b/.test(clauseWords(talk, mark.clause));
  const measured = inClause(talk, mark.clause).some((other) => other.what === "distance");
  return or && !measured && mark.clause > 0;
}

/** `a hole, you can see the rocks`: the ground behind it, nothing that lies in the pipe. */
function isBehindHole(talk: Talk, mark: Said): boolean {
  if (!/\b(rocks?|gravel|dirt|sand)\b/.test(wordsOf(talk, mark.from, mark.to))) return false;
  return inSentence(talk, mark.sentence).some(
    (old) => old.at < mark.at && old.what === "thing" && BROKEN.test(old.thing.fault ?? ""),
  );
}

/** `roots poking in`: told of the roots. */
function isOfRoots(talk: Talk, mark: Of<"thing">): boolean {
  if (mark.thing.fault !== "protruding-tie-in") return false;
  const before = talk.said[mark.at - 1];
  return before?.what === "thing" && before.thing.fault === "roots" && mark.from - before.to <= 2;
}

/** `tap on my left, no wye, just a hole they chopped`: how the tap was made. */
function isHoleOfTap(talk: Talk, mark: Of<"thing">): boolean {
  if (!/\bholes?$/.test(wordsOf(talk, mark.from, mark.to))) return false;
  const made =
    /\b(just|through|into|out of|only|by) (a|the)$/.test(wordsOf(talk, mark.from - 2, mark.from)) ||
    /^(they|he|somebody|someone|was|that was)?( they)? ?(chopped|cut|knocked|busted|broke|punched|drilled|made|cored)\b/.test(
      wordsOf(talk, mark.to, mark.to + 3),
    );
  const before = (sentence: number) =>
    inSentence(talk, sentence).some(
      (old) => old.at < mark.at && old.what === "thing" && old.thing.kind === "tie-in",
    );
  const known = /\b(the|that)$/.test(wordsOf(talk, mark.from - 1, mark.from));
  const placed = inSentence(talk, mark.sentence).some((other) => other.what === "distance");
  return (made && before(mark.sentence)) || (known && !placed && before(mark.sentence - 1));
}

const BROKEN = /^(hole|broken|collapsed)$/;

/** `water’s seeping in`: told by what it does. */
function isLeak(talk: Talk, mark: Said): boolean {
  const next = talk.said[mark.at + 1];
  const leaks = next?.what === "thing" && next.thing.fault === "infiltration";
  return leaks && next.from - mark.to <= 2;
}

/** `half blocked`, `65% blocked`: how much of the pipe something takes. */
function isPartly(talk: Talk, mark: Said): boolean {
  return /(^|\b)(percent|%|half|quarters?|thirds?|partially|partly|mostly|nearly|almost|way)$/.test(
    wordsOf(talk, mark.from - 1, mark.from),
  );
}

/** `tap on the right, and it’s dripping`: it is in use; the pipe does not leak. */
function isFlowOfTieIn(talk: Talk, mark: Of<"thing">): boolean {
  if (mark.thing.kind !== "water" && mark.thing.fault !== "infiltration") return false;
  const lead = wordsOf(talk, mark.from - 3, mark.from);
  const tieIn = inSentence(talk, mark.sentence).some(
    (old) => old.at < mark.at && old.what === "thing" && old.thing.kind === "tie-in",
  );
  if (mark.thing.kind === "water")
    return tieIn && RUNS.test(wordsOf(talk, mark.to, mark.to + 4)) && !/standing/.test(lead);
  return tieIn && /\b(it's|it is|that's|that one's|still|and|one's)$/.test(lead);
}

/** What water does that comes out of a branch. */
const RUNS =
  /^(right |just )?(in it|in that|in there|in this one|coming|running|flowing|trickling|pouring|dribbling|out of (it|that|there))\b/;

/** `tap into the eight inch main`. */
const INTO_MAIN =
  /^(in|into|to|on|onto|at|of) (the |a |an |our |that )?(([\w.]+|\d+) inch )?(\w+ )?(main|city (line|sewer|main)|sewer main)\b/;

/** `in the main, at the tee`: the fitting at the main is no branch of the line. */
function isPartOfMain(talk: Talk, mark: Of<"thing">): boolean {
  if (mark.thing.kind !== "tie-in") return false;
  const before = talk.said[mark.at - 1];
  const joined =
    before?.what === "thing" &&
    before.thing.kind === "main" &&
    before.to === mark.from &&
    before.clause === mark.clause;
  if (joined || INTO_MAIN.test(wordsOf(talk, mark.to, mark.to + 7))) return true;
  if (!/\bat the$/.test(wordsOf(talk, mark.from - 2, mark.from))) return false;
  return inSentence(talk, mark.sentence).some(
    (old) => old.what === "thing" && old.thing.kind === "main" && Math.abs(old.at - mark.at) <= 3,
  );
}

/** `tee on the right, 90 degrees` is no bend of the pipe. */
function isAngleOfTieIn(talk: Talk, mark: Of<"thing">): boolean {
  if (mark.thing.kind !== "bend" || !/\bdegrees?$/.test(wordsOf(talk, mark.from, mark.to)))
    return false;
  return inSentence(talk, mark.sentence).some(
    (old) => old.at < mark.at && old.what === "thing" && old.thing.kind === "tie-in",
  );
}

function isPlain(talk: Talk, mark: Said): boolean {
  const lead = wordsOf(talk, mark.from - 4, mark.from);
  if (
    /\b(a|an|another|first|second|third|fourth|two|three|other|one|capped|live|dead|side)( [a-z]+)?( inch)?( [a-z]+)?$/.test(
      lead,
    )
  )
    return true;
  return inClause(talk, mark.clause).some(
    (other) => other.what === "distance" || other.what === "clock",
  );
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
  if (inClause(talk, mark.clause).some((other) => isTurn(other, "another"))) return null;
  if (mark.thing.describes && isNext(talk, mark)) return null;
  const before = talk.said
    .slice(0, mark.at)
    .findLast(
      (old): old is Of<"thing"> =>
        old.what === "thing" &&
        !unreal.has(old.at) &&
        old.thing.kind === mark.thing.kind &&
        old.thing.fault === mark.thing.fault,
    );
  if (!before) return null;
  const back = mark.sentence - before.sentence;
  if (mark.thing.describes) return back <= 1 ? before : null;
  const lead = wordsOf(talk, mark.from - 3, mark.from);
  if (/\bas the$/.test(lead)) return null;
  if (/\b(that|this|those|these|them|the)$/.test(lead)) return back <= BACK ? before : null;
  const named = /\b(that's|it's|that is|it is|definitely|called it)( a| an)?$/.test(lead);
  const own = inClause(talk, mark.clause).some((other) => other.what === "distance");
  return named && back <= 1 && !own ? before : null;
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

/** `past the wye`, `past that wye`; in `past that the joint is open` the joint is what was found. */
function isPointedPast(talk: Talk, mark: Said): boolean {
  const before = talk.said[mark.at - 1];
  const whole =
    before && /\b(that|this|it|there|here)$/.test(wordsOf(talk, before.from, before.to));
  return nearTurn(talk, mark, ["beyond", "short-of"], whole ? 0 : 1);
}

/** `what I’m reading you is off the tap`: what footage counts from. */
function isMeasuredFrom(talk: Talk, mark: Of<"thing">): boolean {
  if (mark.thing.kind !== "tie-in") return false;
  return /\b(is|are|was|reading|counting|measuring|measured|read|start|starts|feet|footage|numbers?) (off|from)( of)? (the|our)$/.test(
    wordsOf(talk, mark.from - 4, mark.from),
  );
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

/** `two feet past the wye`. */
function isAfterRelative(talk: Talk, mark: Said): boolean {
  const before = talk.said[mark.at - 1];
  if (before?.what !== "distance" || before.distance.kind !== "relative") return false;
  const between = wordsOf(talk, before.to, mark.from);
  return /^(past|beyond|further|before|short of|shy of|upstream of|after|up from|back from)( from)?( the| that| this)?$/.test(
    between,
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
  return !clause.some(
    (other) => isTurn(other, "self") && other.from >= turn.to && other.to <= mark.from,
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
