import type { Material } from "../../facts/line.ts";
import { MATERIAL_WORDS } from "../../facts/line-words.ts";
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
import { type Axis, growsUpstream } from "./axis.ts";
import type { Ground } from "./ground.ts";
import { motionAt } from "./track.ts";

/** What was said of the shared pipe's own material, at one place. */
export interface PipeSaid {
  readonly mark: Of<"material">;
  /** What begins here as the camera goes. */
  readonly material: Material;
  /** What lies upstream of here. */
  readonly upstream: Material;
  readonly diameter: number | null;
  readonly note: string;
  /** Where it was told to begin; null where its own words or the time tell. */
  readonly begins: Begins | null;
}

/** The start of the run, or the end of the material before: `cast iron out to seven feet, then clay`. */
type Begins = "start" | Of<"distance">;

/**
 * The first mention of the pipe's material, and every change after it. A material that belongs to
 * a branch or only describes a fault is none of these.
 */
export function pipeSaid(ground: Ground): PipeSaid[] {
  let told: Told = { rows: [], current: null };
  for (const mark of ground.talk.said)
    if (mark.what === "material" && isOfPipe(ground, mark)) told = withTold(ground, mark, told);
  return told.rows;
}

/** The rows so far, and what the camera is in. */
interface Told {
  readonly rows: PipeSaid[];
  readonly current: Material | null;
}

/** What a bare word may be short for: `iron` behind ductile iron, `plastic` behind ABS. */
const SHORT_FOR: ReadonlyMap<string, string> = new Map([
  ["iron", "ductile-iron"],
  ["plastic", "abs"],
  ["plastic pipe", "abs"],
]);

/** `it’s ductile. It’s iron for a short way only.`: the same pipe in fewer words. */
function isLooselyNamed(talk: Talk, mark: Said, current: Material | null): boolean {
  return current !== null && SHORT_FOR.get(wordsOf(talk, mark.from, mark.to)) === current;
}

function withTold(ground: Ground, mark: Of<"material">, told: Told): Told {
  const { rows, current } = told;
  const last = rows.at(-1);
  const past = rows.slice(0, -1);
  if (isGoneThrough(ground, mark) || isLooselyNamed(ground.talk, mark, current)) return told;
  if (last && isPutRight(ground, mark, last))
    return { rows: [...past, { ...last, ...namedAs(last, mark) }], current: mark.material };
  const row = toldBySpan(ground, mark, { current, last }) ?? toldByChange(ground, mark, current);
  if (!row && changePair(ground, mark) === "first") return told;
  if (!row) return { rows, current: mark.material };
  return { rows: [...(isSpelledOut(row, rows) ? past : rows), row], current: mark.material };
}

/** `so thirty-three to forty-one is the plastic piece`: a stretch that lies behind, of what was told before. */
function isGoneThrough({ talk, track }: Ground, mark: Of<"material">) {
  const [told] = inSentence(talk, mark.sentence)
    .filter(
      (other): other is Of<"distance"> =>
        other.what === "distance" && other.distance.kind !== "extent",
    )
    .sort((a, b) => Math.abs(a.at - mark.at) - Math.abs(b.at - mark.at));
  if (!told || told.distance.to === null || told.distance.choice) return false;
  const end = told.distance.to - NEAR_END;
  return track.points.some(({ at, counter }) => at < mark.at && counter >= end);
}

/** So near, hundredths of a foot, the camera has come to the end of a stretch. */
const NEAR_END = 100;
/** So many sentences on, a first guess is put right. */
const GUESSED = 4;

/** `so, cast iron? It’s plastic. ABS then.`: another name for the same pipe, with nothing read off between. */
function isPutRight({ talk, track }: Ground, mark: Of<"material">, last: PipeSaid): boolean {
  if (mark.material === last.material || mark.sentence - last.mark.sentence > GUESSED) return false;
  const between = talk.said.slice(last.mark.at + 1, mark.at);
  if (track.points.some(({ at }) => at > last.mark.at && at < mark.at)) return false;
  const words = wordsOf(talk, last.mark.to, mark.from);
  if (between.some((other) => isTurn(other, "change"))) return false;
  if (SHORT_FOR.get(wordsOf(talk, last.mark.from, last.mark.to)) === mark.material)
    return !MOVED_ON.test(wordsOf(talk, Math.max(last.mark.to, mark.from - 3), mark.from));
  return RIGHTED.test(words) && !MOVED_ON.test(words);
}

/** How a guess is taken back, or what was named roughly is named closely. */
const RIGHTED =
  /\b(no|not|wait|actually|sorry|i mean|scratch|strike|what|is|guess|or)\b|^(or |like |pipe )?$/;
const MOVED_ON = /\b(now|then|goes|turns?|into|to|from|back|starts?|begins?|until|till|and|here)\b/;

function namedAs(last: PipeSaid, { material }: Of<"material">) {
  const upstream = last.upstream === last.material ? material : last.upstream;
  return { material, upstream };
}

/** `that’s cast iron, right, cast iron to about five`: the first material once more, with its end. */
function isSpelledOut(row: PipeSaid, rows: readonly PipeSaid[]): boolean {
  return row.begins === "start" && rows.length === 1;
}

