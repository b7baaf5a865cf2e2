import type { Cft } from "../../length/station.ts";
import { formatFeet } from "../../length/station.ts";
import {
  clauseWords,
  inSentence,
  type Of,
  type Said,
  sentenceWords,
  wordsOf,
} from "../meaning/said.ts";
import { type Axis, counterOf, growsUpstream } from "./axis.ts";
import { distanceFor } from "./footage-of.ts";
import { type Ground, isPlacing } from "./ground.ts";
import { isFirstFeet, isFirstPipe, isStart } from "./pipe-start.ts";
import type { DraftReading } from "./run-told.ts";
import { middleOf, motionAt, workedOutAt } from "./track.ts";

/** Where something is, by what was said. */
export interface Place {
  readonly counter: Cft | null;
  readonly toCounter: Cft | null;
  /** Feet from the main where only these were said and the footage at the main is not known. */
  readonly fromMain: Cft | null;
  readonly reading: DraftReading;
  readonly slack: Cft;
  readonly note: string;
  /** Clause in which the distance was spoken; null where it was worked out. */
  readonly clause: number | null;
}

/** The places of one thing: as a rule one; several for `wyes at twenty, thirty and forty`. */
export function placesOf(ground: Ground, mark: Said): Place[] {
  const listed = listedPlaces(ground, mark);
  if (listed.length > 1) return listed;
  const beside = besideMain(ground, mark);
  if (beside) return [withExtent(ground, mark, beside)];
  const own =
    isFirstFeet(ground.talk, mark) || isFirstPipe(ground, mark) ? null : distanceFor(ground, mark);
  const place = own ? placeAt(ground, own) : workedOut(ground, mark);
  return [withExtent(ground, mark, place)];
}

function listedPlaces(ground: Ground, mark: Said): Place[] {
  const clause = inSentence(ground.talk, mark.sentence);
  const things = clause.filter((other) => other.what === "thing");
  // `roots at twenty-six and again at twenty-nine`
  const again = /\band (again|also) (at|around|about)\b/.test(
    sentenceWords(ground.talk, mark.sentence),
  );
  const many = mark.what === "thing" && (mark.thing.many || again);
  if (!many || things.length > 1) return [];
  return clause.filter((other) => isPlacing(ground, other)).map((other) => placeAt(ground, other));
}

/** The place that a spoken distance tells. */
export function placeAt(ground: Ground, mark: Of<"distance">): Place {
  const { distance } = mark;
  const { axis } = ground;
  const whole = { reading: "read" as const, fromMain: null, note: "", clause: mark.clause };
  if (counterOf(distance.from, distance.base, axis) === null) return fromMainOnly(mark, axis);
  if (distance.choice && distance.to !== null) {
    const counter = counterOf(middleOf(distance), distance.base, axis);
    const slack = Math.max(distance.slack, Math.abs(distance.to - distance.from) / 2);
    return { ...whole, counter, toCounter: null, slack };
  }
  const from = counterOf(distance.from, distance.base, axis);
  const to = distance.to === null ? null : counterOf(distance.to, distance.base, axis);
  return { ...whole, ...inOrder(from, to), slack: distance.slack };
}

function fromMainOnly(mark: Of<"distance">, axis: Axis): Place {
  const { from, to, slack } = mark.distance;
  const said = to === null ? formatFeet(from) : `${formatFeet(from)} to ${formatFeet(to)}`;
  const unknown = axis.mainCounter === null;
  const why = unknown
    ? "the footage at the main is not known"
    : "that does not fit the footage at the main";
  const note = `${said} from the main; ${why}`;
  const fromMain = unknown ? from : null;
  const { clause } = mark;
  return { counter: null, toCounter: null, fromMain, reading: "read", slack, note, clause };
}

/** A stretch from its lower counter to its higher one; one end alone is no stretch. */
export function inOrder(
  from: Cft | null,
  to: Cft | null,
): { counter: Cft | null; toCounter: Cft | null } {
  if (from === null || to === null || from === to) return { counter: from, toCounter: null };
  return { counter: Math.min(from, to), toCounter: Math.max(from, to) };
}

function workedOut(ground: Ground, mark: Said): Place {
  const nowhere = { toCounter: null, fromMain: null, reading: "between" as const, clause: null };
  const relative = relativeTo(ground, mark);
  if (relative) return relative;
  if (isStart(ground, mark))
    return { ...nowhere, counter: startOf(ground), slack: 100, note: "Said at the start" };
  const found = workedOutAt(ground.track, mark);
  if (found) return { ...nowhere, ...found, note: "" };
  const last = ground.track.points.findLast((point) => point.at < mark.at);
  const note = last
    ? `Said after ${formatFeet(last.leaves)}; how far beyond is not known`
    : "No distance was spoken for it";
  return { ...nowhere, counter: null, slack: 0, note };
}

