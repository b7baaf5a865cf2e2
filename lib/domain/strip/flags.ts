import { countOf } from "./crowds.ts";
import type { StripMark } from "./drawing.ts";
import { GAP, type Measures, wide } from "./measures.ts";

/**
 * A mark with its words, or several that stand too close to be named one by one: a pole from the
 * pipe to a lane, the words to the right of the pole.
 */
export interface Flag {
  /** The first of them, and all of them, from the main up. */
  readonly mark: StripMark;
  readonly marks: readonly StripMark[];
  /** Where the first meets the pipe. */
  readonly x: number;
  readonly poleX: number;
  /** Where the last pole stands. */
  readonly endX: number;
  /** 0 is nearest to the pipe. */
  readonly lane: number;
  /** How far its lane begins and ends from the first lane's near edge. */
  readonly near: number;
  readonly far: number;
  readonly width: number;
  readonly label: string;
  readonly detail: string;
  readonly loud: boolean;
}

export interface FlagRules {
  readonly x: (station: number) => number;
  readonly measures: Measures;
  readonly lanes: number;
  /** What several are called together: `tie-ins`. */
  readonly noun: string;
  /** How far the pole stands upstream of the mark. */
  readonly lean: number;
  /** Where the paper ends: what is told of a mark near it is cut down to what fits. */
  readonly edge?: number;
}

/** How much is said of a mark: all, a word or two, its name alone. */
type Telling = "full" | "brief" | "bare";

interface Item {
  readonly marks: readonly StripMark[];
  readonly telling: Telling;
}

interface Placed extends Flag {
  readonly item: Item;
  /** Which of the flags to its right it had to stand clear of. */
  readonly over: number | null;
}

/**
 * Flags on no more lanes than allowed, no words touching and no pole running through words. Where
 * that is too many, less is said of those that crowd; where even names are too many, the nearest
 * neighbors are counted together. Every mark is in exactly one flag.
 */
export function flagsOf(marks: readonly StripMark[], rules: FlagRules): Flag[] {
  const sorted = marks.toSorted((one, other) => one.station - other.station);
  let items = groupsOf(sorted, rules).map(
    (group): Item =>
      group.length === 1
        ? onPaper({ marks: group, telling: "full" }, rules)
        : { marks: group, telling: "bare" },
  );
  const drawn = new Map<Item, Placed>();
  const draw = (item: Item) => {
    const flag = drawn.get(item) ?? flagOf(item, rules);
    drawn.set(item, flag);
    return flag;
  };
  for (;;) {
    const placed = inLanes(items.map(draw));
    const crowded = placed.findLastIndex((flag) => flag.lane >= rules.lanes);
    if (crowded < 0) return withDepths(placed, rules.measures);
    items = eased(items, placed, crowded);
  }
}

/** So many marks can be eased one by one; of more, those that all but touch are counted together first. */
const MANY = 80;
/** Poles nearer to each other than this have no room for a word between them. */
const TOUCHING = 12;

/** Each mark by itself; of very many, those whose poles all but touch as one. */
function groupsOf(sorted: readonly StripMark[], { x }: FlagRules): StripMark[][] {
  if (sorted.length <= MANY) return sorted.map((mark) => [mark]);
  const groups: StripMark[][] = [];
  let begins = Number.NEGATIVE_INFINITY;
  for (const mark of sorted) {
    const at = x(mark.station);
    if (at - begins < TOUCHING) groups.at(-1)?.push(mark);
    else {
      groups.push([mark]);
      begins = at;
    }
  }
  return groups;
}

/** A mark told as fully as the paper has room for to its right. */
function onPaper(item: Item, rules: FlagRules): Item {
  const { edge = Number.POSITIVE_INFINITY } = rules;
  const fits = (telling: Telling) => {
    const { poleX, width } = flagOf({ ...item, telling }, rules);
    return poleX + width <= edge;
  };
  const telling = (["full", "brief"] as const).find(fits) ?? "bare";
  return { ...item, telling };
}

/** One step less crowded, among the flags that force this one onto a lane too many. */
function eased(items: readonly Item[], placed: readonly Placed[], crowded: number): Item[] {
  let last = crowded;
  for (let at = placed[crowded]?.over ?? null; at !== null; at = placed[at]?.over ?? null)
    last = at;
  const crowd = (at: number) => at >= crowded && at <= last;
  const tell = (from: (item: Item) => boolean, telling: Telling) =>
    items.map((item, at) => (crowd(at) && from(item) ? { ...item, telling } : item));
  const some = (test: (item: Item) => boolean) => items.some((item, at) => crowd(at) && test(item));
  const isFull = (item: Item) => item.telling === "full";
  const isQuiet = (item: Item) => item.telling === "brief" && !item.marks.some((one) => one.loud);
  const isBrief = (item: Item) => item.telling === "brief";
  if (some(isFull)) return tell(isFull, "brief");
  if (some(isQuiet)) return tell(isQuiet, "bare");
  if (some(isBrief)) return tell(isBrief, "bare");
  return joined(items, nearest(placed, crowded, last));
}

