import { isOwner } from "../meaning/about.ts";
import {
  clauseWords,
  inClause,
  inSentence,
  isTurn,
  type Of,
  type Said,
  sentenceWords,
  type Talk,
  wordsOf,
} from "../meaning/said.ts";
import type { Ground } from "./ground.ts";

/** The clause says that one material becomes another. */
export function isChange(talk: Talk, mark: Said): boolean {
  return inClause(talk, mark.clause).some((other) => isTurn(other, "change"));
}

function isPipeTold(talk: Talk, mark: Said): boolean {
  return inClause(talk, mark.clause).some((other) => isTurn(other, "in-pipe"));
}

/** A material told of the pipe itself: not of a branch, a patch, the main, a surface or another house. */
export function isOfPipe(ground: Ground, mark: Of<"material">): boolean {
  const { talk, sense } = ground;
  if (sense.unreal.has(mark.at)) return false;
  const clause = inClause(talk, mark.clause);
  const words = clauseWords(talk, mark.clause);
  if (isOfBranch(ground, mark) || isPatch(talk, mark) || isOfMain(talk, mark)) return false;
  if (isElsewhere(talk, mark) || isJoined(ground, mark)) return false;
  if (
    /\b(on the (house|street|main|city|upper|lower|upstream|downstream) side|above that|below that)\b/.test(
      words,
    )
  )
    return isChange(talk, mark);
  if (isChange(talk, mark)) return true;
  if (isOfCrossing(ground, mark)) return false;
  if (isPipeTold(talk, mark)) return true;
  const other = clause.find(
    (one) => isOwner(sense, one) && one.thing.kind !== "main" && one.thing.kind !== "cleanout",
  );
  if (other && isSurface(other) && mark.at < other.at) return true;
  if (other && isSaidOfToo(talk, mark, other)) return true;
  if (other)
    return /\b(pipe is|line is|we're in|it's all|this is|it's (?:[\w']+ ){1,2}(?:out |in |down |up )?here)\b/.test(
      words,
    );
  if (/\b(pipe|line|we're|run|still|all|throughout)\b/.test(words)) return true;
  return !describesTieIn(ground, mark);
}

/** `the main’s eight inch concrete`, `that’s the city line there, it’s clay` */
const THEIRS =
  /\b(?:city|town|county|neighbors?|they|they've)(?: side| part)?(?: has| have| got| is| uses)+(?: [\w']+){0,2}$/;

