import type { Fitting, Material } from "../../facts/line.ts";
import type { Degree, Fault, ObservationKind } from "../../facts/run.ts";
import { counterOf, growsUpstream } from "../footage/axis.ts";
import type { Ground } from "../footage/ground.ts";
import { type PipeSaid, pipeSaid } from "../footage/pipe.ts";
import { type Place, placeAt, placesOf } from "../footage/place.ts";
import { aboutOf, isOwner, recordOwner } from "../meaning/about.ts";
import { badnessOf } from "../meaning/badness.ts";
import {
  clauseWords,
  inClause,
  inSentence,
  isTurn,
  type Of,
  quoteOf,
  type Said,
  sentenceWords,
  wordsOf,
} from "../meaning/said.ts";
import { isAnother } from "../meaning/sense.ts";
import { isLong } from "../vocabulary/endings.ts";

/** One thing heard at one place, before repeated mentions are put together. */
export interface Heard {
  readonly mark: Said;
  readonly kind: ObservationKind | "main";
  readonly fault: Fault | null;
  readonly fitting: Fitting;
  readonly degree: Degree | null;
  readonly reduction: number | null;
  readonly waterDepth: number | null;
  readonly place: Place;
  readonly clock: number | null;
  readonly diameter: number | null;
  readonly material: Material;
  /** Of the pipe itself, upstream of here; else as the material. */
  readonly upstreamMaterial: Material;
  readonly hedges: readonly string[];
  readonly aboutRecord: string;
  readonly notes: readonly string[];
  /** First and last clause of its quote. */
  readonly clauses: readonly [from: number, to: number];
  /** Spoken of as known: `that wye`, `same one`. */
  readonly again: boolean;
  /** The mark that it names again, where that is plain. */
  readonly antecedent: number | null;
  /** Its own mark and those of the mentions put together with it. */
  readonly ats: readonly number[];
  /** Spoken of as another than the one before. */
  readonly another: boolean;
  /** `still roots`, `roots continue`: the stretch told before goes on to here. */
  readonly goesOn: boolean;
  /** Of what was said about the record: it gives no place of its own, and is said of the find beside it. */
  readonly beside: boolean;
}

/** Everything that was seen, by the talk, in the order of speaking. */
export function heardIn(ground: Ground): Heard[] {
  const things = ground.talk.said.flatMap((mark) =>
    isOwner(ground.sense, mark) && isSeen(ground, mark) ? heardThing(ground, mark) : [],
  );
  const seen = things.filter(
    (row) =>
      !isWayOut(ground, row) &&
      !isOpening(ground, row) &&
      !isUnknownAgain(row) &&
      !isReadAtMain(ground, row),
  );
  return [...seen, ...heardPipe(ground), ...recordRemarks(ground)].sort(
    (a, b) => a.mark.at - b.mark.at,
  );
}

