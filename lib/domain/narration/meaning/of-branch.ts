import { ownBehind } from "./passing.ts";
import { inSentence, type Of, type Said, type Talk, wordsOf } from "./said.ts";

/** `roots in it, not in our pipe but up in the branch` */
export function isUpBranch(talk: Talk, mark: Of<"thing">): boolean {
  if (mark.thing.kind !== "fault" && mark.thing.kind !== "deposit") return false;
  const behind = ownBehind(talk, mark, 10);
  return /\bnot in (our|the|your|this|my) (pipe|line|main|lateral)\b|^(in it )?(up|inside|back|way) (up )?(in |inside |into )?(the|that|their|its) (branch|tap|lateral|connection|wye|tee)\b/.test(
    behind,
  );
}

/** Told of a branch, or of the connection at the main. */
export function isOfTieIn(talk: Talk, mark: Of<"thing">): boolean {
  return (
    isHoleOfTap(talk, mark) ||
    isAngleOfTieIn(talk, mark) ||
    isFlowOfTieIn(talk, mark) ||
    isUseOfTieIn(talk, mark) ||
    isPartOfMain(talk, mark)
  );
}

/** `an abandoned wye, plugged with mortar`, `Dead. Brick in it.`: the branch, not the pipe. */
export function isPlugOfTieIn(talk: Talk, mark: Of<"thing">): boolean {
  const plug =
    /^(plugged|plug|blocked|stopped up|blocked off|plugged up|brick)$/.test(
      wordsOf(talk, mark.from, mark.to),
    ) && mark.thing.halts === undefined;
  if (!plug) return false;
  const before = talk.said
    .slice(0, mark.at)
    .findLast(
      (old) =>
        (old.what === "thing" &&
          !/^(blockage|main)$/.test(old.thing.kind) &&
          old.thing.fault !== "hole") ||
        old.what === "distance",
    );
  if (before?.what === "thing")
    return before.thing.kind === "tie-in" && mark.sentence - before.sentence <= PLUGGED;
  const own = inSentence(talk, mark.sentence).findLast(
    (old) => old.at < mark.at && old.what === "thing",
  );
  return own?.what === "thing" && own.thing.kind === "tie-in";
}

/** So many sentences on, a plug is still that of the branch just told. */
const PLUGGED = 3;

/** `roots poking in`: told of the roots. */
export function isOfRoots(talk: Talk, mark: Of<"thing">): boolean {
  if (mark.thing.fault !== "protruding-tie-in") return false;
  const before = talk.said[mark.at - 1];
  return before?.what === "thing" && before.thing.fault === "roots" && mark.from - before.to <= 2;
}

/** `tap on my left, no wye, just a hole they chopped`: how the tap was made. */
function isHoleOfTap(talk: Talk, mark: Of<"thing">): boolean {
  const own = wordsOf(talk, mark.from, mark.to);
  const beside = talk.said[mark.at - 1];
  // `a tap hole`
  if (
    /^holes?\b/.test(own) &&
    beside?.what === "thing" &&
    beside.thing.kind === "tie-in" &&
    beside.to === mark.from
  )
    return true;
  if (!/^(hole|broken|crack)$/.test(mark.thing.fault ?? "")) return false;
  // `a round hole with a pipe behind it`
  if (
    /^(?:in it )?(?:(?:off |on |to |in )?(?:the |my |your )?(?:left|right|top|side|bottom|crown)(?: side)? )?(?:with|and) (?:a|an|another|some) (?:\w+ )?(?:pipe|line)\b/.test(
      ownBehind(talk, mark, 9),
    )
  )
    return lastTold(talk, mark)?.thing.kind === "tie-in";
  // `the wall’s been broken out and the pipe pushed in`
  if (PUSHED_IN.test(ownBehind(talk, mark, 9)) && lastTold(talk, mark)?.thing.kind === "tie-in")
    return true;
  const byHand =
    /\b(they|somebody|someone|he|plumber|guy)( \w+)?( (made|broke|busted|knocked|cut|chopped|put|beat|bash|bashed|smashed|punched|poked|hacked|hammered|drilled|whacked|pounded|bored|sawed))?( a| the)?$/.test(
      wordsOf(talk, mark.from - 5, mark.from),
    );
  if (!/\bholes?\b/.test(own) && !byHand) return false;
  const made =
    byHand ||
    /\b(just|through|into|out of|only|by) (a|the)$/.test(wordsOf(talk, mark.from - 2, mark.from));
  const before = (sentence: number) =>
    inSentence(talk, sentence).some(
      (old) => old.at < mark.at && old.what === "thing" && old.thing.kind === "tie-in",
    );
  const known = /\b(the|that)$/.test(wordsOf(talk, mark.from - 1, mark.from));
  const placed = inSentence(talk, mark.sentence).some((other) => other.what === "distance");
  return (made && before(mark.sentence)) || (known && !placed && before(mark.sentence - 1));
}

