import type { Cft } from "../../length/station.ts";
import { distanceFor } from "../footage/footage-of.ts";
import type { Ground } from "../footage/ground.ts";
import { inOrder, placeAt } from "../footage/place.ts";
import { workedOutAt } from "../footage/track.ts";
import { inClause, isTurn, type Of, type Said, wordsOf } from "../meaning/said.ts";
import { isLong } from "../vocabulary/endings.ts";
import { isStretchEnd } from "./finds.ts";
import type { Heard } from "./heard.ts";
import { isAcross, together } from "./merge.ts";

/** Something that goes on: its row, where it was last told of, and where it ended. */
interface Run {
  readonly index: number;
  /** The mark and sentence in which it was last told of. */
  readonly last: Said;
  /** How far it was told to go so far. */
  readonly reach: Cft | null;
  readonly ended: End | null;
}

interface End {
  readonly turn: Said;
  readonly counter: Cft | null;
  readonly slack: Cft;
  readonly spoken: boolean;
}

/**
 * Puts what goes on for some feet into one row where it begins: `water starts at forty-one …
 * forty-four, still in it … and we’re out of it at forty-seven, so that’s a six foot belly`.
 */
export function withStretches(ground: Ground, heard: readonly Heard[]): Heard[] {
  const told: Told = { rows: [], runs: [] };
  const turns = ground.talk.said.filter((mark) => isTurn(mark, "closes"));
  const closeUntil = (at: number) => {
    while (turns[0] && turns[0].at < at) closeRun(ground, told, turns.shift() as Said);
  };
  for (const next of heard) {
    closeUntil(next.mark.at);
    if (isLong(next)) tell(ground, told, next);
    else told.rows.push(next);
  }
  closeUntil(Number.POSITIVE_INFINITY);
  return told.rows;
}

interface Told {
  readonly rows: Heard[];
  readonly runs: Run[];
}

/** Goes on with what is open, or opens another. */
function tell(ground: Ground, { rows, runs }: Told, next: Heard): void {
  const at = runs.findLastIndex((run) => isOfRun(ground, rows, run, next));
  const run = runs[at];
  const row = run && rows[run.index];
  const ended = isWhole(ground, next) ? wholeEnd(next) : (run?.ended ?? null);
  const { counter, toCounter } = next.place;
  if (!run || !row) {
    runs.push({ index: rows.length, last: next.mark, reach: toCounter ?? counter, ended });
    rows.push(next);
    return;
  }
  rows[run.index] = joined(ground, { row, run, next });
  const reach = toCounter ?? (isRead(next) ? counter : run.reach);
  runs[at] = { ...run, last: next.mark, reach: reach ?? run.reach, ended };
}

function isRead({ place }: Heard): boolean {
  return place.reading === "read";
}

/** So many sentences behind its end a stretch is summed up. */
const SUMMED_UP = 4;
/** As near as this, hundredths of a foot, two are one place. */
const SAME_PLACE = 100;
/** So much farther on, hundredths of a foot, a stretch is not what still goes on. */
const GOES_ON = 1_000;

function isOfRun(ground: Ground, rows: readonly Heard[], run: Run, next: Heard): boolean {
  const row = rows[run.index];
  if (!row || !isAlike(ground, row, next) || isAcross(row, next)) return false;
  if (isWhole(ground, next) && isSummary(row, run, next)) return true;
  if (next.another) return false;
  if (run.ended) return isSummedUp(run.ended, next);
  const reach = run.reach ?? row.place.counter;
  const at = next.place.counter;
  if (reach === null || at === null || Math.abs(at - reach) > GOES_ON) return false;
  return next.goesOn || isSpread(row);
}

/** What lies, stands or is worn everywhere is the same where it is told again; roots and cracks come one by one. */
function isSpread({ kind, fault }: Heard): boolean {
  return kind !== "fault" || /^(belly|worn-surface|deformed)$/.test(fault ?? "");
}

/** Told as a whole: `so belly, fourteen to eighteen three`. */
function isSummary(row: Heard, run: Run, next: Heard): boolean {
  const ends = [row.place.counter, row.place.toCounter, run.ended?.counter ?? null];
  const near = Math.max(SAME_PLACE, row.place.slack);
  return [next.place.counter, next.place.toCounter].some((end) =>
    ends.some((old) => end !== null && old !== null && Math.abs(old - end) <= near),
  );
}