/** `back in the cleanout`, `good up to the cleanout`, `our cleanout where we started` */
const WAY_OUT =
  /\b(?:back|backed|out)(?: (?:up|in|into|inside|at|to|of|out))+ (?:the|my|our|your|that|this)(?: [\w']+)?$|\b(?:our|my)$/;

/** The way in or out, which nobody read a footage at: `we’re back up in the riser`. */
function isWayOut(ground: Ground, row: Heard): boolean {
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
function isOpening(ground: Ground, row: Heard): boolean {
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
function isReadAtMain({ axis, track }: Ground, { kind, place }: Heard): boolean {
  if (kind !== "tie-in" || place.reading !== "read" || place.counter === null) return false;
  const main = axis.measuredFrom === "main" ? null : axis.mainCounter;
  if (main === null || Math.abs(place.counter - main) > AT_MAIN) return false;
  return track.points.every(({ counter }) => counter <= main + AT_MAIN);
}

/** `same hole, same counter`: nothing of the kind was told before, so it is the way in. */
function isUnknownAgain(row: Heard): boolean {
  return row.again && row.antecedent === null && row.fault === "hole";
}

/** The pipe that goes up in the house, and the way down that the camera came: no cleanout that is passed. */
function isOfHouse({ talk }: Ground, mark: Of<"thing">): boolean {
  if (mark.thing.kind !== "cleanout") return false;
  if (wordsOf(talk, mark.from, mark.to) === "stack") return true;
  return (
    /(?<!(?:that's|there's|here's) )\bwhere (the|our|my|your)( [\w']+)?$/.test(
      wordsOf(talk, mark.from - 4, mark.from),
    ) ||
    /\b(touch|use|open|close|cap|cover|leave|block|move) (the|this|that|your|my)$/.test(
      wordsOf(talk, mark.from - 2, mark.from),
    )
  );
}

/** `zero at the bottom, the sweep`: the fitting by which the camera went in. */
function isBendOfEntry({ talk }: Ground, mark: Of<"thing">): boolean {
  if (mark.thing.kind !== "bend") return false;
  const read = inSentence(talk, mark.sentence).filter((other) => other.what === "distance");
  return read.length > 0 && read.every(({ distance }) => distance.from === 0);
}

/** Where the camera went in, and the end of a stretch, are no findings. */
function isSeen(ground: Ground, mark: Of<"thing">): boolean {
  if (isOfHouse(ground, mark) || isBendOfEntry(ground, mark)) return false;
  if (mark.thing.halts !== undefined && !isStopped(ground, mark, mark.thing.halts)) return false;
  if (inSentence(ground.talk, mark.sentence).some(({ at }) => ground.track.elsewhere.has(at)))
    return false;
  if (isEntry(ground, mark) || isStretchEnd(ground, mark) || isTapAtMain(ground, mark))
    return false;
  return !(mark.thing.kind === "main" && isFarMain(ground, mark));
}

/** So many sentences back the obstacle is told that a camera stopped at. */
const OBSTACLE = 2;
/** So much further, hundredths of a foot, the camera did not stop. */
const FURTHER = 100;

/** Who stops as he likes is not stopped. */
const CHOSEN =
  /\b(?:not (?:gonna|going to)|don't (?:want to|wanna|care to|need to|dare|like to)|won't|rather not|no (?:sense|point|need|reason)|afraid|scared|before i) (?:[\w']+ ){0,2}?(?:push|force|shove|go|run|take|send|risk|hang|lose|wedge|drown|get|put|push)\w*\b/;

/** Nothing farther was reached; where the way just ended, something was in it. A collapse says so itself. */
function isStopped(
  { talk, track }: Ground,
  mark: Said,
  halts: NonNullable<Of<"thing">["thing"]["halts"]>,
): boolean {
  const here = track.points.findLast(
    ({ at }) => at < mark.at || talk.said[at]?.sentence === mark.sentence,
  );
  const wentOn = track.points.some(
    (point) =>
      here !== undefined &&
      point.at > Math.max(mark.at, here.at) &&
      (point.counter - here.leaves) * track.motion > FURTHER,
  );
  if (wentOn || halts === "could-not") return !wentOn;
  if (CHOSEN.test(wordsOf(talk, mark.from - 20, mark.from))) return false;
  return [-OBSTACLE, -1, 0, 1].some((by) =>
    inSentence(talk, mark.sentence + by).some(
      (other) =>
        other.what === "thing" &&
        /^(fault|deposit|crossing)$/.test(other.thing.kind) &&
        !/^(crack|infiltration|open-joint|collapsed)$/.test(other.thing.fault ?? ""),
    ),
  );
}

/** `the tap itself looks okay`, where the camera stands at the main: nothing was read off on the way yet, or no more. */
function isTapAtMain({ talk, track, axis }: Ground, mark: Of<"thing">): boolean {
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

function isEntry(ground: Ground, mark: Of<"thing">): boolean {
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

/**
 * `out of the water`, `that’s the end of the roots`, of what was told before `scale lets up`; what
 * does not go on is only left: `out of the bend`.
 */
export function isStretchEnd({ talk }: Ground, mark: Said): boolean {
  // `came out at a cleanout`
  if (mark.what !== "thing" || /^(main|cleanout)$/.test(mark.thing.kind)) return false;
  const { thing } = mark;
  const [before, next] = [talk.said[mark.at - 1], talk.said[mark.at + 1]];
  if (before && isTurn(before, "closes") && isBeside(before, mark))
    return isLong(thing) || /\b(out|of)( the)?$/.test(wordsOf(talk, before.from, mark.from));
  if (!next || !isTurn(next, "closes") || !isLong(thing) || !isBeside(mark, next)) return false;
  if (REACHES.test(wordsOf(talk, next.from, next.to))) return false;
  return talk.said.some(
    (old) =>
      old.at < mark.at &&
      old.what === "thing" &&
      old.thing.kind === thing.kind &&
      old.thing.fault === thing.fault,
  );
}

/** Tells how far something goes that begins here. */
const REACHES = /\b(to|till|until|through|thru|about|around)$/;

function isBeside(one: Said, other: Said): boolean {
  return one.clause === other.clause && other.from - one.to <= 2;
}

/** The main is only named; the camera is not there. */
function isFarMain(ground: Ground, mark: Of<"thing">): boolean {
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

function heardThing(ground: Ground, mark: Of<"thing">): Heard[] {
  const about = aboutOf(ground.talk, ground.sense, mark);
  const sides = sidesOf(ground, mark);
  const another = isAnother(ground.talk, mark);
  return placesOf(ground, mark).flatMap((place) =>
    (sides.length > 1 ? sides : [about.clock]).map(
      (clock): Heard => ({
        mark,
        kind: mark.thing.kind,
        fault: mark.thing.fault,
        fitting: mark.thing.fitting,
        ...badnessOf(ground, mark),
        place,
        clock,
        diameter: about.diameter,
        material: about.material,
        upstreamMaterial: about.material,
        hedges: about.hedges,
        aboutRecord: about.aboutRecord,
        notes: place.note === "" ? [] : [place.note],
        clauses: spanOf([
          mark.clause,
          mark.until,
          ...about.clauses,
          ...(place.clause === null ? [] : [place.clause]),
        ]),
        again: ground.sense.again.has(mark.at),
        antecedent: ground.sense.again.get(mark.at) ?? null,
        ats: [mark.at],
        another,
        goesOn: isGoingOn(ground, mark),
        beside: false,
      }),
    ),
  );
}

function isGoingOn({ talk }: Ground, mark: Said): boolean {
  return (
    /\b(still|more of the same|same|continues?|continuing|keeps? going|goes on)( in| some| all| got| have| see| seeing| the| these| those| this)*$/.test(
      wordsOf(talk, mark.from - 4, mark.from),
    ) ||
    /^(still|yet|continues?|continuing|keeps? going|goes on|go on|carry on|carries on)\b/.test(
      wordsOf(talk, mark.to, mark.to + 2),
    )
  );
}

/** `one on the left, one on the right`: two tie-ins across from each other. */
function sidesOf(ground: Ground, mark: Of<"thing">): number[] {
  if (mark.thing.kind !== "tie-in") return [];
  const text = quoteOf(ground.talk, mark.clause, mark.clause + 1).toLowerCase();
  const both =
    /(both sides|each side|either side|one (on the )?left.{1,12}one (on the )?right|one (on the )?right.{1,12}one (on the )?left|left and (one on the |on the |the )?right|right and (one on the |on the |the )?left)/.test(
      text,
    );
  return both ? [9, 3] : [];
}

function heardPipe(ground: Ground): Heard[] {
  const rows = pipeSaid(ground).map((said): Heard => {
    const [own] = placesOf(ground, said.mark);
    const spot = beginning(ground, said.begins) ?? own ?? NOWHERE;
    return {
      ...BARE,
      mark: said.mark,
      kind: "material",
      place: { ...spot, toCounter: null },
      diameter: said.diameter,
      material: said.material,
      upstreamMaterial: said.upstream,
      hedges: hedgesBeside(ground, said.mark),
      notes: [said.note, spot.note].filter((note) => note !== ""),
      clauses: spanOf([said.mark.clause, ...(spot.clause === null ? [] : [spot.clause])]),
    };
  });
  const kept: Heard[] = [];
  for (const row of rows) if (!isChangeAgain(kept, row)) kept.push(row);
  return kept;
}

/** So near, hundredths of a foot, a change of the pipe is the one that was told. */
const SAME_CHANGE = 100;

/** `so it’s clay up to forty-five and then iron, forty-five`: either side of a change, where it was told. */
function isChangeAgain(kept: readonly Heard[], row: Heard): boolean {
  return kept.some((old, index) => {
    const [a, b] = [old.place, row.place];
    if (a.reading !== "read" || b.reading !== "read") return false;
    if (a.counter === null || b.counter === null) return false;
    if (Math.abs(a.counter - b.counter) > SAME_CHANGE) return false;
    // Gone back to, with another change read off since: what would be laid there.
    if (index < kept.length - 1) return true;
    return row.material === old.material || row.material === kept[index - 1]?.material;
  });
}

/** Where a material begins that is told by how far it, or the one before, goes. */
function beginning(ground: Ground, begins: PipeSaid["begins"]): Place | null {
  if (begins === null) return null;
  if (begins !== "start") return { ...placeAt(ground, begins), toCounter: null };
  return {
    counter: 0,
    toCounter: null,
    fromMain: null,
    reading: "between",
    slack: 100,
    note: "Said at the start",
    clause: null,
  };
}

const NOWHERE: Place = {
  counter: null,
  toCounter: null,
  fromMain: null,
  reading: "between",
  slack: 0,
  note: "",
  clause: null,
};

const BARE = {
  fault: null,
  fitting: "unknown",
  degree: null,
  reduction: null,
  waterDepth: null,
  clock: null,
  diameter: null,
  material: "unknown",
  upstreamMaterial: "unknown",
  hedges: [],
  aboutRecord: "",
  again: false,
  antecedent: null,
  ats: [],
  another: false,
  goesOn: false,
  beside: false,
} as const;

function hedgesBeside(ground: Ground, mark: Said): string[] {
  return inClause(ground.talk, mark.clause)
    .filter((other) => isTurn(other, "hedge") && other.at < mark.at)
    .map((other) => wordsOf(ground.talk, other.from, other.to));
}

/**
 * What was said about the record by itself: `the card shows one at forty-four, not seeing it`. No row
 * of a log, as nothing was seen. It stands where the record puts it, if the camera passes there about
 * then, else where it was said. One that gives no place is said of the find beside it.
 */
function recordRemarks(ground: Ground): Heard[] {
  const { talk, sense } = ground;
  const bySentence = new Map<number, Said>();
  for (const clause of sense.recordClauses) {
    const mark = inClause(talk, clause).find((other) => isTurn(other, "record", "record-comment"));
    const owned = mark && recordOwner(talk, sense, { clause, sentence: mark.sentence });
    if (mark && !owned && !bySentence.has(mark.sentence)) bySentence.set(mark.sentence, mark);
  }
  return [...bySentence.values()].flatMap((mark): Heard[] => {
    const marks = inSentence(talk, mark.sentence);
    const says =
      marks.some((other) => /^(distance|thing|material)$/.test(other.what)) &&
      CLAIMS.test(sentenceWords(talk, mark.sentence));
    const last = marks.at(-1)?.clause ?? mark.clause;
    const clauses = spanOf([mark.clause, last]);
    const aboutRecord = quoteOf(talk, ...clauses);
    const place = remarkPlace(ground, mark) ?? NOWHERE;
    const beside =
      place.counter === null ||
      (!marks.some(isPlace) && !AWAITED.test(sentenceWords(talk, mark.sentence)));
    return says
      ? [{ ...BARE, mark, kind: "remark", place, aboutRecord, beside, notes: [], clauses }]
      : [];
  });
}

function isPlace(mark: Said): boolean {
  return mark.what === "distance" && mark.distance.kind === "at";
}

/** By the record it had to be here, and is not. */
const AWAITED = /\b(should|supposed|by now|there'd|not seeing|don't see|didn't see|no sign)\b/;

/** What a record does, or does not. */
const CLAIMS =
  /\b(shows?|has|have|had|says?|said|puts?|calls?|lists?|marks?|drew|got|not|no|nothing|never|isn't|doesn't|don't|didn't|wasn't|missing|per|according|supposed)\b/;

/** Past a record's place by more than this, hundredths of a foot, the camera is not about there. */
const ABOUT = 300;

function remarkPlace(ground: Ground, mark: Said): Place | null {
  const { points } = ground.track;
  const before = points.findLast(({ at }) => at < mark.at);
  if (!before || (before.counter === 0 && !points.some(({ at }) => at > mark.at))) return null;
  const [place] = placesOf(ground, mark);
  const claimed = inSentence(ground.talk, mark.sentence).find(
    (other): other is Of<"distance"> => other.what === "distance",
  );
  if (place?.reading === "read" || !claimed) return before.counter === 0 ? null : (place ?? null);
  const counter = counterOf(claimed.distance.from, claimed.distance.base, ground.axis);
  const after = points.find(({ at }) => at > mark.at) ?? before;
  const [low, high] = [before.leaves, after.counter].sort((a, b) => a - b);
  const near = counter !== null && counter >= (low ?? 0) - ABOUT && counter <= (high ?? 0) + ABOUT;
  return place && near ? { ...place, counter, reading: "between" } : (place ?? null);
}

function spanOf(clauses: readonly number[]): [number, number] {
  return [Math.min(...clauses), Math.max(...clauses)];
}
