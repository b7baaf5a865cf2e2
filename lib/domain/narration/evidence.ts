import type { Ground } from "./ground.ts";
import type { Heard } from "./heard.ts";
import { type Said, wordsOf } from "./said.ts";

/** So many sentences behind a fault, what shows through it is told of it. */
const TOLD = 3;
/** As near as this, hundredths of a foot, both are at one place. */
const SAME_PLACE = 100;

/**
 * Rows that only say how bad the one before is: the dirt that shows through an open joint is no
 * second fault; a piece missing with the ground behind it is a hole; so is what rusted through.
 */
export function withoutEvidence(ground: Ground, rows: readonly Heard[]): Heard[] {
  const left: Heard[] = [];
  for (const row of rows) {
    const last = left.at(-1);
    const hole = row.kind === "fault" && row.fault === "hole";
    if (!hole || !last || !isToldOf(ground, last, row)) left.push(row);
    else if (isGone(last) && (shows(ground, row) || isOneBreath(ground, last, row)))
      left[left.length - 1] = asHole(last, row);
    else if (!shows(ground, row) || !isOpen(last)) left.push(row);
  }
  return left.filter((row) => !left.some((other) => isOneTold(ground, other, row)));
}

/** How a wall or a joint has failed, each worse than the one before it: of one place in one breath people tell one, in several words. */
const WALL = ["crack", "broken", "hole", "collapsed"];
const JOINT = ["offset-joint", "open-joint"];

/** Told of the same place in one breath by another row: the worse of two, the first of two of a joint. */
function isOneTold(ground: Ground, other: Heard, row: Heard): boolean {
  if (other === row || !inOneBreath(ground, other.mark, row.mark)) return false;
  if (!isAtOnePlace(other, row) || Math.abs(row.mark.sentence - other.mark.sentence) > 1)
    return false;
  if (isOneMore(ground, [row, other].sort((a, b) => a.mark.at - b.mark.at)[1] ?? row)) return false;
  if (row.kind === "water") return other.kind === "fault" && other.mark.at < row.mark.at;
  const [a, b] = [other.fault ?? "", row.fault ?? ""];
  if (JOINT.includes(a) && JOINT.includes(b)) return other.mark.at < row.mark.at;
  if (WALL.includes(a) && WALL.includes(b)) return WALL.indexOf(a) > WALL.indexOf(b);
  return false;
}

/** `and a crack`, `plus some water`: told beside the other. */
function isOneMore({ talk }: Ground, { mark }: Heard): boolean {
  return /\b(and|plus|also|another|with|then)( [\w']+){0,3}$/.test(
    wordsOf(talk, mark.from - 4, mark.from),
  );
}

function isAtOnePlace(one: Heard, other: Heard): boolean {
  if (one.place.reading !== "read" || other.place.reading !== "read") return false;
  const [from, to] = [one.place.counter, other.place.counter];
  return from !== null && to !== null && Math.abs(from - to) <= SAME_PLACE;
}

/** Told by the ground that is to be seen, not by a hole. */
function shows({ talk }: Ground, { mark }: Heard): boolean {
  return !/\b(holes?|void|opening)\b/.test(wordsOf(talk, mark.from, mark.to));
}

function isGone({ fault }: Heard): boolean {
  return fault === "broken" || fault === "worn-surface";
}

function isOpen({ fault }: Heard): boolean {
  return /^(open-joint|offset-joint|crack|collapsed|hole)$/.test(fault ?? "");
}

function isToldOf(ground: Ground, last: Heard, row: Heard): boolean {
  if (last.kind !== "fault" || row.mark.sentence - last.mark.sentence > TOLD) return false;
  if (!inOneBreath(ground, last.mark, row.mark)) return false;
  const [from, to] = [last.place.counter, row.place.counter];
  if (last.place.reading === "read" && row.place.reading === "read")
    return from !== null && to !== null && Math.abs(from - to) <= SAME_PLACE;
  return true;
}

/** `rusted through, there’s a hole`; `broken, and a hole beside it` are two. */
function isOneBreath({ talk }: Ground, last: Heard, row: Heard): boolean {
  if (last.mark.sentence !== row.mark.sentence) return false;
  return !/\b(and|plus|also|another|then|with)\b/.test(wordsOf(talk, last.mark.to, row.mark.from));
}

/** The hole, where and as both tell. */
function asHole(last: Heard, row: Heard): Heard {
  const place = row.place.reading === "read" ? row.place : last.place;
  return {
    ...last,
    fault: "hole",
    place,
    clock: last.clock ?? row.clock,
    ats: [...last.ats, ...row.ats],
    hedges: [...new Set([...last.hedges, ...row.hedges])],
    clauses: [Math.min(last.clauses[0], row.clauses[0]), Math.max(last.clauses[1], row.clauses[1])],
  };
}

function inOneBreath({ talk }: Ground, one: Said, other: Said): boolean {
  const { words } = talk.speech;
  return words[one.from]?.breath === words[other.from]?.breath;
}
