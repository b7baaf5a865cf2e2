import type { FootageFrom } from "../facts/run.ts";
import type { Cft } from "../length/station.ts";
import type { NarrationRun } from "./draft.ts";
import type { Distance } from "./mark.ts";
import { type Of, type Said, spanAt, type Talk, wordsOf } from "./said.ts";
import type { Sense } from "./sense.ts";
import { spokenNumber } from "./spoken-number.ts";

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
  const mainCounter = run.mainCounter ?? mainSaid;
  const heard = heardFrom(talk, sense, { ...run, mainCounter });
  const tied = run.measuredFrom === "access" && run.mainCounter !== null && run.mainCounter > 0;
  const measuredFrom = tied ? "access" : (heard ?? run.measuredFrom ?? "access");
  return {
    measuredFrom,
    toldFromMain: tied && heard === "main",
    mainCounter: measuredFrom === "main" ? 0 : mainCounter,
    looks: run.looks,
  };
}

function heardFrom(talk: Talk, sense: Sense, run: NarrationRun): FootageFrom | null {
  if (run.looks === "upstream") return null;
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

/** What people call the sewer in the street, and where the lateral meets it. */
const PUBLIC =
  "(?:the |our |your |that )?(?:(?:city|public|street|sewer|town|county|district)(?:'s)? ){0,2}(?:main|tap|line|sewer|connection|saddle|city|pipe in the street|trunk)(?: (?:line|sewer|connection|tap|saddle))?";
/** `everything I give you is from the main`, `the number you see is off the city line`. */
const ALL_FROM_MAIN = new RegExp(
  String.raw`\b(footages?|distances?|everything|numbers?|measurements?|measuring|measured|measure|counting|counts?|counter|readings?|figures|reading you|hear|calling out)( [\w']+){0,8} (from|off|off of|starting at|starts at|start at) ${PUBLIC}\b`,
);
/** `ran it clear down to the street tap and zeroed it there`, `hit the reset once I got to the main`. */
const RESET_AT_MAIN = new RegExp(
  String.raw`\b(to|at|in|into|hit|reached) ${PUBLIC}( [\w']+){0,6} (reset|zero|zeroed|zeroing)\b|\b(reset|zero|zeroed)( [\w']+){0,6} (at|in|on|got to|reached|hit|to|of) ${PUBLIC}\b`,
);

/** Somebody says so of all footage; of one distance it says nothing about the others. */
function isToldFromMain(talk: Talk): boolean {
  for (const sentence of talk.sentences.keys()) {
    const words = sentenceAt(talk, sentence);
    for (const said of [ALL_FROM_MAIN, RESET_AT_MAIN]) {
      const found = said.exec(words)?.[0].split(" ");
      if (found?.every((_, at) => (spokenNumber(found, at)?.value ?? 0) === 0)) return true;
    }
  }
  return false;
}

/** Words that say that the camera is at the main; `headed for the main` does not. */
const AT_MAIN =
  /\b(at|in|on|inside|reached|hit|this is|looking at|looking at is|here is|here's|sitting (in|at)|from)( the| our| my| your)?( \w+)? (main|(?:city|street|public|sewer|town|county) (?:main|tap|line|sewer|connection))\b|\bzero is the main\b|\bmain\b( \w+){0,3} zero\b/;
const TOWARDS =
  /\b(to|toward|towards|for|till|until|down) (the |our )?(\w+ )?(main|(?:city|street|public|sewer|town|county) (?:main|tap|line|sewer|connection)|street)\b/;
const ACCESS =
  /\b(cleanout|clean out|house|access|stack|basement|cap|yard|garage|crawl space|toilet|riser)\b/;

/** Where the footage was set to zero: by the sentence that says so, else by those beside it. */
function placeOfZero(talk: Talk): FootageFrom | null {
  const zero = talk.said.find((mark) => mark.what === "distance" && mark.distance.from === 0);
  if (!zero) return startAtMain(talk) === null ? null : "main";
  const own = placeIn(talk, zero.sentence, { own: true });
  return (
    own ??
    placeIn(talk, zero.sentence - 1, { own: false }) ??
    placeIn(talk, zero.sentence + 1, { own: false })
  );
}

function placeIn(
  talk: Talk,
  sentence: number,
  { own }: { readonly own: boolean },
): FootageFrom | null {
  if (readingIn(talk, sentence)) return null;
  const words = sentenceAt(talk, sentence);
  const named = (talk.sentences.get(sentence) ?? []).some(
    (mark) => mark.what === "thing" && mark.thing.kind === "main",
  );
  const main = AT_MAIN.test(words) || (own && named && !TOWARDS.test(words));
  const access = ACCESS.test(words);
  if (main && access) return AT_MAIN.test(words) ? "main" : "access";
  if (main && (own || !TOWARDS.test(words))) return "main";
  return access ? "access" : null;
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
