import { isLeak, isOfRoots, isOfTieIn, isPartly, isPlugOfTieIn, isUpBranch } from "./of-branch.ts";
import { isOfOther, isPassing, ownBehind } from "./passing.ts";
import {
  clauseWords,
  inClause,
  inSentence,
  type Of,
  type Said,
  type Talk,
  wordsOf,
} from "./said.ts";

/** `Where there’s sand there’s going to be a hole`: anywhere, as a rule. */
const WHEREVER =
  /^(and |but |cause |because |you know |they say |well )*(where|wherever|whenever|anywhere|anytime|any time|everywhere|every time)( that)? (there's|there is|you('ve| have)?( got| get| see| find| have)?|we( get| see| find)?|they|everything|you'll)\b/;

function sentenceUpTo(talk: Talk, mark: Said): string {
  const from = talk.speech.words.findIndex(({ sentence }) => sentence === mark.sentence);
  return wordsOf(talk, from, mark.from);
}

/** `this lateral is in good shape`, and `or it might be rags`: another word for what was just named. */
export function isNoFinding(talk: Talk, mark: Of<"thing">): boolean {
  if (mark.thing.weak && !isPlain(talk, mark)) return true;
  if (WHEREVER.test(sentenceUpTo(talk, mark))) return true;
  if (
    /^[yt]$/.test(wordsOf(talk, mark.from, mark.to)) &&
    /\b[a-z]$/.test(wordsOf(talk, mark.from - 1, mark.from).replace(/^a$/, "the"))
  )
    return true;
  if (
    isPassing(talk, mark) ||
    isOfOther(talk, mark) ||
    isOtherWord(talk, mark) ||
    isOfTieIn(talk, mark) ||
    isPartOfName(talk, mark)
  )
    return true;
  if (
    isMisled(talk, mark) ||
    isDugHole(talk, mark) ||
    isHoleThrough(talk, mark) ||
    isPlugOfEntry(talk, mark) ||
    isRun(talk, mark) ||
    isUpBranch(talk, mark) ||
    isToBuild(talk, mark) ||
    isInGround(talk, mark) ||
    isOfPerson(talk, mark) ||
    isOldStub(talk, mark) ||
    isPipeIntoPipe(talk, mark) ||
    isAlternative(talk, mark)
  )
    return true;
  // `joint separation, none observed`
  if (
    /^(none|nil|zero|not) (observed|seen|noted|found|present|visible)\b/.test(
      wordsOf(talk, mark.to, mark.to + 2),
    )
  )
    return true;
  // `that was just the light on a drip`
  if (
    /\b(light|reflection|glare|shine|glint|sun|flash) (on|off|of|from|in) (a|the|some|that)$/.test(
      wordsOf(talk, mark.from - 3, mark.from),
    )
  )
    return true;
  // `at the lip`, `see the ledge through it`: where, and what lies behind a hole.
  if (isLip(talk, mark)) return true;
  if (
    /^(of [\w']+ )?(stuck |right |all |there )?(on|off|over) (the|my|our) (lens|camera|head|glass|dome|light|counter|screen|monitor|reel|cable|rod|cap|skid|tip)\b/.test(
      wordsOf(talk, mark.to, mark.to + 6),
    )
  )
    return true;
  const or = /^or\b/.test(clauseWords(talk, mark.clause));
  const measured = inClause(talk, mark.clause).some((other) => other.what === "distance");
  return or && !measured && mark.clause > 0;
}

/** `root saw`, `a hole-type tap`, `hole-saw cut`: named to tell another thing. */
function isPartOfName(talk: Talk, mark: Of<"thing">): boolean {
  const behind = wordsOf(talk, mark.to, mark.to + 3);
  if (
    /^(saw|saws|wrench|key|tool|cutter|cutters|killer|foam|treatment|filler|sealer|pump|trap|dye|blade|truck|crew|job|repair|test|machine)\b/.test(
      behind,
    )
  )
    return true;
  // `18 Ledge Road`
  if (
    /^(road|rd|street|avenue|ave|lane|boulevard|parkway|highway|terrace|county|creek)\b(?! (?:side|end|edge|crew))/.test(
      behind,
    ) &&
    mark.to - mark.from === 1
  )
    return true;
  // `called the gas co`
  if (
    /^co$/.test(wordsOf(talk, mark.from, mark.to)) &&
    COMPANY.test(wordsOf(talk, mark.from - 1, mark.from))
  )
    return true;
  // `the city’s big brick sewer`: what that is made of
  if (
    /^brick$/.test(wordsOf(talk, mark.from, mark.to)) &&
    /^(main|sewer|manhole|thing|pipe|arch|tunnel|trunk|barrel|line|vault|culvert)\b/.test(behind)
  )
    return true;
  const next = talk.said[mark.at + 1];
  return (
    /^(type|style|kind|looking|sized|size|shaped|like(?! (?:that|this|these|those|it)\b))\b/.test(
      behind,
    ) &&
    next?.what === "thing" &&
    next.from - mark.to <= 3
  );
}

const COMPANY =
  /^(gas|water|power|electric|cable|phone|light|utility|fiber|oil|coal|insurance|trucking|construction)$/;

/** `I don’t want him in the hole`, `how deep’s that hole`: what was dug, where no opening was told before. */
function isDugHole(talk: Talk, mark: Of<"thing">): boolean {
  if (mark.thing.fault !== "hole" || !/^holes?$/.test(wordsOf(talk, mark.from, mark.to)))
    return false;
  const lead = wordsOf(talk, mark.from - 5, mark.from);
  if (
    /\b(how|so|too|this|that) (deep|wide|big)('s| is| was)? (the|this|that|your|our|my)$/.test(lead)
  )
    return true;
  if (
    !/\b(in|into|down|out of|up out of|over|around|by|near|from|dug|digging|dig|fill) (the|this|that|my|our|your)$/.test(
      lead,
    )
  )
    return false;
  return !talk.said.some(
    (old) =>
      old.at < mark.at &&
      old.what === "thing" &&
      (old.thing.kind === "tie-in" ||
        /^(hole|broken|collapsed|open-joint|crack)$/.test(old.thing.fault ?? "")),
  );
}

/** `whoever snaked it just poked a hole through em`: through what was told last and lies in the pipe. */
function isHoleThrough(talk: Talk, mark: Of<"thing">): boolean {
  if (mark.thing.fault !== "hole") return false;
  if (
    !/^(right |straight |clean )?(through|in) (the (roots|grease|rags|wad|ball|mud|scale)|'?em|them|it|that|there)\b/.test(
      wordsOf(talk, mark.to, mark.to + 4),
    )
  )
    return false;
  if (
    !/\b(poke|punch|bore|cut|drill|chew|push|made|make|shove|open|ream|clear|run|ran|put|blew|blow|saw|auger)\w*( (just|only|up|out|right))?( (a|the|one|some|little|small))+$/.test(
      wordsOf(talk, mark.from - 5, mark.from),
    )
  )
    return false;
  const last = talk.said.findLast(
    (old) => old.at < mark.at && old.what === "thing" && old.thing.fault !== "hole",
  );
  return (
    last?.what === "thing" &&
    (/^(deposit|blockage)$/.test(last.thing.kind) || last.thing.fault === "roots")
  );
}

/** `soap bubbles`, `daylight around the cap`, `clean out of the kitchen`: the words alone mislead. */
function isMisled(talk: Talk, mark: Of<"thing">): boolean {
  const own = wordsOf(talk, mark.from, mark.to);
  const behind = wordsOf(talk, mark.to, mark.to + 6);
  // `papel del permiso`
  // `it’s on the paper`
  if (
    own === "paper" &&
    /\b(on|in|of|from|got) (the|this|that|my|a)$/.test(wordsOf(talk, mark.from - 2, mark.from))
  )
    return true;
  if (own === "paper")
    return /^(of |from )?(the )?(permit|city|county|town|work|office)\b/.test(behind);
  if (own === "soap") return /^(bubbles?|suds|foam)\b/.test(behind);
  if (own === "clean out") return /^of\b/.test(behind);
  if (own !== "daylight") return false;
  return (
    /\b(cap|lid|top|cleanout|riser|manhole|house|door|window)\b/.test(behind) ||
    inSentence(talk, mark.sentence).some(
      (old) =>
        (old.what === "thing" && /^(cleanout|main)$/.test(old.thing.kind)) ||
        (old.what === "distance" && old.distance.from === 0),
    )
  );
}

/** `might be a connection, might be just a chip`: one thing, and not known which. */
function isAlternative(talk: Talk, mark: Of<"thing">): boolean {
  const before = talk.said.findLast(
    (old) => old.at < mark.at && (old.what === "thing" || old.what === "distance"),
  );
  if (before?.what !== "thing" || before.sentence !== mark.sentence) return false;
  const might = /\b(might|could|may)( very well| also)? be( (just|a|an|only|some|the))*( [\w']+)?$/;
  return (
    might.test(wordsOf(talk, mark.from - 6, mark.from)) &&
    might.test(wordsOf(talk, before.from - 6, before.from))
  );
}

/** `y’all got water running in 115`: who runs it, to see whose branch it is. */
function isRun(talk: Talk, mark: Of<"thing">): boolean {
  if (mark.thing.kind !== "water" && mark.thing.fault !== "infiltration") return false;
  return /\b(y'all|you|you guys|they|she|he|somebody|someone|anybody|him|her|them)( all)?( (got|have|has|had|is|are|run|runs|ran|running|turn|turned|put))+( (some|the|any))?$/.test(
    wordsOf(talk, mark.from - 5, mark.from),
  );
}

function isLip(talk: Talk, mark: Of<"thing">): boolean {
  if (!/^(lip|ledge|edge|shelf)$/.test(wordsOf(talk, mark.from, mark.to))) return false;
  if (/^of (the|that) (next|other|far|hub|bell)\b/.test(ownBehind(talk, mark, 3))) return false;
  return (
    /\b(at|on|off|over|from) the$/.test(wordsOf(talk, mark.from - 2, mark.from)) ||
    /^through (it|there|that|the hole)\b/.test(wordsOf(talk, mark.to, mark.to + 3))
  );
}

/** `if I had to put a proper wye on it`, `to hang a new saddle on there`: what would be built. */
function isToBuild(talk: Talk, mark: Of<"thing">): boolean {
  if (mark.thing.kind !== "tie-in" && mark.thing.kind !== "cleanout") return false;
  return /\b(to|could|would|should|i'd|we'd|they'd|you'd|i'll|we'll|gonna|can|must|just) (put|hang|install|set|glue|add|cut|get|build|have|use|do|plumb|tie|make)( [\w']+){0,2} (new|proper|real|decent|factory|good)$/.test(
    wordsOf(talk, mark.from - 7, mark.from),
  );
}

/** `that’s the city’s old stub`: the end of the public sewer that this pipe was tied on to. */
function isOldStub(talk: Talk, mark: Of<"thing">): boolean {
  if (!/^stubs?$/.test(wordsOf(talk, mark.from, mark.to))) return false;
  const theirs = /\b(the old|city's|city|town's|county's|street|public|main)( old)?$/;
  return (
    theirs.test(wordsOf(talk, mark.from - 3, mark.from)) &&
    inSentence(talk, mark.sentence).every(({ what }) => what !== "clock")
  );
}

/** `there’s a gas line above us somewhere`, `I had the gas line marked`: in the ground, not in the pipe. */
function isInGround(talk: Talk, mark: Of<"thing">): boolean {
  if (mark.thing.kind !== "crossing") return false;
  return (
    /^(?:[\w']+ ){0,2}?(?:above|over|under|below|beside|next to|near|outside|around|along|marked|located|flagged|moved|on the (?:other|same|far|street|north|south|east|west)|in the (?:street|yard|parkway|easement|alley))\b/.test(
      ownBehind(talk, mark, 6),
    ) ||
    /\b(?:call|mark|locate|hit|find|watch|marked|located|shut off)(?: for| out for)?(?: the| that| your| a)?$/.test(
      wordsOf(talk, mark.from - 4, mark.from),
    )
  );
}

/** `bend down and look`: what a person does. */
function isOfPerson(talk: Talk, mark: Of<"thing">): boolean {
  return (
    /^(bend|turn|hook|swing)\b/.test(wordsOf(talk, mark.from, mark.to)) &&
    /^(down|over) (here|and|there|to|a|so)\b/.test(wordsOf(talk, mark.to, mark.to + 2))
  );
}

/** `in the old clay, they just shoved it in and mortared it`: the pipe into the next one, no branch. */
function isPipeIntoPipe(talk: Talk, mark: Of<"thing">): boolean {
  if (mark.thing.kind !== "tie-in" || !mark.thing.describes) return false;
  // `conduit punched right through the sewer`
  const crosses = inSentence(talk, mark.sentence).some(
    (old) => old.at < mark.at && old.what === "thing" && old.thing.kind === "crossing",
  );
  if (crosses) return true;
  if (!/\b(it|them)\b/.test(wordsOf(talk, mark.from - 1, mark.to + 2))) return false;
  const last = talk.said.findLast(
    ({ at, what }) => at < mark.at && (what === "thing" || what === "material"),
  );
  const own = inSentence(talk, mark.sentence);
  return (
    last?.what === "material" &&
    mark.sentence - last.sentence <= 1 &&
    own.every(({ what }) => what !== "clock")
  );
}

/** Told of something else that is named already. */
function isOtherWord(talk: Talk, mark: Of<"thing">): boolean {
  const { kind } = mark.thing;
  if (kind === "water") return isLeak(talk, mark);
  if (kind === "blockage") return isPartly(talk, mark) || isPlugOfTieIn(talk, mark);
  return isOfRoots(talk, mark);
}

/** `zero’s at the plug`, `the one with the brick on it`: what the way in is closed with. */
function isPlugOfEntry(talk: Talk, mark: Of<"thing">): boolean {
  if (!/^(plug|brick)$/.test(wordsOf(talk, mark.from, mark.to))) return false;
  const own = inSentence(talk, mark.sentence);
  if (own.some((old) => old.what === "distance" && old.distance.from === 0)) return true;
  const lead = wordsOf(talk, mark.from - 4, mark.from);
  if (!/\b(the|my|our|your|his|her|their|house)( [\w']+)?$/.test(lead)) return false;
  return (
    !/\b(there's|here's|is|see|got|hit|hitting|at) (the|your)( [\w']+)?$/.test(lead) &&
    own.every(({ what }) => what !== "distance") &&
    !talk.said.some(
      (old) =>
        old.at < mark.at && old.what === "thing" && /^(blockage|deposit)$/.test(old.thing.kind),
    )
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
  return [-1, 0, 1].some((by) => {
    const marks = inClause(talk, mark.clause + by).filter(
      ({ sentence }) => sentence === mark.sentence,
    );
    const placing = marks.some(({ what }) => what === "distance" || what === "clock");
    return placing && (by === 0 || marks.every(({ what }) => what !== "thing"));
  });
}
