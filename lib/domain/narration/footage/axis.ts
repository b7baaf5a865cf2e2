import type { FootageFrom } from "../../facts/run.ts";
import type { Cft } from "../../length/station.ts";
import { type Of, type Said, spanAt, type Talk, wordsOf } from "../meaning/said.ts";
import type { Sense } from "../meaning/sense.ts";
import { spokenNumber } from "../number/spoken-number.ts";
import type { Distance } from "../vocabulary/mark.ts";
import type { NarrationRun } from "./run-told.ts";

/** What spoken distances are measured from, and where the main lies on the run's footage. */
export interface Axis {
  readonly measuredFrom: FootageFrom;
  /** Every distance was told from the main, though the run itself counts from its way in. */
  readonly toldFromMain: boolean;
  /** Footage at the main; null where nothing tells. */
  readonly mainCounter: Cft | null;
  readonly looks: NarrationRun["looks"];
}

/**
 * What the talk measures from. A lens that looks upstream went in at the main, or at a place from
 * which footage grows all the same. One that looks downstream measures from the main where its zero
 * was told there, or where distances are told from the main and nothing says what the footage is at it.
 */
export function axisOf(
  talk: Talk,
  sense: Sense,
  { run, mainSaid }: { readonly run: NarrationRun; readonly mainSaid: Cft | null },
): Axis {
  const up = run.looks === "upstream" && (isUpFromMain(talk) || isToldFromMain(talk));
  const mainCounter = run.mainCounter ?? (up ? 0 : mainSaid);
  const heard = up ? "main" : heardFrom(talk, sense, { ...run, mainCounter });
  const tied =
    run.measuredFrom === "access" && (up || (run.mainCounter !== null && run.mainCounter > 0));
  const measuredFrom = tied ? "access" : (heard ?? run.measuredFrom ?? "access");
  return {
    measuredFrom,
    toldFromMain: tied && !up && heard === "main",
    mainCounter: measuredFrom === "main" ? 0 : mainCounter,
    looks: run.looks,
  };
}

function heardFrom(talk: Talk, sense: Sense, run: NarrationRun): FootageFrom | null {
  if (run.looks === "upstream") return null;
  if (endsAtMain(talk, sense) || countsDown(talk, sense)) return "access";
  if (isToldFromWayIn(talk)) return "access";
  const zero = placeOfZero(talk);
  if (zero === "main") return "main";
  if (run.mainCounter !== null && run.mainCounter > 0) return "access";
  if (isToldFromMain(talk)) return "main";
  const distances = talk.said.filter(
    (mark): mark is Of<"distance"> => mark.what === "distance" && !sense.unreal.has(mark.at),
  );
  const fromMain = distances.filter(({ distance }) => distance.base === "main").length;
  return fromMain > 0 && (zero === null || fromMain * 2 > distances.length) ? "main" : null;
}

const MAIN_SIDE =
  /\b(main|tap|saddle|city|street|sewer|connection|wall|(public|county|town|district) manhole)\b/;
const OTHER_SIDE =
  /(?<!\b(?:to|toward|towards|until|till|for|reach|end at|out at) (?:the |a |that |their |her |his )?(?:\w+ )?)\b(cleanout|clean out|two way|basement|crawl space|riser|stack|toilet)\b|\b(zero|zeroed|reset)( \w+){0,2} (at|in|on) (the|a|this) (\w+ )?(cleanout|clean out)\b/;

/** `no cleanout that would take it`, `the cleanout’s buried`: nobody went in there. */
const NO_WAY_IN =
  /\b(no|any|find|without|missing)( (a|the|any|their|her|his))?( \w+)? (cleanout|clean out|two way)\b|\b(cleanout|clean out)( (is|was))? (buried|paved|sealed|stuck|broken|covered|gone|too|no good|won't|wouldn't|doesn't|didn't|isn't|wasn't|under)\b/g;

/** Who owns the sewer in the street. */
const TOWN =
  "(?:the )?(?:city|town|county|village|district|public|municipality|utility|township|parish)";