/** The left one of the two neighbors that make the shortest group, the crowd's left neighbor among them. */
function nearest(placed: readonly Placed[], first: number, last: number): number {
  let best = first;
  let least = Number.POSITIVE_INFINITY;
  for (let at = Math.max(first - 1, 0); at < last; at += 1) {
    const one = placed[at];
    const next = placed[at + 1];
    if (one === undefined || next === undefined) continue;
    const span = next.endX - one.poleX + (one.loud === next.loud ? 0 : 24);
    if (span < least) {
      least = span;
      best = at;
    }
  }
  return best;
}

function joined(items: readonly Item[], at: number): Item[] {
  const one = items[at];
  const next = items[at + 1];
  if (one === undefined || next === undefined) return [...items];
  const both: Item = { marks: [...one.marks, ...next.marks], telling: "bare" };
  return [...items.slice(0, at), both, ...items.slice(at + 2)];
}

/**
 * Lanes from right to left: words reach to the right of their pole, so each flag stands one lane
 * farther out than every flag whose pole they would reach. Then no pole runs through any words.
 */
function inLanes(drawn: readonly Placed[]): Placed[] {
  const flags = [...drawn];
  for (let at = flags.length - 1; at >= 0; at -= 1) {
    const flag = flags[at];
    if (flag === undefined) continue;
    const reach = Math.max(flag.poleX + flag.width, flag.endX) + GAP;
    let lane = 0;
    let over: number | null = null;
    for (let next = at + 1; next < flags.length; next += 1) {
      const other = flags[next];
      if (other === undefined || other.poleX > reach) break;
      if (other.lane < lane) continue;
      lane = other.lane + 1;
      over = next;
    }
    flags[at] = { ...flag, lane, over };
  }
  return flags;
}

function flagOf(item: Item, { x, measures, noun, lean }: FlagRules): Placed {
  const { marks, telling } = item;
  const [mark] = marks as readonly [StripMark, ...StripMark[]];
  const end = marks.at(-1) ?? mark;
  const one = marks.length === 1;
  const own = telling === "bare" ? shortened(mark.label) : mark.label;
  const many = marks.reduce((sum, each) => sum + countOf(each), 0);
  const label = one ? own : `${many} ${noun}`;
  const said = { full: mark.detail, brief: mark.brief ?? mark.detail, bare: "" }[telling];
  const small = measures.detail === 0;
  const inline = small && mark.loud && telling === "full" && (mark.brief ?? "") !== "";
  const loud = marks.some((each) => each.loud);
  const text = inline ? `${label} ${mark.brief}` : label;
  const detail = one && !small ? said : "";
  const name = wide(text, measures.label, true) + (loud ? measures.label : 0);
  return {
    item,
    mark,
    marks,
    x: x(mark.station),
    poleX: x(mark.station) + lean,
    endX: x(end.station) + lean,
    lane: 0,
    over: null,
    near: 0,
    far: 0,
    width: Math.max(name, detail === "" ? 0 : wide(detail, measures.detail)) + GAP,
    label: text,
    detail,
    loud,
  };
}

const LONGEST = 14;

/** A long name up to its first comma, or its beginning. */
function shortened(label: string): string {
  if (label.length <= LONGEST) return label;
  const [first = ""] = label.split(",");
  return first.length < LONGEST ? `${first}…` : `${label.slice(0, LONGEST - 1)}…`;
}

/** A lane is as deep as its deepest flag: one line of words, or two. */
function withDepths(flags: readonly Placed[], measures: Measures): Flag[] {
  const lanes = 1 + Math.max(-1, ...flags.map((flag) => flag.lane));
  const edges = [0];
  for (let lane = 0; lane < lanes; lane += 1) {
    const two = flags.some((flag) => flag.lane === lane && flag.detail !== "");
    const depth = measures.label + 5 + (two ? measures.detail + 4 : 0);
    edges.push((edges[lane] ?? 0) + depth);
  }
  return flags.map(({ item: _item, over: _over, ...flag }) => ({
    ...flag,
    near: edges[flag.lane] ?? 0,
    far: edges[flag.lane + 1] ?? 0,
  }));
}

/** How deep all lanes are together. */
export function depthOf(flags: readonly Flag[]): number {
  return Math.max(0, ...flags.map((flag) => flag.far));
}