/** From one spoken footage to another. */
function isWhole({ talk }: Ground, { place }: Heard): boolean {
  if (place.clause === null || place.toCounter === null) return false;
  return inClause(talk, place.clause).some(
    (mark) => mark.what === "distance" && mark.distance.to !== null && !mark.distance.choice,
  );
}

function wholeEnd({ mark, place }: Heard): End {
  return { turn: mark, counter: place.toCounter, slack: place.slack, spoken: true };
}

/** `and out, twenty-five, it was never more than an inch of water` */
function isSummedUp(end: End, next: Heard): boolean {
  if (next.mark.sentence - end.turn.sentence > SUMMED_UP || isOpening(next)) return false;
  const at = next.place.counter;
  if (at === null || end.counter === null) return at === null || !isRead(next);
  return !isRead(next) || Math.abs(at - end.counter) <= SAME_PLACE;
}

function isOpening({ again, mark }: Heard): boolean {
  return again && mark.what === "thing";
}

/** A belly and its water; of what lies there, the same stuff. */
function isAlike({ talk }: Ground, row: Heard, next: Heard): boolean {
  if (isWet(row)) return isWet(next);
  if (row.kind !== next.kind || row.fault !== next.fault) return false;
  if (row.kind !== "deposit") return true;
  const [a, b] = [row, next].map(({ mark }) => stuffOf(wordsOf(talk, mark.from, mark.to)));
  return a === b || a === null || b === null;
}

function isWet({ kind, fault }: Pick<Heard, "kind" | "fault">): boolean {
  return kind === "water" || fault === "belly";
}

const STUFF = [
  /\b(grease|greasy|fat|fats|lard|tallow|soap|wax)\b/,
  /\b(scale|scaly|scaling|rust|tubercul\w*|crust|flak\w+)\b/,
  /\b(sand|sandy|silt|mud|muddy|grit|gravel|dirt|sediment|sludge|rocks?|stones?)\b/,
  /\b(paper|wipes?|rags?|tissue|plastic|toys?)\b/,
];

function stuffOf(words: string): number | null {
  const at = STUFF.findIndex((stuff) => stuff.test(words));
  return at === -1 ? null : at;
}

function joined(
  ground: Ground,
  { row, run, next }: { readonly row: Heard; readonly run: Run; readonly next: Heard },
): Heard {
  // `belly or just backed up?`
  const asked = ground.talk.speech.words[next.mark.from]?.asks === true;
  const belly = next.fault === "belly" && !asked ? next : row;
  const whole = {
    ...together(ground.track.motion, row, next),
    kind: belly.kind,
    fault: belly.fault,
  };
  return { ...whole, place: isWhole(ground, next) ? next.place : placeOf(row, run, next) };
}

/** Where it begins, on to where it was told of last. */
function placeOf(row: Heard, run: Run, next: Heard): Heard["place"] {
  const { counter } = row.place;
  const end = next.place.toCounter ?? next.place.counter;
  const earlier = row.place.reading !== "read" && isRead(next) && run.ended === null;
  if (earlier && !next.goesOn) return next.place;
  const on = next.goesOn && isRead(next) && run.ended === null;
  if (counter === null || end === null || !on) return row.place;
  const ends = [counter, row.place.toCounter ?? counter, end];
  return { ...row.place, ...inOrder(Math.min(...ends), Math.max(...ends)) };
}

/** An end belongs to the last stretch of its kind that is open, or to the last one at all. */
function closeRun(ground: Ground, { rows, runs }: Told, turn: Said): void {
  const end = endOf(ground, turn);
  if (end === null) return;
  const at = openRun(ground, { rows, runs }, end);
  const run = runs[at];
  const row = run && rows[run.index];
  if (!run || !row) return;
  runs[at] = { ...run, ended: end };
  if (end.counter === null || !(end.spoken || isHere(ground, turn))) return;
  const clauses = [row.clauses[0], Math.max(row.clauses[1], turn.clause)] as const;
  const slack = Math.max(row.place.slack, end.slack);
  const place = { ...row.place, ...inOrder(row.place.counter, end.counter), slack };
  rows[run.index] = { ...row, ...sagOf(ground, row, turn), clauses, place };
}