/** `the association’s own manhole`, `it’s theirs, it’s on the property`, `the city doesn’t own it`: no manhole of the main. */
const OWN_MANHOLE = new RegExp(
  [
    String.raw`\b(private|own|little|lawn|yard|association's|complex's|building's|on site) manholes?\b`,
    String.raw`\bmanhole( ?(is|'s))?( [\w']+){0,3} (on|in|behind|between|under|beside) (the|their|our|your|his|her|its)( [\w']+)? (property|lawn|yard|lot|garden|court|courtyard|building|buildings|units?|house|patio|carport|garage|dumpsters?|fence|dock)\b`,
    String.raw`(?<!\b(?:not|isn't|ain't) )\b(on (the|their|your|private) property|private(ly)? (owned|property)|belongs? to (?!${TOWN}\b)|(?<!n't |not )(?:it's|that's|this is|it is|is|manhole's) (?:all )?(?:private|ours|yours|y'all|theirs(?! so)))\b`,
    String.raw`\b(not|isn't|ain't|wasn't) ${TOWN}\b|\b${TOWN} (says|doesn't|don't|didn't|won't)( [\w']+){0,2} (isn't theirs|own|touch|maintain|have)\b`,
  ].join("|"),
);
/** A wall or an edge of a manhole says nothing of the main; nor does the town’s name where it is no owner. */
const OF_MANHOLE = /\b(wall|edge|lip|side|rim) of (the|that|this) manhole\b|\bmanhole wall\b/g;

/** Going up, whoever speaks of the main, or of the wall where the line comes in, before the first footage, and of no other way in, set it to zero there. */
function isUpFromMain(talk: Talk): boolean {
  const zero = talk.said.find((mark) => mark.what === "distance" && mark.distance.from === 0);
  const first = talk.said.find(
    (mark) => mark.what === "distance" && mark.distance.from > 0 && mark.at > (zero?.at ?? -1),
  );
  const opening = wordsOf(talk, 0, first ? first.from : talk.speech.words.length);
  return (
    MAIN_SIDE.test(opening.replace(OF_MANHOLE, "")) &&
    !OTHER_SIDE.test(opening.replace(NO_WAY_IN, "")) &&
    !(opening.includes("manhole") && OWN_MANHOLE.test(opening))
  );
}

/** So many readings tell a way. */
const WAY = 3;

function readIn(talk: Talk, sense: Sense): Of<"distance">[] {
  return talk.said.filter(
    (mark): mark is Of<"distance"> =>
      mark.what === "distance" && mark.distance.kind === "at" && !sense.unreal.has(mark.at),
  );
}

/**
 * Looking downstream and drawn back, the footage falls: it was set where the camera went in. From
 * the main it would grow.
 */
function countsDown(talk: Talk, sense: Sense): boolean {
  const read = readIn(talk, sense).filter(({ distance }) => distance.base !== "main");
  const steps = read
    .slice(1)
    .map(({ distance }, at) => distance.from - (read[at]?.distance.from ?? 0));
  const falls = steps.filter((step) => step < 0).length;
  return falls >= WAY && falls >= 3 * steps.filter((step) => step > 0).length;
}

/** `and there’s the main, sixty-three`, the farthest that was read: the footage was set at the way in. */
function endsAtMain(talk: Talk, sense: Sense): boolean {
  const read = readIn(talk, sense);
  const last = read.findLast(({ distance }) => distance.from > 0);
  if (last === undefined || read.length < WAY || last.distance.base === "main") return false;
  const farthest = read.every(({ distance }) => distance.from <= last.distance.from);
  const reached = (talk.sentences.get(last.sentence) ?? []).some(
    (mark) =>
      mark.what === "thing" &&
      mark.thing.kind === "main" &&
      !/\b(from|off|of|to|toward)( the| our)?$/.test(wordsOf(talk, mark.from - 3, mark.from)),
  );
  return farthest && reached && last.distance.weight > 1;
}

/** What people call the sewer in the street, and where the lateral meets it. */
const PUBLIC =
  "(?:the |our |your |that )?(?:(?:city|public|street|sewer|town|county|district)(?:'s)? ){0,2}(?:main|tap|line|sewer|connection|saddle|city|pipe in the street|trunk)(?: (?:line|sewer|connection|tap|saddle))?";
/** `everything I give you is from the main`, `the number you see is off the city line`. */
const ALL_FROM_MAIN = new RegExp(
  String.raw`\b(what i|all i|whatever i|footages?|distances?|everything|numbers?|measurements?|measuring|measured|measure|counting|counts?|counter|readings?|figures|reading you|hear|calling out)( [\w']+){0,8} (from|off|off of|starting at|starts at|start at) ${PUBLIC}\b`,
);
/** `ran it clear down to the street tap and zeroed it there`, `hit the reset once I got to the main`. */
const RESET_AT_MAIN = new RegExp(
  String.raw`\b(to|at|in|into|hit|reached) ${PUBLIC}( [\w']+){0,6} (reset|zero|zeroed|zeroing)\b|\b(reset|zero|zeroed)( [\w']+){0,6} (at|in|on|got to|reached|hit|to|of) ${PUBLIC}\b`,
);

