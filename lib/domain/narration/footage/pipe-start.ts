import {
  clauseWords,
  inClause,
  inSentence,
  isTurn,
  type Said,
  type Talk,
  wordsOf,
} from "../meaning/said.ts";
import type { Ground } from "./ground.ts";

/** The pipe’s material, told while the camera goes in. */
export function isStart({ talk, track }: Ground, mark: Said): boolean {
  const first = talk.speech.words[0]?.time ?? null;
  const soon = mark.time === null || first === null || mark.time - first <= START;
  if (mark.what !== "material") return false;
  if (isFirstFeet(talk, mark) || isThroughout(talk, mark) || isFirstPipe({ talk, track }, mark))
    return true;
  const words = wordsOf(talk, 0, mark.to);
  const atZero = track.points.every(({ at, counter }) => at > mark.at || counter === 0);
  const changes = inClause(talk, mark.clause).some((other) => isTurn(other, "change"));
  return mark.what === "material" && soon && atZero && !changes && ENTRY.test(words);
}

/** `It’s PVC to start. Ten foot three, wye.`: told before anything was read off, and nothing changed to it. */
export function isFirstPipe({ talk, track }: Pick<Ground, "talk" | "track">, mark: Said): boolean {
  if (mark.what !== "material" || track.points.length === 0) return false;
  const before = talk.said.some((other) => other.what === "material" && other.at < mark.at);
  // Where footage falls, the first that is read off is where the camera begins.
  const begin = track.motion === -1 ? (track.points[0]?.counter ?? 0) : 0;
  const read = track.points.some(
    ({ at, counter }) =>
      at < mark.at && Math.abs(counter - begin) > (track.motion === -1 ? TOLD_TWICE : 0),
  );
  const beside = inSentence(talk, mark.sentence).filter((other) => other.what === "distance");
  // `counter’s zero, it’s clay, five feet, good`: told at the zero.
  const atZero = beside.findLast(({ at }) => at < mark.at)?.distance.from === 0;
  const own = !atZero && beside.some(({ distance }) => distance.from > 0);
  const along = ALL_ALONG.test(sentenceAround(talk, mark));
  if (before || (own && !along) || (read && !along)) return false;
  const follows = isTurn(inSentence(talk, mark.sentence + 1)[0], "follows");
  return !follows && !CHANGED.test(sentenceUpTo(talk, mark).replace(BACK_NOW, ""));
}

/** `eighty-eight … eighty-eight point four`: the main’s footage read off more closely. */
const TOLD_TWICE = 100;

/** Nobody says so of what was there all along. */
const CHANGED =
  /\b(now|then|changes?|changed|turns?|turned|goes|went|go|gone|becomes|switch(es|ed)?|into|out of)\b/;

/** `I’m pulling back now, the pipe is clay`: what goes is the camera. */
const BACK_NOW =
  /\b(pull\w*|com\w+|back\w*|bring\w*|drag\w*|head\w*|go\w*|turn\w*)( [\w']+){0,2} (back|out|home|up|around)( now| then)?\b|\bnow (i'm|we're|i'll|we'll|let's)\b/g;

/** `here it’s VCP, since the main`, `clay from the main on up`, `it’s concrete, all this`: of what lies behind as well. */
const ALL_ALONG =
  /\b(since|all (this|of this|of it|that)|from the (main|cleanout|house|start|beginning)|so far|by the way|up to (here|now)|to here|this whole|the whole|all (good|fine|clean|new|nice))\b/;

/** Its sentence, and the next in the same breath. */
function sentenceAround(talk: Talk, mark: Said): string {
  const { words } = talk.speech;
  const breath = words[mark.from]?.breath;
  return words
    .filter(
      (word) =>
        word.breath === breath &&
        (word.sentence === mark.sentence || word.sentence === mark.sentence + 1),
    )
    .map(({ text }) => text)
    .join(" ");
}

function sentenceUpTo(talk: Talk, mark: Said): string {
  const from = talk.speech.words.findIndex(({ sentence }) => sentence === mark.sentence);
  return wordsOf(talk, from, mark.to);
}

/** `First couple feet are ductile`. */
export function isFirstFeet(talk: Talk, mark: Said): boolean {
  const first = inClause(talk, mark.clause).find((other) => other.what === "material");
  if (first?.at !== mark.at) return false;
  return inClause(talk, mark.clause).some(
    (other) =>
      other.at < mark.at &&
      other.what === "distance" &&
      other.distance.kind === "extent" &&
      /\bfirst$/.test(wordsOf(talk, other.from - 1, other.from)),
  );
}

/** `six inch clay all the way`: told of the whole run, where no other material was. */
function isThroughout(talk: Talk, mark: Said): boolean {
  const words = clauseWords(talk, mark.clause);
  if (!/\b(all the way|throughout|the whole way|the whole run|entire run)$/.test(words))
    return false;
  return talk.said.every((other) => other.what !== "material" || other.at >= mark.at);
}

const START = 30_000;
const ENTRY =
  /\b(go(ing)? in|start(ing|ed)?|in (at|through|from)|launch(ing|ed)?|zero(ed)?|reset|counter 0|begin(ning)?( with)?|counting from|from the|push(ing)? from|set up|stuck down)\b/;