/** `that’s the end of the low spot`, where only its water was told. */
function sagOf({ talk }: Ground, row: Heard, turn: Said): Pick<Heard, "kind" | "fault"> {
  const sag = inClause(talk, turn.clause).some(
    (mark) => mark.what === "thing" && mark.thing.fault === "belly" && mark.from - turn.to <= 2,
  );
  return row.kind === "water" && sag ? { kind: "fault", fault: "belly" } : row;
}

function endOf(ground: Ground, turn: Said): End | null {
  const own = distanceFor(ground, turn);
  if (isOther(ground, turn, own)) return null;
  if (own) {
    const { counter, slack } = placeAt(ground, own);
    return { turn, counter, slack, spoken: true };
  }
  const found = workedOutAt(ground.track, turn);
  const between = found?.reading === "between" ? found : { counter: null, slack: 0 };
  return { turn, counter: between.counter, slack: between.slack, spoken: false };
}

/** `till we get to fifty`, `the cast iron ends`: no stretch ends there. */
function isOther({ talk }: Ground, turn: Said, own: Said | null): boolean {
  const words = wordsOf(talk, turn.from, turn.to);
  const joins = /^(until|till|all the way to|through to|down to about|to)$/.test(words);
  if (joins && (own === null || own.from - turn.to > 3)) return true;
  if (
    !/\b(till|until)\b/.test(words) &&
    /\b(not|never|don't|doesn't|isn't|didn't|won't)$/.test(wordsOf(talk, turn.from - 2, turn.from))
  )
    return true;
  const next = talk.said[turn.at + 1];
  // `ended at the main`: the run, not what was seen on it.
  if (next?.what === "thing" && next.thing.kind === "main" && next.from - turn.to <= 1) return true;
  const before = talk.said[turn.at - 1];
  return before?.what === "material" && turn.from - before.to <= 2;
}

/** `it quits about here` */
function isHere({ talk }: Ground, turn: Said): boolean {
  return (
    /^(about |right )*here\b/.test(wordsOf(talk, turn.to, turn.to + 3)) ||
    /\bhere( it is| it's)?$/.test(wordsOf(talk, turn.from - 3, turn.from))
  );
}

/** What goes on stays open for this many sentences unless it was said to begin; what comes one by one hardly does. */
const NEAR = 6;
const ONE_BY_ONE = 2;
/** Farther on, hundredths of a foot, something else ends. */
const FAR = 3_000;
/** What only ends for a camera that was in water, and a wall that was pressed in. */
const DRY = /\b(dry|out|up|air|bare|surfac\w+|level\w*|drain\w*)\b/;
const ROUND = /\bround\w*\b/;

function openRun(ground: Ground, { rows, runs }: Told, end: End): number {
  const { turn, counter } = end;
  const named = inClause(ground.talk, turn.clause).find(
    (mark): mark is Of<"thing"> => mark.what === "thing" && isStretchEnd(ground, mark),
  );
  const words = wordsOf(ground.talk, turn.from, turn.to);
  const fits = (row: Heard) => {
    if (named) return isWet(row) ? isWet(named.thing) : matches(row, named);
    if (/\b(the|of)$/.test(words)) return false;
    return !ROUND.test(words) || row.fault === "deformed";
  };
  return runs.findLastIndex((run) => {
    const row = rows[run.index];
    if (!row || run.ended?.spoken || !fits(row)) return false;
    const from = row.place.counter;
    if (from === null || from === counter) return false;
    if (counter !== null && Math.abs(counter - from) > FAR) return false;
    return named !== undefined || isOpenAt(ground, row, { run, end });
  });
}

/** Told not long before, or said to begin and ended by a footage. */
function isOpenAt(
  { talk }: Ground,
  row: Heard,
  { run, end: { turn, spoken } }: { readonly run: Run; readonly end: End },
): boolean {
  const began = inClause(talk, row.mark.clause).some((mark) => isTurn(mark, "opens"));
  const dry = isWet(row) && DRY.test(wordsOf(talk, turn.from, turn.to));
  if (spoken && (began || dry)) return true;
  return turn.sentence - run.last.sentence <= (isSpread(row) ? NEAR : ONE_BY_ONE);
}

function matches(row: Heard, { thing }: Of<"thing">): boolean {
  return row.kind === thing.kind && (thing.fault === null || thing.fault === row.fault);
}