/** `I had it zeroed at the cleanout, so all of these are from the cleanout`. */
const FROM_WAY_IN =
  /\b(zero|zeroed|zeroing|reset)( [\w']+){0,3} (at|on|from|in) (the|our|my|her|his|their)( [\w']+)? (cleanout|clean out|house|cap|access|stack|riser|trap)\b|\b(everything|all of (it|these|them|this|those)|footages?|distances?|numbers?|measurements?|readings?)( [\w']+){0,5} from (the|our|my)( [\w']+)? (cleanout|clean out|house|cap|access|stack|riser|trap)\b/;

/** Nothing was told from the main, and somebody says where the footage was set. */
function isToldFromWayIn(talk: Talk): boolean {
  const told = [...talk.sentences.keys()].map((sentence) => sentenceAt(talk, sentence));
  const main = (words: string) => ALL_FROM_MAIN.test(words) || RESET_AT_MAIN.test(words);
  const wayIn = told.filter((words) => FROM_WAY_IN.test(words) && !ALL_FROM_MAIN.test(words));
  return wayIn.length > 0 && told.every((words) => wayIn.includes(words) || !main(words));
}

/** Somebody says so of all footage; of one distance it says nothing about the others. */
function isToldFromMain(talk: Talk): boolean {
  for (const sentence of talk.sentences.keys()) {
    const words = sentenceAt(talk, sentence);
    for (const said of [ALL_FROM_MAIN, RESET_AT_MAIN]) {
      const found = said.exec(words)?.[0] ?? "";
      // `counter zero, heading down to the main`: it is not set there.
      if (found === "" || (said === RESET_AT_MAIN && AHEAD.test(found))) continue;
      const parts = found.split(" ");
      if (parts.every((_, at) => (spokenNumber(parts, at)?.value ?? 0) === 0)) return true;
    }
  }
  return false;
}

/** Words that say that the camera is at the main; `headed for the main` does not. */
const AT_MAIN =
  /\b(at|in|on|inside|reached|hit|hits|this is|that's|that is|that right there is|there's|looking at|looking at is|here is|here's|sitting (in|at)|from|out at)( the| our| my| your)?( \w+)? (main|(?:city|street|public|sewer|town|county) (?:main|tap|line|sewer|connection))\b|\bzero is the (main|tap)\b|\bmain\b( \w+){0,3} zero\b|\b(out|down|way out) (at|in) the street\b|\b(camera|head|it|i'm|we're)( is| already| out| down| all the way)* (at|in) the (street|city)\b|\b(down at|sitting at|here at) the (tap|wye|tee|saddle)\b|\b(city|public|street|town|county) (pipe|line|sewer|main)( [\w']+){0,2} (looking at|you see)\b/;
