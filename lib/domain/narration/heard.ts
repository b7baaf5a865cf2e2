import type { Fitting, Material } from "../line/line.ts";
import type { Fault, ObservationKind } from "../run/run.ts";
import { aboutOf, isOwner, recordOwner } from "./about.ts";
import { pipeSaid } from "./pipe.ts";
import { type Ground, type Place, placesOf } from "./place.ts";
import {
  clauseWords,
  inClause,
  inSentence,
  isTurn,
  type Of,
  quoteOf,
  type Said,
  wordsOf,
} from "./said.ts";

/** One thing heard at one place, before repeated mentions are put together. */
export interface Heard {
  readonly mark: Said;
  readonly kind: ObservationKind | "main";
  readonly fault: Fault | null;
  readonly fitting: Fitting;
  readonly place: Place;
  readonly clock: number | null;
  readonly diameter: number | null;
  readonly material: Material;
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
}

/** Everything that was seen, by the talk, in the order of speaking. */
export function heardIn(ground: Ground): Heard[] {
  const things = ground.talk.said.flatMap((mark) =>
    isOwner(ground.sense, mark) && isSeen(ground, mark) ? heardThing(ground, mark) : [],
  );
  return [...things, ...heardPipe(ground), ...recordRemarks(ground)].sort(
    (a, b) => a.mark.at - b.mark.at,
  );
}

/** Where the camera went in, and the end of a stretch, are no findings. */
function isSeen(ground: Ground, mark: Of<"thing">): boolean {
  if (isEntry(ground, mark) || isStretchEnd(ground, mark)) return false;
  return !(mark.thing.kind === "main" && isFarMain(ground, mark));
}

function isEntry(ground: Ground, mark: Of<"thing">): boolean {
  if (mark.thing.kind !== "cleanout") return false;
  const zero = inSentence(ground.talk, mark.sentence).some(
    (other) => other.what === "distance" && other.distance.from === 0,
  );
  if (zero) return true;
  const lead = wordsOf(ground.talk, mark.from - 7, mark.from);
  return /\b(go(ing)? in|in at|in through|went in|from|start(ing)?|set up|push(ed|ing)?|launch(ed|ing)?|zero(ed)?|out of|down|through|put in|came in|inside)\b( \w+){0,4}$/.test(
    lead,
  );
}

/** `out of the water`, `that’s the end of the roots`. */
export function isStretchEnd(ground: Ground, mark: Said): boolean {
  const before = ground.talk.said[mark.at - 1];
  return (
    before !== undefined &&
    isTurn(before, "closes") &&
    before.clause === mark.clause &&
    mark.from - before.to <= 2
  );
}

/** The main is only named; the camera is not there. */
function isFarMain(ground: Ground, mark: Of<"thing">): boolean {
  const whole = clauseWords(ground.talk, mark.clause);
  if (/\b(launch|start|begin|push|set)(ing|ed)?\b.* from\b/.test(whole)) return false;
  const lead = wordsOf(ground.talk, mark.from - 3, mark.from);
  return /\b(from|off|to|toward|towards|down to|for)( the| our)?$/.test(lead);
}

function heardThing(ground: Ground, mark: Of<"thing">): Heard[] {
  const about = aboutOf(ground.talk, ground.sense, mark);
  const sides = sidesOf(ground, mark);
  const another = inClause(ground.talk, mark.clause).some((other) => isTurn(other, "another"));
  return placesOf(ground, mark).flatMap((place) =>
    (sides.length > 1 ? sides : [about.clock]).map(
      (clock): Heard => ({
        mark,
        kind: mark.thing.kind,
        fault: mark.thing.fault,
        fitting: mark.thing.fitting,
        place,
        clock,
        diameter: about.diameter,
        material: about.material,
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
      }),
    ),
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
  return pipeSaid(ground).map((said): Heard => {
    const [place] = placesOf(ground, said.mark);
    const spot = place ?? {
      counter: null,
      toCounter: null,
      reading: "between",
      slack: 0,
      note: "",
      clause: null,
    };
    return {
      ...BARE,
      mark: said.mark,
      kind: "material",
      place: { ...spot, toCounter: null },
      diameter: said.diameter,
      material: said.material,
      hedges: hedgesBeside(ground, said.mark),
      notes: [said.note, spot.note].filter((note) => note !== ""),
      clauses: spanOf([said.mark.clause, ...(spot.clause === null ? [] : [spot.clause])]),
    };
  });
}

const BARE = {
  fault: null,
  fitting: "unknown",
  clock: null,
  diameter: null,
  material: "unknown",
  hedges: [],
  aboutRecord: "",
  again: false,
  antecedent: null,
  ats: [],
  another: false,
} as const;

function hedgesBeside(ground: Ground, mark: Said): string[] {
  return inClause(ground.talk, mark.clause)
    .filter((other) => isTurn(other, "hedge") && other.at < mark.at)
    .map((other) => wordsOf(ground.talk, other.from, other.to));
}

/** What was said about the record by itself: `the card shows one at forty-four, not seeing it`. */
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
    const says = marks.some((other) => /^(distance|thing|material)$/.test(other.what));
    const last = marks.at(-1)?.clause ?? mark.clause;
    const clauses = spanOf([mark.clause, last]);
    const aboutRecord = quoteOf(talk, ...clauses);
    const [place] = placesOf(ground, mark);
    return says && place && place.counter !== null
      ? [{ ...BARE, mark, kind: "remark", place, aboutRecord, notes: [], clauses }]
      : [];
  });
}

function spanOf(clauses: readonly number[]): [number, number] {
  return [Math.min(...clauses), Math.max(...clauses)];
}