/** The first material by how far it goes, and the one behind it from there on. */
function toldBySpan(
  ground: Ground,
  mark: Of<"material">,
  { current, last }: { readonly current: Material | null; readonly last: PipeSaid | undefined },
): PipeSaid | null {
  if (
    (current === null || current === mark.material) &&
    spanOf(ground.talk, mark) &&
    isFirstPlace(ground, mark)
  )
    return { ...rowFor(ground, mark, { from: null, changed: false }), begins: "start" };
  const end = last?.begins === "start" ? spanOf(ground.talk, last.mark) : null;
  if (!end || mark.sentence - end.sentence > 1 || mark.material === current) return null;
  const own = inSentence(ground.talk, mark.sentence).some(
    (other) => other.what === "distance" && other.at > mark.at && other.distance.kind === "at",
  );
  if (own && mark.sentence > end.sentence) return null;
  return { ...rowFor(ground, mark, { from: current, changed: true }), begins: end };
}

function toldByChange(
  ground: Ground,
  mark: Of<"material">,
  current: Material | null,
): PipeSaid | null {
  if (isUnchanged(ground.talk, mark)) return null;
  const pair = changePair(ground, mark);
  if (pair === "first" || isEnding(ground.talk, mark)) return null;
  const from: Material | null = pair?.material ?? current;
  if (mark.material === from && from === current) return null;
  return rowFor(ground, mark, { from, changed: isChange(ground.talk, mark) || pair !== null });
}

const UNTIL =
  /^(?:pipe )?(?:and )?(?:in (?:good|fair|poor|bad) (?:shape|condition) )?(?:from (?:the |our )?\w+(?: \w+)? (?:to|until|out to)|for the first|for|out to|on out to|up to|down to|clear to|all the way to|to|till|until|through|out for)(?: (?:about|around|maybe|the|like|roughly))*$/;

/** How far the material goes that is told first: `cast iron out to seven feet`, `first six feet it’s plastic`. */
function spanOf(talk: Talk, mark: Said): Of<"distance"> | null {
  const next = talk.said.find(
    (other) =>
      other.at > mark.at &&
      !isTurn(other, "hedge", "nothing", "closes", "change") &&
      !(other.what === "thing" && other.thing.kind === "cleanout"),
  );
  if (next?.what === "distance" && next.sentence === mark.sentence)
    if (UNTIL.test(wordsOf(talk, mark.to, next.from))) return next;
  const before = talk.said.findLast((other) => other.at < mark.at);
  if (before?.what !== "distance" || before.sentence !== mark.sentence) return null;
  const first = wordsOf(talk, before.from - 1, before.from) === "first";
  return first && mark.from - before.to <= 4 ? before : null;
}

/** No footage but zero was read before. */
function isFirstPlace({ track }: Ground, mark: Said): boolean {
  return track.points.every(({ at, counter }) => at > mark.at || counter === 0);
}

/** `clay quits`: what was until here. */
function isEnding(talk: Talk, mark: Said): boolean {
  return /^(pipe )?(just )?(quits?|ends?|stops?|ended|stopped|runs out|gives out|finishes|is (done|over))\b/.test(
    wordsOf(talk, mark.to, mark.to + 4),
  );
}

/** `still clay`, `it’s clay yet`: told because nothing changed. */
function isUnchanged(talk: Talk, mark: Said): boolean {
  return (
    /\bstill( in)?( the| all| that| this| our| same)*$/.test(
      wordsOf(talk, mark.from - 4, mark.from),
    ) || /^(pipe )?yet$/.test(wordsOf(talk, mark.to, mark.to + 1))
  );
}

/** In `from clay to cast iron`: `first` for the clay, the clay for the cast iron. */
function changePair(ground: Ground, mark: Of<"material">): "first" | Of<"material"> | null {
  const beside = inSentence(ground.talk, mark.sentence).filter(
    (other): other is Of<"material"> =>
      other.what === "material" && !ground.sense.unreal.has(other.at),
  );
  const after = beside.find((other) => other.at > mark.at);
  if (after && joinsChange(ground.talk, mark, after)) return "first";
  const before = beside.findLast((other) => other.at < mark.at);
  return before && joinsChange(ground.talk, before, mark) ? before : null;
}

function joinsChange(talk: Talk, from: Said, to: Said): boolean {
  const said = talk.said.slice(from.at + 1, to.at);
  const turned = said.some((mark) => isTurn(mark, "change"));
  // Not the `to` of a stretch.
  const read = said.findLast(({ what }) => what === "distance");
  const between = wordsOf(talk, read?.to ?? from.to, to.from);
  return turned || /\b(to|into)\b/.test(between);
}

function isChange(talk: Talk, mark: Said): boolean {
  return inClause(talk, mark.clause).some((other) => isTurn(other, "change"));
}

function isPipeTold(talk: Talk, mark: Said): boolean {
  return inClause(talk, mark.clause).some((other) => isTurn(other, "in-pipe"));
}

function isOfPipe(ground: Ground, mark: Of<"material">): boolean {
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

/** The row wants what lies upstream: what comes next on the way up, what was before on the way down. */
function rowFor(
  ground: Ground,
  mark: Of<"material">,
  { from, changed }: { from: Material | null; changed: boolean },
): PipeSaid {
  const up = goesUpstream(ground.axis, motionAt(ground.track, mark.at));
  const first = from === null && !changed;
  const upstream = up || first ? mark.material : (from ?? "unknown");
  const size = inClause(ground.talk, mark.clause).find((other) => other.what === "diameter");
  const said =
    from && from !== mark.material
      ? `changes from ${MATERIAL_WORDS[from]} to ${MATERIAL_WORDS[mark.material]}`
      : "";
  const now = changed && !from ? `changes to ${MATERIAL_WORDS[mark.material]}` : said;
  return {
    mark,
    material: mark.material,
    upstream,
    diameter: size?.inches ?? null,
    note: now,
    begins: null,
  };
}

function goesUpstream(axis: Axis, motion: 1 | -1): boolean {
  return growsUpstream(axis) === (motion === 1);
}
