import type { Ground } from "../footage/ground.ts";
import { quoteOf, type Said, type Talk, wordsOf } from "../meaning/said.ts";
import { isLong } from "../vocabulary/endings.ts";
import type { Heard } from "./heard.ts";
import { inOneStay, isAcross } from "./merge.ts";

/** The words that compete for one spot: each gives way to those it is told by, the worse or the plainer. */
const GIVES_WAY: Readonly<Record<string, string>> = {
  crack: "broken hole collapsed",
  "worn-surface": "broken hole collapsed",
  deformed: "collapsed",
  broken: "hole collapsed",
  hole: "collapsed",
  deposit: "blockage",
  blockage: "collapsed",
  water: "belly",
};

/** What something looked like before it was made out. */
const MADE_OUT: Readonly<Record<string, string>> = { hole: "tie-in cleanout" };

/** `a hole off the left with a pipe on it` */
const HAS_PIPE = /\b(?:with|and) (?:a|an|another|some) (?:[\w']+ ){0,2}?(?:pipe|line)\b/;

/** What only shows a find that was named before it, or leads to it. */
const SHOWS: Readonly<Record<string, string>> = {
  deposit: "hole collapsed",
  water: "hole infiltration",
  "offset-joint": "broken collapsed",
  cleanout: "bend tie-in",
};

/**
 * One row for what is one find, told in two words while the camera stood there: the word that the
 * speaker settled on, else the worse. Where the row that stays has no footage of its own it takes
 * that of the other.
 */
export function asOneFind(ground: Ground, rows: readonly Heard[]): Heard[] {
  const left: Heard[] = [];
  for (const row of rows) {
    let one = row;
    let at = left.findLastIndex((other) => isOne(ground, other, one));
    for (let other = left[at]; other; other = left[at]) {
      left.splice(at, 1);
      one = settled(ground, other, one);
      at = left.findLastIndex((before) => isOne(ground, before, one));
    }
    left.push(one);
  }
  return left.sort((a, b) => a.mark.at - b.mark.at);
}

function nameOf({ kind, fault }: Heard): string {
  return fault ?? kind;
}

function has(table: Readonly<Record<string, string>>, a: Heard, b: Heard): boolean {
  return (table[nameOf(a)] ?? "").split(" ").includes(nameOf(b));
}

function isOne(ground: Ground, last: Heard, row: Heard): boolean {
  if ([last, row].some(({ kind }) => /^(material|remark|main)$/.test(kind))) return false;
  if (nameOf(last) === nameOf(row) || !isAtOneSpot(ground, last, row)) return false;
  if (isChosen(ground, last, row) || isWithdrawn(last, row)) return true;
  if (
    has(MADE_OUT, last, row) &&
    HAS_PIPE.test(wordsOf(ground.talk, last.mark.to, last.mark.to + 12))
  )
    return true;
  if (row.another || isAcross(last, row) || isBeside(ground, last, row)) return false;
  return (
    has(GIVES_WAY, last, row) ||
    has(GIVES_WAY, row, last) ||
    has(MADE_OUT, last, row) ||
    isShown(last, row) ||
    isOfBranch(ground, last, row) ||
    (isGround(ground, row) && OPEN.test(last.fault ?? ""))
  );
}

/** So near to each other, hundredths of a foot, two that were read off are at one spot. */
const ONE_SPOT = 50;
/** And one that was named before its footage was read off. */
const NAMED_BEFORE = 150;

function isAtOneSpot({ track }: Ground, last: Heard, row: Heard): boolean {
  const apart = Math.abs((last.place.counter ?? Infinity) - (row.place.counter ?? 0));
  const read = row.place.reading === "read";
  if (read && last.place.reading === "read") return apart <= ONE_SPOT;
  return inOneStay(track, last, row) && (!read || apart <= NAMED_BEFORE);
}

/** `there’s a hole next to it`, `a crack running off of it` */
const BESIDE =
  /\b(another|second|beside|next to|(?<!get |getting |got |go |push |pushing )past|beyond|further|farther|ahead|(?:right|just) behind|around|off of|running off|other side|both|plus|also|too|as well|two)\b/;

function isBeside({ talk }: Ground, last: Heard, row: Heard): boolean {
  return BESIDE.test(toldWith(talk, last, row));
}

/** The words of its sentence around what was told behind the other. */
function toldWith(talk: Talk, last: Heard, { mark }: Heard): string {
  return talk.speech.words
    .slice(Math.max(last.mark.to, mark.from - 8), mark.to + 5)
    .filter(({ sentence }) => sentence === mark.sentence)
    .map(({ text }) => text)
    .join(" ");
}

function isShown(last: Heard, row: Heard): boolean {
  if (!has(SHOWS, row, last)) return false;
  if (row.kind === "deposit" && row.place.reading === "read")
    return row.place.clause === last.place.clause;
  return true;
}

/** What a branch itself has: `it’s just a hole`, `it’s got a lip`, `dripping out of it`. */
function isOfBranch({ talk }: Ground, last: Heard, row: Heard): boolean {
  if (last.kind !== "tie-in") return false;
  const told = toldWith(talk, last, row);
  if (row.fault === "hole")
    return /\b(it's|just)( (just|a|the|one|big|little|round|black|old))* hole\b/.test(told);
  if (!/^(infiltration|offset-joint)$/.test(row.fault ?? "") && row.kind !== "water") return false;
  return /\b(it|it's|its)\b/.test(told) && !/\b(joint|pipe's|the pipe|line)\b/.test(told);
}

const OPEN = /^(open-joint|offset-joint|crack|collapsed|broken)$/;

/** The ground that is to be seen, where nobody says hole: `open joint, you can see dirt`. */
function isGround({ talk }: Ground, { fault, mark }: Heard): boolean {
  return fault === "hole" && !/\b(holes?|void|opening)\b/.test(wordsOf(talk, mark.from, mark.to));
}

/** `no, it’s`, `or rather a`, `I take it back, that’s a`: what was said before was meant otherwise. */
const CHOICE =
  /\b(?:no|nope|nah|or|actually|rather|sorry|i mean|take (?:it|that) back|call (?:it|that))(?: (?:no|sorry|wait|it|is|it's|its|that|that's|thats|this|i|think|i'd|i'll|just|an?|some|only|really|actually|more|like|there's|here|call|calling|say|well|yeah|okay|pretty|sure|be|an?|the|rather|mean))*$/;

/** So many words on, it is something else that is put right. */
const AT_ONCE = 10;

function isChosen({ talk }: Ground, last: Heard, row: Heard): boolean {
  const [before, after] = lastTurn(talk, last, row);
  const between = wordsOf(talk, before.to, after.from);
  return after.from - before.to <= AT_ONCE && CHOICE.test(between);
}

/** `a tap, could be just a chip, so, a tap`: perhaps the one, but the other is what it was called before and behind. */
function isWithdrawn(last: Heard, row: Heard): boolean {
  const told = last.ats.some((at) => at > Math.max(...row.ats));
  return told && isPerhaps(row);
}

/** Where the talk went over from the one to the other for the last time. */
function lastTurn(talk: Talk, a: Heard, b: Heard): [Said, Said] {
  const ats = [...a.ats, ...b.ats].sort((one, other) => one - other);
  const own = (at: number) => a.ats.includes(at);
  const turn = ats.findLastIndex((at, nth) => nth > 0 && own(at) !== own(ats[nth - 1] ?? at));
  const mark = (nth: number, or: Said) => talk.said[ats[nth] ?? -1] ?? or;
  return [mark(turn - 1, a.mark), mark(turn, b.mark)];
}

function settled(ground: Ground, last: Heard, row: Heard): Heard {
  const [, final] = lastTurn(ground.talk, last, row);
  const winner = isChosen(ground, last, row)
    ? [last, row].find(({ ats }) => ats.includes(final.at))
    : [last, row].find((one) => isWorse(ground, one, one === row ? last : row));
  return withPlace(winner ?? last, winner === row ? last : row);
}

const PERHAPS = /\b(may|might|could|maybe|perhaps|possibly)\b/;

function isPerhaps({ hedges }: Heard): boolean {
  return hedges.some((hedge) => PERHAPS.test(hedge));
}

function isWorse(ground: Ground, row: Heard, other: Heard): boolean {
  if (has(MADE_OUT, other, row)) return true;
  if (!has(GIVES_WAY, other, row) || isPerhaps(row)) return false;
  return !(isGround(ground, row) && isCalledBroken(ground, other, row));
}

/** `broken pipe, piece gone, can see gravel`: whoever calls it broken means that. */
function isCalledBroken({ talk }: Ground, last: Heard, row: Heard): boolean {
  return (
    last.fault === "broken" &&
    !/\bholes?\b/i.test(quoteOf(talk, ...row.clauses)) &&
    /\b(broken|broke|busted|shattered)\b/.test(wordsOf(talk, last.mark.from, row.mark.to + 6))
  );
}

function withPlace(winner: Heard, other: Heard): Heard {
  const taken = winner.place.reading !== "read" && other.place.reading === "read";
  const { clauses: a } = winner;
  const { clauses: b } = other;
  return {
    ...winner,
    place: taken ? placeFor(winner, other.place) : winner.place,
    waterDepth: winner.waterDepth ?? other.waterDepth,
    clock: winner.clock ?? other.clock,
    ats: [...winner.ats, ...other.ats],
    hedges: [...new Set([...winner.hedges, ...other.hedges])],
    clauses: [Math.min(a[0], b[0]), Math.max(a[1], b[1])],
  };
}

function placeFor(winner: Heard, place: Heard["place"]): Heard["place"] {
  return isLong(winner) ? place : { ...place, toCounter: null };
}
