import type { Cft } from "../../length/station.ts";
import { distanceFor } from "../footage/footage-of.ts";
import type { Ground } from "../footage/ground.ts";
import { inOrder, placeAt } from "../footage/place.ts";
import { workedOutAt } from "../footage/track.ts";
import { inClause, isTurn, type Of, type Said, wordsOf } from "../meaning/said.ts";
import { type Heard, isStretchEnd } from "./heard.ts";

/** Things that go on for a while. */
const LONG_KINDS = new Set(["water", "deposit"]);
const LONG_FAULTS = new Set([
  "roots",
  "belly",
  "crack",
  "infiltration",
  "worn-surface",
  "deformed",
]);

export function isLong(heard: Pick<Heard, "kind" | "fault">): boolean {
  return LONG_KINDS.has(heard.kind) || (heard.fault !== null && LONG_FAULTS.has(heard.fault));
}

/**
 * Gives stretches their ends: `water starts at forty-one … and we’re out of it at forty-seven`.
 * An end belongs to the last stretch of its kind that is open, or to the last one at all.
 */
export function withEnds(ground: Ground, heard: readonly Heard[]): Heard[] {
  const rows = [...heard];
  for (const turn of ground.talk.said) {
    if (!isTurn(turn, "closes")) continue;
    const end = endOf(ground, turn);
    const at = end === null ? -1 : openStretch(ground, rows, { turn, end });
    const row = rows[at];
    if (!row || end === null) continue;
    const clauses = [row.clauses[0], Math.max(row.clauses[1], turn.clause)] as const;
    const place = { ...row.place, ...inOrder(row.place.counter, end.counter) };
    const slack = Math.max(place.slack, end.slack);
    rows[at] = { ...row, clauses, place: { ...place, slack } };
  }
  return rows;
}

interface End {
  readonly counter: Cft;
  readonly slack: Cft;
  readonly spoken: boolean;
}

function endOf(ground: Ground, turn: Said): End | null {
  const own = distanceFor(ground, turn);
  if (isOther(ground, turn, own)) return null;
  if (own) {
    const { counter, slack } = placeAt(ground, own);
    return counter === null ? null : { counter, slack, spoken: true };
  }
  const found = workedOutAt(ground.track, turn);
  return found?.reading === "between" ? { ...found, spoken: false } : null;
}

/** `till we get to fifty`, `the cast iron ends`: no stretch ends there. */
function isOther({ talk }: Ground, turn: Said, own: Said | null): boolean {
  const words = wordsOf(talk, turn.from, turn.to);
  const joins = /^(until|till|all the way to|through to|down to about|to)$/.test(words);
  if (joins && (own === null || own.from - turn.to > 3)) return true;
  const next = talk.said[turn.at + 1];
  // `ended at the main`: the run, not what was seen on it.
  if (next?.what === "thing" && next.thing.kind === "main" && next.from - turn.to <= 1) return true;
  const before = talk.said[turn.at - 1];
  return before?.what === "material" && turn.from - before.to <= 2;
}

/** Open still: said to begin, or told just before and ended by a footage or `about here`. */
function isOpenAt(
  ground: Ground,
  row: Heard,
  { turn, spoken }: { readonly turn: Said; readonly spoken: boolean },
): boolean {
  const began = inClause(ground.talk, row.mark.clause).some((mark) => isTurn(mark, "opens"));
  const near = turn.sentence - row.mark.sentence <= NEAR;
  return began ? near || spoken : near && (spoken || isHere(ground, turn));
}

/** `it quits about here` */
function isHere({ talk }: Ground, turn: Said): boolean {
  return /^(about |right )*here\b/.test(wordsOf(talk, turn.to, turn.to + 3));
}

/** An open stretch stays open for this many sentences unless it was said to begin. */
const NEAR = 2;

function openStretch(
  ground: Ground,
  rows: readonly Heard[],
  { turn, end }: { turn: Said; end: End },
): number {
  const named = inClause(ground.talk, turn.clause).find(
    (mark): mark is Of<"thing"> => mark.what === "thing" && isStretchEnd(ground, mark),
  );
  const needsName = /\b(the|of)$/.test(wordsOf(ground.talk, turn.from, turn.to));
  return rows.findLastIndex((row) => {
    if (row.mark.at > turn.at || !isLong(row)) return false;
    const { counter, toCounter } = row.place;
    if (counter === null || toCounter !== null || counter === end.counter) return false;
    if (named) return row.kind === named.thing.kind && matches(row, named);
    if (needsName) return false;
    return isOpenAt(ground, row, { turn, spoken: end.spoken });
  });
}

function matches(row: Heard, named: Of<"thing">): boolean {
  return named.thing.fault === null || named.thing.fault === row.fault;
}
