import { growsUpstream } from "../footage/axis.ts";
import type { Ground } from "../footage/ground.ts";
import { clauseWords, inSentence, isTurn, type Of, type Said, wordsOf } from "../meaning/said.ts";
import type { Heard } from "./heard.ts";

/** `back in the cleanout`, `good up to the cleanout`, `our cleanout where we started` */
const WAY_OUT =
  /\b(?:back|backed|out)(?: (?:up|in|into|inside|at|to|of|out))+ (?:the|my|our|your|that|this)(?: [\w']+)?$|\b(?:our|my)$/;

/** The way in or out, which nobody read a footage at: `we’re back up in the riser`. */
export function isWayOut(ground: Ground, row: Heard): boolean {
  if (row.kind !== "cleanout") return false;
  const { talk, track } = ground;
  const at = row.place.counter;
  const last = track.points.every(
    (point) => point.at <= row.mark.at || at === null || Math.abs(point.counter - at) <= FURTHER,
  );
  if (
    last &&
    row.place.reading !== "read" &&
    WAY_OUT.test(wordsOf(talk, row.mark.from - 5, row.mark.from))
  )
    return true;
  const { points } = track;
  const first = points.find(({ counter }) => counter > 0)?.at ?? 0;
  if (row.place.reading === "read") return row.place.counter === 0 && row.mark.at < first;
  return row.mark.at < first || row.mark.at > (points.at(-1)?.at ?? 0);
}

/** What was told before the footage was set is how the day began, not what the camera saw. */
export function isOpening(ground: Ground, row: Heard): boolean {
  const zero = ground.track.points.find(({ counter }) => counter === 0);
  if (zero === undefined || zero.at < 0 || row.kind === "material" || row.kind === "main")
    return false;
  const set = ground.talk.said[zero.at]?.sentence ?? 0;
  const { words } = ground.talk.speech;
  const breath = words[row.mark.from]?.breath;
  const ofPipe = ground.talk.said.some(
    (mark) => mark.what === "material" && words[mark.from]?.breath === breath,
  );
  if (ofPipe && (row.kind === "deposit" || row.fault === "worn-surface")) return false;
  const own = row.place.reading === "read" && row.place.counter !== 0;
  const begun = ground.track.points.some(({ at }) => at < zero.at);
  return !begun && !own && row.mark.at < zero.at && row.mark.sentence <= set;
}

/** So near the main, hundredths of a foot, no branch is: it is the connection there. */
const AT_MAIN = 30;

/** `saddle, sixty-six is the main`, `seventy-one and a half is the tap`, where the main was read off. */
export function isReadAtMain({ axis, track }: Ground, { kind, place }: Heard): boolean {
  if (kind !== "tie-in" || place.reading !== "read" || place.counter === null) return false;
  const main = axis.measuredFrom === "main" ? null : axis.mainCounter;
  if (main === null || Math.abs(place.counter - main) > AT_MAIN) return false;
  return track.points.every(({ counter }) => counter <= main + AT_MAIN);
}

/** `zero at the bottom, the sweep`: the fitting by which the camera went in. */
export function isBendOfEntry({ talk }: Ground, mark: Of<"thing">): boolean {
  if (mark.thing.kind !== "bend") return false;
  const read = inSentence(talk, mark.sentence).filter((other) => other.what === "distance");
  return read.length > 0 && read.every(({ distance }) => distance.from === 0);
}

/** So much further, hundredths of a foot, the camera did not stop. */
export const FURTHER = 100;

/** `the tap itself looks okay`, where the camera stands at the main: nothing was read off on the way yet, or no more. */
export function isTapAtMain({ talk, track, axis }: Ground, mark: Of<"thing">): boolean {
  if (mark.thing.kind !== "tie-in") return false;
  const own = inSentence(talk, mark.sentence);
  const named = (other: Said) =>
    /\b(the|our)$/.test(wordsOf(talk, other.from - 1, other.from)) ||
    /^(itself|looks|is|'s)\b/.test(wordsOf(talk, other.to, other.to + 1)) ||
    /'s$/.test(wordsOf(talk, other.from, other.to));
  if (
    !own.some(
      (other) =>
        other.what === "thing" &&
        other.thing.kind === "tie-in" &&
        other.at <= mark.at &&
        named(other),
    )
  )
    return false;
  if (own.some(({ what }) => what === "clock")) return false;
  if (growsUpstream(axis)) {
    const zero = track.points.find(({ counter }) => counter === 0);
    return (
      zero !== undefined &&
      zero.at <= mark.at &&
      !track.points.some(({ at, counter }) => at < mark.at && counter > 0)
    );
  }
  const main = axis.measuredFrom === "main" ? null : axis.mainCounter;
  const read = track.points.filter(({ at, spoken }) => spoken && at < mark.at);
  const here = read.at(-1);
  if (main === null || here === undefined || Math.abs(here.counter - main) > AT_MAIN) return false;
  return !own.some((other) => other.what === "distance" && !read.some(({ at }) => at === other.at));
}

/** Before anything was read off, where what is read off counts from farther back. */
function isFirstNamed({ talk, axis }: Ground, mark: Said): boolean {
  if (!growsUpstream(axis)) return false;
  const before = talk.said.filter(
    (other) => other.sentence <= mark.sentence && other.at !== mark.at,
  );
  return before.every(
    (other) =>
      !/^(distance|material)$/.test(other.what) &&
      (other.what !== "thing" || /^(main|cleanout)$/.test(other.thing.kind)),
  );
}

/** `Sixty-six point two, and here I come up out of your cleanout`: where the footage was set elsewhere. */
const COMES_OUT =
  /\b(come|comes|coming|came|pop|pops|popped|popping)( (up|back|right|on|and))* out( (of|at|in|through|by))+( [\w']+){0,2}$/;

/** A cleanout, named as where the camera went in. */
export function isEntry(ground: Ground, mark: Of<"thing">): boolean {
  if (mark.thing.kind !== "cleanout") return false;
  const zero = inSentence(ground.talk, mark.sentence).some(
    (other) => other.what === "distance" && other.distance.from === 0,
  );
  if (zero || isFirstNamed(ground, mark)) return true;
  if (COMES_OUT.test(wordsOf(ground.talk, mark.from - 8, mark.from))) {
    const read = inSentence(ground.talk, mark.sentence).some(
      (other) => other.what === "distance" && other.distance.from > 0,
    );
    if (read) return false;
  }
  const lead = ground.talk.speech.words
    .slice(Math.max(0, mark.from - 7), mark.from)
    .flatMap(({ text, sentence }) => (sentence === mark.sentence ? [text] : []))
    .join(" ");
  if (
    /\b(of|the|up the|up in the|in the)$/.test(lead) &&
    wordsOf(ground.talk, mark.from, mark.to) === "riser"
  )
    return true;
  return /\b(go(ing)? in|in at|in through|went in|same|from|off|start(ing|ed)?|set up|push(ed|ing)?|launch(ed|ing)?|zero(ed)?|out of|down|through|put in|came in|inside|accessed|access)\b( \w+){0,4}$/.test(
    lead,
  );
}

/** The main is only named; the camera is not there. */
export function isFarMain(ground: Ground, mark: Of<"thing">): boolean {
  const whole = clauseWords(ground.talk, mark.clause);
  if (/\b(launch|start|begin|push|set)(ing|ed)?\b.* from\b/.test(whole)) return false;
  if (NOT_REACHED.test(wordsOf(ground.talk, mark.to, mark.to + 6))) return true;
  const lead = wordsOf(ground.talk, mark.from - 6, mark.from);
  return (
    /\b(from|off|to|toward|towards|down to|for|(shy|short|ahead|this side) of)( the| our)?$/.test(
      lead,
    ) &&
    (!CAME_TO.test(lead) || sentenceDenies(ground, mark))
  );
}

/** `the main itself was not seen` */
const NOT_REACHED =
  /^(itself )?((is|was|were|has been) (not|never)|wasn't|isn't|never|not)( (ever|yet|been))? (seen|reached|filmed|visible|in view|inspected|shown|gotten to|made)\b/;

/** `made it to the main`; `didn’t get to the main` is another matter. */
const CAME_TO =
  /\b(made it|got|gotten|came|come|arrived|ran it|pushed it|i'm|we're)( (all the way|back|down|out|clear|right|now))* to( the| our)?$/;

function sentenceDenies({ talk }: Ground, mark: Said): boolean {
  return inSentence(talk, mark.sentence).some(
    (other) => other.at < mark.at && (isTurn(other, "negation") || isTurn(other, "expected")),
  );
}