const MAIN_IS =
  /(?<!\b(?:from|off|at|by|near|to|since|past|of|toward|towards|until|till) (?:the |our |that )?(?:city |street |public )?)\b(?:main|city line|city sewer|city pipe|city main|sewer main|sewer itself)(?: (?:itself|is|was|there|here|right|looks?|like|it's|it is|that's|you're looking at|a|an|all|old|new|kind|of|made|just|our|size|\d+|six|eight|ten|twelve|fifteen|eighteen|inch))*$/;

/** A branch has no pipe so wide, inches. */
const WIDE = 8;

function isOfMain(talk: Talk, mark: Said): boolean {
  const first = talk.speech.words.findIndex(({ sentence }) => sentence === mark.sentence);
  const lead = wordsOf(talk, first, mark.from);
  if (MAIN_IS.test(lead) || THEIRS.test(lead)) return true;
  const own = inSentence(talk, mark.sentence);
  const wide = own.some((other) => other.what === "diameter" && other.inches >= WIDE);
  const alone =
    own.every(({ what }) => what !== "thing" && what !== "distance") &&
    !/\b(it's|we're|line|pipe)\b/.test(sentenceWords(talk, mark.sentence));
  return (
    wide &&
    alone &&
    inSentence(talk, mark.sentence - 1).some(
      (other) => other.what === "thing" && other.thing.kind === "main",
    )
  );
}

/** `some of that orangeburg, and it’s egged out`: told first of the pipe, then how it is. */
function isSaidOfToo(talk: Talk, mark: Said, other: Said): boolean {
  return (
    mark.at < other.at &&
    /^(pipe )?([\w]+ )?(and|which|but) (it's|it is|she's|that's|is|it)\b/.test(
      wordsOf(talk, mark.to, other.from + 1),
    )
  );
}

/** What a pipe has at its joints, over it and around it, made of something else. */
const PART_OF =
  /^(lids?|caps?|covers?|collars?|plugs?|rings?|box|boxes|frames?|grates?|couplings?|couplers?|sleeves?|gaskets?|flanges?|bushings?|adapters?|fernco|bands?|clamps?|nipples?|plates?|blocks?|walls?|floors?|slab|footing|steps?|sidewalk|driveway|curb|patch|mortar|vault|manhole)\b/;

/** `her kitchen stack is cast iron` */
const THEIR_OWN =
  /\b(stacks?|vents?|plumbing|traps?|toilet|sink|downspouts?|gutters?|meter|manhole|lid|riser|water line|gas line)(?:(?: here| up there| in the house)? (?:is|are|was|were)|'s)(?: all| still| old| just| made of| probably| usually)*$/;

/** `they were short of iron in the war` */
const LACKED =
  /\b(short of|short on|low on|ran out of|run out of|out of money for|instead of|rather than)$/;

/** `the ground’s like iron`, `that clay swelling`, `the cement lining`: the soil, a likeness, a coat. */
function isNoPipe(talk: Talk, mark: Said): boolean {
  const own = wordsOf(talk, mark.from, mark.to);
  const lead = wordsOf(talk, mark.from - 4, mark.from);
  const behind = wordsOf(talk, mark.to, mark.to + 1);
  if (
    /\b(?:(?:ground|dirt|soil|earth|yard|sounds|smells|tastes|heavy|feet|hands)(?:'s| is| was| are)?(?: just| all)? like|hard as|tough as|solid as)(?: a)?$/.test(
      lead,
    )
  )
    return true;
  if (
    own === "clay" &&
    /^(swell|soil|shift|ground|dirt|heav|shrink|dries|mov|hardpan|country)/.test(behind)
  )
    return true;
  return /^(cement|concrete)$/.test(own)
    ? /^(lining|lined|coating|coat)$/.test(behind)
    : /^(lining|lined)$/.test(own) &&
        /\b(cement|mortar|concrete|tar|glass|ceramic|rubber|brick)$/.test(lead);
}

/** `so they lined fourteen feet of it`, `the lined part`: work told of, or a stretch that is known. */
function isLinedBefore(talk: Talk, mark: Said): boolean {
  return (
    wordsOf(talk, mark.from, mark.to) === "lined" &&
    (/\b(they|he|somebody|someone|city|landlord|you|only|just)$/.test(
      wordsOf(talk, mark.from - 1, mark.from),
    ) ||
      /^(part|piece|section|stretch|portion|bit|run)\b/.test(
        wordsOf(talk, mark.to, mark.to + 1),
      )) &&
    talk.said.some(
      (old) =>
        old.at < mark.at && old.what === "material" && old.material === "cured-in-place-liner",
    )
  );
}

/** `the iron lid`, `a little cement collar`, `they ran out of money for clay` */
function isElsewhere(talk: Talk, mark: Said): boolean {
  const own = talk.speech.words[mark.to];
  if (THEIR_OWN.test(wordsOf(talk, mark.from - 5, mark.from))) return true;
  if (isNoPipe(talk, mark) || isLinedBefore(talk, mark)) return true;
  const part = own?.clause === mark.clause && !isChange(talk, mark) && PART_OF.test(own.text);
  return part || LACKED.test(wordsOf(talk, mark.from - 4, mark.from));
}

/** `white pipe into the clay`, said of a branch. */
function isJoined(ground: Ground, mark: Of<"material">): boolean {
  const before = ground.talk.said.findLast(({ at, what }) => at < mark.at && what === "material");
  if (before?.what !== "material" || before.sentence !== mark.sentence) return false;
  const into =
    /^(pipe |line )?(glued |stuck |going |coming |comes |tied |shoved |cut )?(right |straight )?(in|into|onto|on) (the|our|this|your|old)?$/;
  return (
    into.test(`${wordsOf(ground.talk, before.to, mark.from)}`) && describesTieIn(ground, before)
  );
}

/** `somebody patched it here, cement`: what it was mended with. */
function isPatch(talk: Talk, mark: Said): boolean {
  const lead = wordsOf(talk, mark.from - 2, mark.from);
  // `so it was just that one stick of iron`
  if (
    /\bthat (?:[\w']+ ){0,2}(?:stick|piece|section|length|bit|stretch|part) of$/.test(
      wordsOf(talk, mark.from - 5, mark.from),
    )
  )
    return true;
  if (isChange(talk, mark) && /\bpieces? of$/.test(lead)) return false;
  if (/\b(chunks?|pieces?|hunks?|lumps?|shards?|slabs?|blobs?|globs?|bits?|splash) of$/.test(lead))
    return true;
  return /\b(patch(ed|es)?|mortar(ed)?|grout(ed)?|smeared|slopped|packed)\b/.test(
    wordsOf(talk, mark.from - 6, mark.to + 3),
  );
}

const BRANCH_SUBJECT =
  /^(?:and |but |so )?(?:its|his|her|their|that one|it comes|it came|it's coming|comes in|the (?:branch|tap|lateral|stub|side|service|connection|wye|tee|saddle)|that (?:branch|tap|lateral|wye|tee|saddle|line|pipe))\b/;

/** So many sentences back a branch is still what `its` means. */
const BRANCH_BACK = 3;

/** `its branch is four inch PVC`: said of the branch that was told before. */
function isOfBranch({ talk, sense }: Ground, mark: Said): boolean {
  if (!BRANCH_SUBJECT.test(clauseWords(talk, mark.clause))) return false;
  const last = talk.said.findLast(
    (other) => other.at < mark.at && isOwner(sense, other) && other.clause !== mark.clause,
  );
  return (
    last?.what === "thing" &&
    last.thing.kind === "tie-in" &&
    mark.sentence - last.sentence <= BRANCH_BACK
  );
}

/** `gas line right through the pipe. Little yellow plastic pipe.` */
function isOfCrossing({ talk, sense }: Ground, mark: Said): boolean {
  const last = talk.said.findLast((other) => other.at < mark.at && isOwner(sense, other));
  const read = inSentence(talk, mark.sentence).some((other) => other.what === "distance");
  const next = talk.said[mark.at + 1];
  if (next?.what === "thing" && next.thing.kind === "crossing" && next.clause === mark.clause)
    return true;
  if (last?.what !== "thing" || last.thing.kind !== "crossing") return false;
  return last.sentence === mark.sentence || (!read && mark.sentence - last.sentence === 1);
}

/** `cast iron, pretty rough on the bottom`: what is said of the surface is said of the pipe. */
function isSurface(mark: Said): boolean {
  return mark.what === "thing" && mark.thing.fault === "worn-surface";
}

/** `Wye on the left. Looks like clay.` */
function describesTieIn(ground: Ground, mark: Said): boolean {
  const { talk, sense } = ground;
  const sentence = inSentence(talk, mark.sentence).filter((other) => isOwner(sense, other));
  const last =
    sentence.findLast((other) => other.at < mark.at) ?? lastOwnerBefore(ground, mark.sentence);
  if (last?.what !== "thing" || !/^(tie-in|crossing)$/.test(last.thing.kind)) return false;
  const own = inSentence(talk, mark.sentence).some((other) => other.what === "distance");
  return last.sentence === mark.sentence || !own;
}

/** So many sentences back, over those that name no thing and no place. */
const ASKED_BACK = 4;

/** `Tap. What kind of pipe? Black plastic. ABS then.`: what these sentences are still about. */
function lastOwnerBefore({ talk, sense }: Ground, sentence: number): Said | undefined {
  for (let back = 1; back <= ASKED_BACK; back += 1) {
    const marks = inSentence(talk, sentence - back);
    const last = marks.findLast((other) => isOwner(sense, other));
    if (last || marks.some(({ what }) => what === "distance")) return last;
    const asked = talk.speech.words.find((word) => word.sentence === sentence - back)?.asks;
    if (!asked && !marks.some(({ what }) => what === "material")) return undefined;
  }
  return undefined;
}
