import { isPlain } from "../vocabulary/plain-words.ts";
import { inSentence, type Of, type Said, type Talk, wordsOf } from "./said.ts";

/** What a pipe carries: on its way, unless it is told as lying there. */
const CARRIED = /^(?:toilet )?paper$|^(?:soap|wipes?|crud|muck)$/;
/** A bed, an amount or a hold by which it lies. */
const LIES =
  /\b(?:bottom|floor|invert|flow line|packed|packing|pil(?:e|es|ed|ing)|wads?|wadded|lay(?:s|ing)?|lying|lies|sitting|lots?|bunch|ton|backed|backing|full|clump\w*|mats?|matted|balls?|balled|heavy|thick|percent|built|buildup|build|scum|solid|heap|mass|loads?|clog\w*|plug\w*|jam\w*|wall of|collect\w*|wrapped|wound|h[ua]ng\w* up|caught|chok\w*|caked|debris|deposit|stopp\w*)\b/;

/** Earth, which shows through whatever is open. */
const EARTH = /^(?:rocks?|gravel|dirt|sand|mud)$/;
const OPEN = /^(?:hole|broken|collapsed|open-joint)$/;

/** Parts of a pipe, and what it is made of, where something lies. */
const OF_PIPE = new Set(
  "floor walls sides roof ceiling channel trough bed iron clay tile cast concrete plastic pvc abs liner lining sag belly dip low swale bend elbow wye tee tap sewer joints bells hubs coupling fitting transition corner edge lip rest stretch area trap offset stub riser run pipe line lateral side bottom wall crown invert joint hub bell main sections ring way cleanout stack middle center inside crack hole roots boot mortar grout cement flange seal gasket repair patch collar sleeve terracotta old upper lower".split(
    " ",
  ),
);
/** Where water and dirt are that no camera sees: rooms, grounds and gear. */
const PLACE =
  "basement|cellar|crawl ?space|garage|yard|street|road|driveway|alley|gutter|manhole|trench|ditch|pit|kitchen|bathroom|laundry|tub|toilet|sink|shower|bucket|truck|van|house|floor drain|boots?|gloves?";
const HELD_THERE = new RegExp(
  String.raw`\b(?:${PLACE})(?: (?:has|had|got|is|was|with))+(?: [\w']+){0,3}$|\b(?:hot|cold|warm|rain|drinking|bath|dish|laundry)$`,
);
/** What speaks of water without its standing there: `you’re losing water`. */
const OF_WATER =
  /\b(?:los(?:e|es|ing)|lost|leaks|us(?:e|es|ing)|moving in the|waving in the|from the|for|after|(?:doing|working on|shut(?:ting)? off|shut(?:ting)?|turn(?:ed|ing)? off|turn(?:ed|ing)? on|cut(?:ting)? off|with) the|where (?:your|the|our))$/;

/** How water goes by that does not stand. */
const GOES =
  /^(?:that's (?:just |only )*(?:the |your |normal |some )*(?:flow|normal|fine|me|us)\b|(?:(?:in|on|along|at|across) the [\w']+ )?(?:(?:but|and|so|that|which|it|is|it's|that's|still|just|all|keeps|kind of|a little|pretty|really|was) )*(?:flowing|moving|draining|trickl\w+|dribbl\w+|flows|moves|drains|passing|runs? (?:right )?(?:over|through|past|by|down|across|around|along)|running(?! (?:in|out))|coming (?:down|by|along|at)|going (?:through|by|down|past|right)|(?:still |just |a little |pretty )*(?:up|down|low|high)\b|(?:drops?|dropped|goes|went) away|gone|done)\b)/;
/** What stands is told as moving only by its denial. */
const STILL = /\b(?:not|isn't|ain't|doesn't|don't|barely|hardly|never)\b/;

