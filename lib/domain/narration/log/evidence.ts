import type { Ground } from "../footage/ground.ts";
import { quoteOf, type Said, wordsOf } from "../meaning/said.ts";
import type { Heard } from "./heard.ts";

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
    else if (
      isGone(last) &&
      !isBroken(ground, last, row) &&
      (shows(ground, row) || isOneBreath(ground, last, row))
    )
      left[left.length - 1] = asHole(last, row);
    else if (!shows(ground, row) || !(isOpen(last) || last.fault === "broken")) left.push(row);
  }
  return left;
}

/** Told by the ground that is to be seen, not by a hole. */
function shows({ talk }: Ground, { mark }: Heard): boolean {
  return !/\b(holes?|void|opening)\b/.test(wordsOf(talk, mark.from, mark.to));
}

function isGone({ fault }: Heard): boolean {
  return fault === "broken" || fault === "worn-surface";
}

/** `broken pipe, piece gone, can see gravel`: whoever calls it broken means that. */
function isBroken({ talk }: Ground, last: Heard, row: Heard): boolean {
  return (
    last.fault === "broken" &&
    !/\bholes?\b/i.test(quoteOf(talk, ...row.clauses)) &&
    /\b(broken|broke|busted|shattered)\b/.test(wordsOf(talk, last.mark.from, row.mark.to + 6))
  );
}

function isOpen({ fault }: Heard): boolean {
  return /^(open-joint|offset-joint|crack|collapsed|hole)$/.test(fault ?? "");
}

function isToldOf(ground: Ground, last: Heard, row: Heard): boolean {
  const back = row.mark.sentence - last.mark.sentence;
  if (last.kind !== "fault" || back > TOLD) return false;
  const next = back <= 2 && row.place.reading !== "read" && shows(ground, row);
  if (!next && !inOneBreath(ground, last.mark, row.mark)) return false;
  const [from, to] = [last.place.counter, row.place.counter];
  if (last.place.reading === "read" && row.place.reading === "read")
    return from !== null && to !== null && Math.abs(from - to) <= SAME_PLACE;
  return true;
}

/** `rusted through, there’s a hole`; `broken, and a hole beside it` are two. */
function isOneBreath({ talk }: Ground, last: Heard, row: Heard): boolean {
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