const PUSHED_IN =
  /^(?:out |in |open |up )?and (?:[\w']+ ){0,3}?(?:stuck|pushed|shoved|stabbed|ran|jammed|poked|put|fed|slid|rammed)\b/;

/** `water’s seeping in`: told by what it does. */
export function isLeak(talk: Talk, mark: Said): boolean {
  const next = talk.said[mark.at + 1];
  const leaks = next?.what === "thing" && next.thing.fault === "infiltration";
  return leaks && next.from - mark.to <= 2;
}

/** `half blocked`, `65% blocked`: how much of the pipe something takes. */
export function isPartly(talk: Talk, mark: Said): boolean {
  return /(^|\b)(percent|%|half|quarters?|thirds?|partially|partly|mostly|nearly|almost|way)$/.test(
    wordsOf(talk, mark.from - 1, mark.from),
  );
}

/** What was told last, no footage read off since, and not long ago. */
function lastTold(talk: Talk, mark: Said): Of<"thing"> | null {
  const before = talk.said.findLast(
    (old) =>
      old.at < mark.at &&
      (old.what === "distance" ||
        (old.what === "thing" && !/^(water|deposit)$/.test(old.thing.kind))),
  );
  return before?.what === "thing" && mark.sentence - before.sentence <= PLUGGED ? before : null;
}

/** `tap on the right, and it’s dripping`: it is in use; the pipe does not leak. */
function isFlowOfTieIn(talk: Talk, mark: Of<"thing">): boolean {
  if (mark.thing.kind !== "water" && mark.thing.fault !== "infiltration") return false;
  if (/^(?:[\w']+ ){0,2}?out of (?:it|that|there|this one)\b/.test(ownBehind(talk, mark, 6)))
    return lastTold(talk, mark)?.thing.kind === "tie-in";
  const lead = wordsOf(talk, mark.from - 3, mark.from);
  const tieIn = inSentence(talk, mark.sentence).some(
    (old) => old.at < mark.at && old.what === "thing" && old.thing.kind === "tie-in",
  );
  if (mark.thing.kind === "water")
    return tieIn && RUNS.test(wordsOf(talk, mark.to, mark.to + 4)) && !/standing/.test(lead);
  return tieIn && /\b(it's|it is|that's|that one's|still|and|one's)$/.test(lead);
}

/** `that one’s live, see the water`, `there’s toilet paper in it, so it’s being used`: by what it is known to be in use. */
function isUseOfTieIn(talk: Talk, mark: Of<"thing">): boolean {
  const carried =
    mark.thing.kind === "water" ||
    (mark.thing.kind === "deposit" &&
      /\b(paper|soap|suds|wipes|grease)$/.test(wordsOf(talk, mark.from, mark.to)));
  if (!carried) return false;
  const before = talk.said.findLast(
    (old) =>
      old.at < mark.at &&
      (old.what === "distance" ||
        (old.what === "thing" && !/^(water|deposit)$/.test(old.thing.kind))),
  );
  const told =
    before?.what === "thing" &&
    before.thing.kind === "tie-in" &&
    (mark.sentence - before.sentence <= PLUGGED ||
      talk.speech.words[mark.from]?.breath === talk.speech.words[before.from]?.breath);
  if (!told) return false;
  const between = wordsOf(talk, before.to, mark.from);
  const behind = wordsOf(talk, mark.to, mark.to + 8);
  return IN_USE.test(between) || IN_USE.test(behind);
}

const IN_USE =
  /\b(live|active|alive|in use|being used|using|used|uses|flush|flushed|flushing|running)\b/;

/** What water does that comes out of a branch. */
const RUNS =
  /^(right |just )?(in it|in that|in there|in this one|coming|running|flowing|trickling|pouring|dribbling|out of (it|that|there))\b/;

/** `tap into the eight inch main`. */
const INTO_MAIN =
  /^(in|into|to|on|onto|at|of) (the |a |an |our |that )?(([\w.]+|\d+) inch )?((?!right|left|top|bottom)\w+ )?(main|city (line|sewer|main)|sewer main)\b/;

/** `in the main, at the tee`: the fitting at the main is no branch of the line. */
function isPartOfMain(talk: Talk, mark: Of<"thing">): boolean {
  if (mark.thing.kind !== "tie-in") return false;
  const before = talk.said[mark.at - 1];
  // `footage zero at the connection`: where the footage was set.
  if (
    before?.what === "distance" &&
    before.distance.from === 0 &&
    before.clause === mark.clause &&
    /^(is |at |on |from |here )*(the |our )?(center of the )?$/.test(
      `${wordsOf(talk, before.to, mark.from)} `,
    )
  )
    return true;
  const own = inSentence(talk, mark.sentence);
  // `zero is at the main, right where the six inch comes in`
  if (
    own.some((old) => old.what === "thing" && old.thing.kind === "main" && old.at < mark.at) &&
    own.some((old) => old.what === "distance" && old.distance.from === 0)
  )
    return true;
  const joined =
    before?.what === "thing" &&
    before.thing.kind === "main" &&
    before.to === mark.from &&
    before.clause === mark.clause;
  if (joined || INTO_MAIN.test(wordsOf(talk, mark.to, mark.to + 7))) return true;
  if (
    /^(out )?(at|in|under) (the )?(street|road|alley|city)\b/.test(
      wordsOf(talk, mark.to, mark.to + 4),
    )
  )
    return true;
  const itself =
    /\b(the|our)$/.test(wordsOf(talk, mark.from - 1, mark.from)) &&
    /^itself\b/.test(wordsOf(talk, mark.to, mark.to + 1));
  if (!itself && !/\bat the$/.test(wordsOf(talk, mark.from - 2, mark.from))) return false;
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
