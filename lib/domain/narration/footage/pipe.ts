import type { Material } from "../../facts/line.ts";
import { MATERIAL_WORDS } from "../../facts/line-words.ts";
import {
  inClause,
  inSentence,
  isTurn,
  type Of,
  type Said,
  type Talk,
  wordsOf,
} from "../meaning/said.ts";
import { type Axis, growsUpstream } from "./axis.ts";
import type { Ground } from "./ground.ts";
import { isChange, isOfPipe } from "./of-pipe.ts";
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