/** `the window cracked`, `my phone is broken`: done to something that no pipe has. */
const DONE_TO =
  /\b(?:the|my|his|her|your|their|our) ([\w']+)(?: (?:is|are|was|has|had|have|got|been|just|all|a|an))*$/;
const HAPPENS_TO =
  /^(?:crack(?:s|ed)?|broke|broken|busted|leak(?:s|ing)?|dropped|separated|drips?|dripping)$/;
const SOMEBODY =
  /\b(?:somebody|someone|guy|he|she|i|we|they|you|kid|kids|plumber|camera|head)(?: (?:just|had|must have|have|almost|all))?$/;

/** Told of something else than the pipe: `window cracked`, `red as a brick`, `a wrench somebody dropped`. */
export function isOfOther(talk: Talk, mark: Of<"thing">): boolean {
  const own = wordsOf(talk, mark.from, mark.to);
  const before = ownBefore(talk, mark, 6);
  const behind = ownBehind(talk, mark, 4);
  if (/\bas an?$|\b(?:that|this|those|these) (?:kinds?|sorts?|types?) of$/.test(before))
    return true;
  if (
    own === "brick" &&
    /^(?:thing|manhole|wall|wye|one|work|street|building|house|main)\b/.test(behind)
  )
    return true;
  if (mark.thing.kind !== "fault") return false;
  // `dropped the flashlight`
  const [, what = "pipe"] = /^(?:the|my|a|his|her|our) ([\w']+)/.exec(behind) ?? [];
  if (/^(?:dropped|broke|busted|cracked)$/.test(own) && !isPlain(what) && !OF_PIPE.has(what))
    return true;
  if (/^(?:dropped|fell in|broke|drop)$/.test(own) && SOMEBODY.test(before)) return true;
  if (/^drips?$/.test(own) && /^of (?!water)/.test(behind)) return true;
  if (!HAPPENS_TO.test(own)) return false;
  const noun = DONE_TO.exec(before)?.[1] ?? "pipe";
  const known = talk.said.some(
    (other) =>
      other.what !== "turn" &&
      other.from < mark.from &&
      mark.from - other.to <= 3 &&
      wordsOf(talk, other.from, other.to).split(" ").includes(noun),
  );
  return !known && !isPlain(noun) && !OF_PIPE.has(noun);
}

/** Dirt and water that are no find: on their way, somewhere else, or told of the find before. */
export function isPassing(talk: Talk, mark: Of<"thing">): boolean {
  const { kind } = mark.thing;
  if (kind === "deposit")
    return (
      isCarried(talk, mark) || isBehind(talk, mark) || isElse(talk, mark) || isDescribed(talk, mark)
    );
  return kind === "water" && (isOnItsWay(talk, mark) || isElse(talk, mark));
}

/** So many words behind it that are of its sentence. */
export function ownBehind(talk: Talk, mark: Said, count: number): string {
  return talk.speech.words
    .slice(mark.to, mark.to + count)
    .filter(({ sentence }) => sentence === mark.sentence)
    .map(({ text }) => text)
    .join(" ");
}

/** So many words before it that are of its sentence. */
function ownBefore(talk: Talk, mark: Said, count: number): string {
  return talk.speech.words
    .slice(Math.max(0, mark.from - count), mark.from)
    .filter(({ sentence }) => sentence === mark.sentence)
    .map(({ text }) => text)
    .join(" ");
}

/** `toilet paper going by`, `a little paper on the wall`; not `wipes all packed in`. */
function isCarried(talk: Talk, mark: Said): boolean {
  if (!CARRIED.test(wordsOf(talk, mark.from, mark.to))) return false;
  return !LIES.test(`${ownBefore(talk, mark, 6)} · ${ownBehind(talk, mark, 8)}`);
}

/** `a hole, you can see the rocks`, `looking up at mud`: the ground behind it. */
function isBehind(talk: Talk, mark: Said): boolean {
  if (!EARTH.test(wordsOf(talk, mark.from, mark.to))) return false;
  if (
    /^(?:packed |all )*(?:around|behind|outside)(?: of)? (?:it|that|them|there|the (?:pipe|tap|joint|outside))\b/.test(
      ownBehind(talk, mark, 5),
    )
  )
    return true;
  const before = talk.said.findLast(
    (old) => old.at < mark.at && (old.what === "thing" || old.what === "distance"),
  );
  const opened = (old: Said | undefined): boolean =>
    old?.what === "thing" && OPEN.test(old.thing.fault ?? "");
  if (inSentence(talk, mark.sentence).some((old) => old.at < mark.at && opened(old))) return true;
  return (
    opened(before) &&
    mark.sentence - (before?.sentence ?? 0) <= 2 &&
    /\b(?:see|seeing|looking|that's|it's|all|just)\b/.test(ownBefore(talk, mark, 5))
  );
}

/** `mud on my gloves`, `water in the basement`, `it had mud on it`: not in the pipe. */
function isElse(talk: Talk, mark: Of<"thing">): boolean {
  const own = wordsOf(talk, mark.from, mark.to);
  if (!/^(?:water|mud|dirt|sand|gravel|rocks?|grease|paper|soap|wipes)$/.test(own)) return false;
  if (HELD_THERE.test(ownBefore(talk, mark, 7))) return true;
  const behind = ownBehind(talk, mark, 9);
  if (/\b(?:had|has|got|with)(?: [\w']+){0,2}$/.test(ownBefore(talk, mark, 3)))
    if (mark.thing.kind === "deposit" && /^on (?:it|them)\b/.test(behind)) return true;
  const where =
    /^(?:all |up |out |right |just )*(?:on|in|over|from|off|out of|under) (?:the|my|your|her|his|their|our|that) ([\w']+)(?: ([\w']+))?/.exec(
      behind,
    );
  const [, first = "pipe", next = ""] = where ?? [];
  return !isPlain(first) && !OF_PIPE.has(first) && !OF_PIPE.has(next);
}

/** `white, like soap`, `that fat wet stuff`: how something else looks. */
function isDescribed(talk: Talk, mark: Said): boolean {
  if (
    /(?:^|[^s] )like(?: (?:a|some|\w+ing (?:on|over|through|in)))*$/.test(
      ownBefore(talk, mark, 4).replace(
        /\b(?:look|feel|seem)\w* like\b|\b(?:it's|is|something) like\b/,
        "",
      ),
    )
  )
    return true;
  return (
    wordsOf(talk, mark.from, mark.to) === "fat" &&
    /^(?:ones?|roots?|wet|old|as|around|enough|\w+ (?:one|stuff|root))\b/.test(
      ownBehind(talk, mark, 2),
    )
  );
}

/** Water that goes by, or comes out of the branch just told; not what stands. */
function isOnItsWay(talk: Talk, mark: Said): boolean {
  const own = wordsOf(talk, mark.from, mark.to);
  const behind = ownBehind(talk, mark, 9);
  // `goes under the sidewalk`: the pipe does.
  if (/\bunder$/.test(own))
    return /^(?:the|your|my|our|her|his|their|a|that|it) (?!water|surface)[\w']+/.test(behind);
  if (
    own === "full of water" &&
    /\b(?:ground|dirt|soil|yard|trench|basement|street)(?:'s| is| was)?(?: all| just)*$/.test(
      ownBefore(talk, mark, 4),
    )
  )
    return true;
  if (own !== "water") return false;
  if (OF_WATER.test(ownBefore(talk, mark, 4)) && !/\bout of\b/.test(ownBefore(talk, mark, 4)))
    return true;
  return GOES.test(behind) && !STILL.test(`${ownBefore(talk, mark, 3)} ${behind}`);
}