/** `right before the main`, `just shy of the city tap`, `last joint ahead of the connection`. */
const BESIDE_MAIN =
  /\b(before|ahead of|shy of|short of|off|off of|inside|up from|above)( you| we| it| i)?( get to| hit| hits| reach| come to)?( the| our| your)( city| public| street| sewer| city's)?( main| tap at the main| connection to the main| city connection)\b/;
/** So near the main that is, hundredths of a foot, where nobody says how near. */
const BESIDE = 200;
/** And by its time at most so far. */
const BESIDE_MOST = 500;

/** A little on this side of the main, whose footage is known. */
function besideMain(ground: Ground, mark: Said): Place | null {
  const { axis, talk } = ground;
  if (mark.what !== "thing" || mark.thing.kind === "main") return null;
  const read = inSentence(talk, mark.sentence).some(
    (other) =>
      isPlacing(ground, other) && (other.clause === mark.clause || other.distance.base === "main"),
  );
  if (read) return null;
  if (!BESIDE_MAIN.test(sentenceWords(talk, mark.sentence))) return null;
  const main = axis.measuredFrom === "main" ? 0 : axis.mainCounter;
  if (main === null) return null;
  const step = inSentence(talk, mark.sentence).find(
    (other): other is Of<"distance"> =>
      other.what === "distance" && /^(relative|extent)$/.test(other.distance.kind),
  );
  const found = mark.time === null ? null : workedOutAt(ground.track, mark);
  const timed = found?.reading === "between" ? Math.abs(found.counter - main) : BESIDE;
  const way = step ? Math.abs(step.distance.from) : Math.min(timed, BESIDE_MOST);
  const counter = growsUpstream(axis) ? main + way : Math.max(0, main - way);
  return {
    counter,
    toCounter: null,
    fromMain: null,
    reading: "between",
    slack: BESIDE,
    note: "",
    clause: step?.clause ?? null,
  };
}

/** Where footage falls, the camera begins at the first that was read off. */
function startOf({ track }: Ground): Cft {
  return track.motion === -1 ? (track.points[0]?.counter ?? 0) : 0;
}

/** `two feet past that`: counted on from the last place, along the way the camera goes. */
function relativeTo(ground: Ground, mark: Said): Place | null {
  const step = inSentence(ground.talk, mark.sentence).find(
    (other): other is Of<"distance"> =>
      other.what === "distance" && other.distance.kind === "relative",
  );
  const point = step && ground.track.points.find(({ at }) => at === step.at);
  if (!step || !point) return null;
  const slack = Math.max(100, step.distance.slack);
  const { counter } = point;
  return {
    counter,
    toCounter: null,
    fromMain: null,
    reading: "between",
    slack,
    note: "",
    clause: step.clause,
  };
}

/** `roots for about six feet`, `There’s a crack. Goes maybe four feet.`: along the way the camera goes. */
function withExtent(ground: Ground, mark: Said, place: Place): Place {
  if (place.counter === null || place.toCounter !== null) return place;
  const extent =
    inSentence(ground.talk, mark.sentence).find(
      (other): other is Of<"distance"> => isExtent(ground, other) && other.at > mark.at - 2,
    ) ?? extentBehind(ground, mark);
  if (!extent) return place;
  const way = isTotal(ground, mark, extent) ? -extent.distance.from : extent.distance.from;
  const end = place.counter + motionAt(ground.track, mark.at) * way;
  const slack = Math.max(place.slack, extent.distance.slack);
  return { ...place, ...inOrder(place.counter, Math.max(0, end)), slack };
}

/** `so that’s`, `which makes`: how long it was, by who has seen all of it. */
const TOTAL =
  /\b(so|makes|all told|in all|total|call (that|it))( (that|that's|it|it's|is|was|a|an|like|about|maybe|around|roughly|right|just|call|say|makes|good))*$/;
/** The end of it was told before. */
const ENDED =
  /\b(out|up|clear|dry|round|done|end|ends|ended|quits?|stops?|over|through|past|again|back|clean|good|to|till|until)\b/;

/** `we’re out at fifty-two, so call that eight feet of low spot`: it lies behind the camera. */
function isTotal({ talk }: Ground, mark: Said, extent: Of<"distance">): boolean {
  const first = Math.min(mark.from, extent.from);
  const { words } = talk.speech;
  const begin = words.findIndex(({ sentence }) => sentence >= (words[first]?.sentence ?? 0) - 1);
  const told = wordsOf(talk, first - 8, first);
  return TOTAL.test(told) && ENDED.test(wordsOf(talk, begin, first));
}

function isExtent(ground: Ground, mark: Said): mark is Of<"distance"> {
  return (
    mark.what === "distance" && mark.distance.kind === "extent" && !ground.sense.unreal.has(mark.at)
  );
}

/** The next sentence tells nothing but how far it goes. */
function extentBehind(ground: Ground, mark: Said): Of<"distance"> | null {
  const marks = inSentence(ground.talk, mark.sentence + 1);
  const [first] = marks.filter((other) => other.what === "distance");
  const alone = marks.every((other) => other.what !== "thing");
  if (!first || !alone || !isExtent(ground, first)) return null;
  return /^(it |that |and )?(goes|runs|lasts|about|maybe|for)\b/.test(
    clauseWords(ground.talk, first.clause),
  )
    ? first
    : null;
}
