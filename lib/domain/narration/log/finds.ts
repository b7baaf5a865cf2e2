import type { Ground } from "../footage/ground.ts";
import { type PipeSaid, pipeSaid } from "../footage/pipe.ts";
import { type Place, placeAt, placesOf } from "../footage/place.ts";
import { aboutOf, isOwner } from "../meaning/about.ts";
import { badnessOf } from "../meaning/badness.ts";
import {
  inClause,
  inSentence,
  isTurn,
  type Of,
  quoteOf,
  type Said,
  wordsOf,
} from "../meaning/said.ts";
import { isAnother } from "../meaning/told-before.ts";
import { isLong } from "../vocabulary/endings.ts";
import { BARE, type Heard, NOWHERE, spanOf } from "./heard.ts";
import { recordRemarks } from "./record-remarks.ts";
import {
  FURTHER,
  isBendOfEntry,
  isEntry,
  isFarMain,
  isOpening,
  isReadAtMain,
  isTapAtMain,
  isWayOut,
} from "./way-in.ts";

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

function hedgesBeside(ground: Ground, mark: Said): string[] {
  return inClause(ground.talk, mark.clause)
    .filter((other) => isTurn(other, "hedge") && other.at < mark.at)
    .map((other) => wordsOf(ground.talk, other.from, other.to));
}