/** `pushed it all the way out to the main`: the camera came there. */
const CAME_TO_MAIN = new RegExp(
  String.raw`\b(?:pushed|ran|run|shoved|went|got|fed|sent|made it|took it|hit|reached|came|been|am|i'm|we're|is)(?: [\w']+){0,6}? (?:to|at|in|into|hit|reached)(?: (?:the|our|your))? ${PUBLIC}\b|\b(?:hit|reached|made it to)(?: (?:the|our|your))? ${PUBLIC}\b`,
);
/** What is still ahead, told before the main is named: whoever is going there has not come there. */
const AHEAD =
  /\b(till|until|we'll|i'll|gonna|going( [\w']+){0,2} to|going from|headed|heading|towards?|go|end (?:up )?(?:in|at)|want to|before|looking downstream|push(ing)? (to|from|for|out)|yesterday|bound|off to|on (my|our|its|the) way( [\w']+)? to|aim(ing|ed)|(running|shooting|sending|working|feeding|taking|making|snaking|moving|driving|crawling)( [\w']+){0,3} (to|for))\b/;
const ACCESS =
  /\b(cleanout|clean out|house|access|stack|basement|cap|yard|garage|crawl space|toilet|riser|two way|flange|vent)\b/;
/** The camera comes back, as whoever begins at the main says. */
const COMES_BACK =
  /\b(pull|pulling|come|coming|drag|dragging|bring|bringing|work|working|walk|head|heading|back|backing)( it| her| this| our way| us| the camera)? (back|out)\b|\bon (the|my|our) way back\b|\bretract(ing)?\b|\bretriev(e|ing)\b|\bback(ing)? (it )?(up|out)\b/;

/** So many sentences back, where the camera stands is told before its footage is set. */
const STANDS = 3;

/** Where the footage was set to zero: by the sentence that says so, else by those beside it. */
function placeOfZero(talk: Talk): FootageFrom | null {
  const zero = zeroOf(talk);
  if (!zero) return startAtMain(talk) === null ? null : "main";
  const own = placeIn(talk, zero.sentence);
  if (own) return own;
  for (let back = 1; back <= STANDS; back += 1) {
    const before = placeBefore(talk, zero.sentence - back);
    if (before) return before;
  }
  return placeIn(talk, zero.sentence + 1);
}

/** The last zero that was told before anything was read off. */
function zeroOf(talk: Talk): Said | null {
  const zeros = talk.said.filter((mark) => mark.what === "distance" && mark.distance.from === 0);
  const [first] = zeros;
  if (!first) return null;
  const found = talk.said.find(
    (mark) =>
      mark.at > first.at &&
      mark.what === "thing" &&
      !/^(main|cleanout)$/.test(mark.thing.kind) &&
      readingIn(talk, mark.sentence) !== null,
  );
  return zeros.findLast((mark) => found === undefined || mark.at < found.at) ?? first;
}

/** Where the camera had come to: a footage read off there tells how far it went. */
function placeBefore(talk: Talk, sentence: number): FootageFrom | null {
  const words = sentenceAt(talk, sentence);
  if (isArrived(words)) return "main";
  return ACCESS.test(words) ? "access" : null;
}

function placeIn(talk: Talk, sentence: number): FootageFrom | null {
  const words = sentenceAt(talk, sentence);
  if (readingIn(talk, sentence)) return null;
  if (isArrived(words)) return "main";
  return ACCESS.test(words) && !COMES_BACK.test(words) ? "access" : null;
}

/** The camera is at the main; where that is still ahead, it is not. */
function isArrived(words: string): boolean {
  const came = CAME_TO_MAIN.exec(words) ?? AT_MAIN.exec(words);
  return came !== null && !AHEAD.test(words.slice(0, came.index + came[0].length));
}

function readingIn(talk: Talk, sentence: number): Said | null {
  return (
    (talk.sentences.get(sentence) ?? []).find(
      (mark) => mark.what === "distance" && mark.distance.from > 0 && mark.distance.kind === "at",
    ) ?? null
  );
}

function sentenceAt(talk: Talk, sentence: number): string {
  return talk.speech.words
    .filter((word) => word.sentence === sentence)
    .map((word) => word.text)
    .join(" ");
}

const BEGINS =
  /\b(right now|start|starts|starting|begin|beginning|coming back|come back|pull|pulling|back up|backing|bring|walk|launch|launching|all the way down|going to|gonna)\b/;

/** `We’re at the main right now, this is where she starts`: the mark of the main at which a talk begins. */
export function startAtMain(talk: Talk): Said | null {
  for (const mark of talk.said) {
    if (mark.what === "distance" && mark.distance.from > 0) return null;
    if (mark.what !== "thing" || mark.thing.kind !== "main") continue;
    if (readingIn(talk, mark.sentence)) return null;
    const words = sentenceAt(talk, mark.sentence);
    const lead = wordsOf(talk, mark.from - 4, mark.to);
    if (AT_MAIN.test(lead) && BEGINS.test(`${words} ${sentenceAt(talk, mark.sentence + 1)}`))
      return mark;
  }
  return null;
}

const GOES_IN =
  /\b(go(ing)? in|we're in|i'm in|start(ing|ed)? (at|from|in|here)|in (at|through|from)|launch(ing|ed)?|entering|went in|push(ing)? (in|from)|dropping in)\b/;

/** Where a talk begins at the way in and nobody speaks of the footage: the clause that says so. */
export function startAtAccess(talk: Talk): number | null {
  const first = talk.said.find((mark) => mark.what === "distance");
  const last = first ? first.clause : talk.spans.length;
  for (let clause = 0; clause < last; clause += 1) {
    const span = spanAt(talk, clause);
    if (GOES_IN.test(wordsOf(talk, span.from, span.to))) return clause;
  }
  return null;
}

/** Footage of a spoken distance; null where the main's is needed and not known, or it would lie below zero. */
export function counterOf(value: Cft, base: Distance["base"], axis: Axis): Cft | null {
  const fromMain = base === "main" || axis.toldFromMain;
  if (!fromMain || axis.measuredFrom === "main") return value;
  if (axis.mainCounter === null) return null;
  const counter = axis.looks === "downstream" ? axis.mainCounter - value : axis.mainCounter + value;
  return counter < 0 ? null : counter;
}

/** Feet from the main of a place on the footage; null where the main’s footage is not known. */
export function fromMainOf(counter: Cft | null, axis: Axis): Cft | null {
  if (counter === null || axis.measuredFrom === "main") return counter;
  if (axis.mainCounter === null) return null;
  const along = counter - axis.mainCounter;
  const station = axis.looks === "downstream" ? -along : along;
  return station < 0 ? null : station + 0;
}

/** Whether footage grows on the way up. */
export function growsUpstream(axis: Axis): boolean {
  return axis.measuredFrom === "main" || axis.looks === "upstream";
}
