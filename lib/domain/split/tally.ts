import { err, ok, type Result } from "../../result.ts";
import type { SumStep } from "../findings/outcome.ts";
import type { Cents } from "../money/cents.ts";
import { formatCents } from "../money/format-cents.ts";
import {
  addRatios,
  formatRatio,
  lcm,
  multiplyRatios,
  type Ratio,
  ratio,
  ZERO,
} from "../money/ratio.ts";
import type { Allotment } from "../sharing/allotment.ts";
import type { Ground } from "../sharing/ground.ts";
import {
  type PlacedItem,
  piecesOf,
  sayPieceCost,
  sayPlace,
  withinTrunk,
} from "../sharing/placing.ts";
import type { LocatedPlan, Plan } from "./plan.ts";

/** What each person pays, exactly: numerators over one denominator, by the person's index. */
export interface Tally {
  readonly numerators: readonly bigint[];
  readonly denominator: bigint;
}

/** What the sums are written down with; without one, only the amounts are worked out. */
export interface Pen {
  /** The steps by the person's index. Steps that read alike are one object. */
  readonly steps: SumStep[][];
}

/** One piece of cost as it is written down. */
interface WrittenPiece {
  readonly itemId: string;
  /** The cost in words. */
  readonly cost: string;
  /** The cost in cents, `n / d`. */
  readonly n: bigint;
  readonly d: bigint;
  /** Where it lies, if its place makes a difference. */
  readonly at?: Span;
}

/** Beyond this many pieces, a step gives the item's sum in one. */
const PIECES_WRITTEN_OUT = 12;

interface Span {
  readonly from: number;
  readonly to: number;
}

/** Costs by allotment, and under each by the denominator of the piece's cost. */
type Costs = Map<Allotment, Map<number, bigint>>;

/** Divides placed items under one plan, and writes down how. */
export function tallyPlaced(
  items: readonly PlacedItem[],
  plan: Plan,
  { ground, pen }: { readonly ground: Ground; readonly pen: Pen | null },
): Result<Tally, string> {
  const costs: Costs = new Map();
  const branches = new Map<string, Allotment | null>();
  for (const placed of items) {
    const refusal =
      placed.placement.kind === "branch"
        ? addBranch(placed, plan, { costs, branches, pen })
        : addTrunk(placed, plan, { ground, costs, pen });
    if (refusal !== null) return err(refusal);
  }
  return ok(sumUp(costs, ground.people.length));
}

/** All of an amount under one allotment. */
export function tallyWhole(amount: Cents, allotment: Allotment, count: number): Tally {
  return sumUp(new Map([[allotment, new Map([[1, BigInt(amount)]])]]), count);
}

/** Several tallies as one. */
export function addTallies(tallies: readonly Tally[], count: number): Tally {
  const denominator = tallies.reduce((all, tally) => lcm(all, tally.denominator), 1n);
  const numerators = Array.from({ length: count }, () => 0n);
  for (const tally of tallies) {
    const scale = denominator / tally.denominator;
    for (const [index, numerator] of tally.numerators.entries()) {
      if (numerator !== 0n) numerators[index] = (numerators[index] ?? 0n) + numerator * scale;
    }
  }
  return { numerators, denominator };
}

function addBranch(
  placed: PlacedItem,
  plan: Plan,
  into: {
    readonly costs: Costs;
    readonly branches: Map<string, Allotment | null>;
    readonly pen: Pen | null;
  },
): string | null {
  const { item, amount, placement } = placed;
  if (placement.kind !== "branch") return null;
  const known = into.branches.get(placement.tieInId);
  const allotment = known === undefined ? plan.behind(placement.behind) : known;
  into.branches.set(placement.tieInId, allotment);
  if (allotment === null) {
    return `“${item.title}” is on the branch at ${placement.label}, which serves no one who shares. Give it its own payer.`;
  }
  addCost(into.costs, allotment, { amount: BigInt(amount), denominator: 1 });
  const cost = `branch at ${placement.label}: ${formatCents(amount)}`;
  writeSteps(into.pen, allotment, { itemId: item.id, cost, n: BigInt(amount), d: 1n });
  return null;
}

function addTrunk(
  placed: PlacedItem,
  plan: Plan,
  into: { readonly ground: Ground; readonly costs: Costs; readonly pen: Pen | null },
): string | null {
  const { item, amount, placement } = placed;
  if (plan.kind === "located") {
    if (placement.kind === "nowhere") return placement.remedy;
    return placement.kind === "trunk" ? addPieces(placed, placement, { ...into, plan }) : null;
  }
  if (placement.kind === "nowhere" && item.place === "branch" && !plan.takesAll) {
    return placement.remedy;
  }
  addCost(into.costs, plan.allotment, { amount: BigInt(amount), denominator: 1 });
  const place = placement.kind === "trunk" ? `${sayPlace(placement.from, placement.to)}: ` : "";
  const cost = `${place}${formatCents(amount)}`;
  const at = placement.kind === "trunk" ? { at: placement } : {};
  writeSteps(into.pen, plan.allotment, { itemId: item.id, cost, n: BigInt(amount), d: 1n, ...at });
  return null;
}

function addPieces(
  placed: PlacedItem,
  span: Span,
  into: {
    readonly ground: Ground;
    readonly plan: LocatedPlan;
    readonly costs: Costs;
    readonly pen: Pen | null;
  },
): string | null {
  const { item, amount } = placed;
  const within = withinTrunk(item, span, into.ground.file.line.upperEnd);
  if (!within.ok) return within.error;
  const length = span.to - span.from;
  const pieces = piecesOf(span, into.plan.cuts);
  const inFull = pieces.length <= PIECES_WRITTEN_OUT;
  const perPart = ratio(BigInt(amount), BigInt(Math.max(length, 1)));
  const parts: { readonly piece: Span; readonly allotment: Allotment }[] = [];
  for (const piece of pieces) {
    const allotment = into.plan.at(piece.from, piece.to);
    if (allotment === null) {
      const place = sayPlace(piece.from, piece.to);
      return `“${item.title}” lies ${piece.from === piece.to ? place : `on ${place}`}, but ${into.plan.nobody}. ${into.plan.remedy}`;
    }
    const part = length === 0 ? 1 : piece.to - piece.from;
    const cost = { amount: perPart.n * BigInt(part), denominator: Number(perPart.d) };
    addCost(into.costs, allotment, cost);
    if (inFull) {
      writeSteps(into.pen, allotment, {
        itemId: item.id,
        cost: sayPieceCost(amount, span, piece),
        n: cost.amount,
        d: perPart.d,
        at: piece,
      });
    }
    parts.push({ piece, allotment });
  }
  if (!inFull && into.pen !== null) writeSums(placed, span, { ...into, pen: into.pen, parts });
  return null;
}

/** One step a person, for an item that runs over very many pieces. */
function writeSums(
  placed: PlacedItem,
  span: Span,
  into: {
    readonly plan: LocatedPlan;
    readonly pen: Pen;
    readonly parts: readonly { readonly piece: Span; readonly allotment: Allotment }[];
  },
): void {
  const { item, amount } = placed;
  const length = BigInt(span.to - span.from);
  const perPart = ratio(BigInt(amount), length);
  const start = `${sayPlace(span.from, span.to)}, ${formatCents(amount)} in ${into.parts.length} pieces, each among its own payers`;
  const seen = new Map<string, SumStep>();
  const write = (index: number, portion: Ratio) => {
    const key = `${portion.n}/${portion.d}`;
    const step = seen.get(key) ?? {
      itemId: item.id,
      words: `${start}: ${sayFeet(portion)} of ${sayFeet({ n: length, d: 1n })}`,
      exact: formatRatio(multiplyRatios(perPart, portion)),
      piece: {
        from: span.from,
        to: span.to,
        cost: `${amount}/1`,
        part: formatRatio(multiplyRatios(portion, { n: 1n, d: length })),
        sharers: null,
      },
    };
    seen.set(key, step);
    into.pen.steps[index]?.push(step);
  };
  const { portion } = into.plan;
  if (portion === null) {
    for (const [index, part] of portionsByPiece(into.parts)) write(index, part);
    return;
  }
  for (const { index } of into.parts[0]?.allotment.members ?? []) {
    const part = portion(index, span.from, span.to);
    if (part !== null) write(index, part);
  }
}

function sayFeet({ n, d }: Ratio): string {
  return `${(Number((n * 100n) / d) / 10_000).toFixed(2)} ft`;
}

function portionsByPiece(
  parts: readonly { readonly piece: Span; readonly allotment: Allotment }[],
): ReadonlyMap<number, Ratio> {
  const sums = new Map<number, Ratio>();
  for (const { piece, allotment } of parts) {
    for (const { index, weight } of allotment.members) {
      const length = BigInt(piece.to - piece.from) * weight;
      sums.set(index, addRatios(sums.get(index) ?? ZERO, { n: length, d: allotment.sum }));
    }
  }
  return sums;
}

function addCost(
  costs: Costs,
  allotment: Allotment,
  cost: { readonly amount: bigint; readonly denominator: number },
): void {
  const known = costs.get(allotment) ?? new Map<number, bigint>();
  known.set(cost.denominator, (known.get(cost.denominator) ?? 0n) + cost.amount);
  costs.set(allotment, known);
}

/** Writes the step of one piece of cost for each who pays part of it. */
export function writeSteps(pen: Pen | null, allotment: Allotment, piece: WrittenPiece): void {
  if (pen === null) return;
  const cost = formatRatio(ratio(piece.n, piece.d));
  const { from = null, to = null } = piece.at ?? {};
  const byWeight = new Map<bigint, SumStep>();
  for (const { index, weight } of allotment.members) {
    const step = byWeight.get(weight) ?? {
      itemId: piece.itemId,
      words: allotment.words(piece.cost, weight),
      exact: formatRatio(ratio(piece.n * weight, piece.d * allotment.sum)),
      piece: {
        from,
        to,
        cost,
        part: formatRatio(ratio(weight, allotment.sum)),
        sharers: allotment.alike ? Number(allotment.sum) : null,
      },
    };
    byWeight.set(weight, step);
    pen.steps[index]?.push(step);
  }
}

function sumUp(costs: Costs, count: number): Tally {
  const ofPieces = [...costs.values()]
    .flatMap((byDenominator) => [...byDenominator.keys()])
    .reduce((all, denominator) => lcm(all, BigInt(denominator)), 1n);
  const ofSums = [...costs.keys()].reduce((all, { sum }) => lcm(all, sum), 1n);
  const numerators = Array.from({ length: count }, () => 0n);
  const steps = Array.from({ length: count + 1 }, () => 0n);
  for (const [allotment, byDenominator] of costs) {
    let cost = 0n;
    for (const [denominator, amount] of byDenominator) {
      cost += amount * (ofPieces / BigInt(denominator));
    }
    const scaled = cost * (ofSums / allotment.sum);
    if (allotment.range !== null) {
      addStep(steps, allotment.range, scaled);
      continue;
    }
    for (const { index, weight } of allotment.members) {
      numerators[index] = (numerators[index] ?? 0n) + scaled * weight;
    }
  }
  addRunning(numerators, steps);
  return { numerators, denominator: ofPieces * ofSums };
}

/** Notes that everybody from one place to before another pays so much more: up at the one, down at the other. */
function addStep(
  steps: bigint[],
  { from, to }: NonNullable<Allotment["range"]>,
  size: bigint,
): void {
  steps[from] = (steps[from] ?? 0n) + size;
  steps[to] = (steps[to] ?? 0n) - size;
}

/** Adds what the steps up to each place come to. */
function addRunning(numerators: bigint[], steps: readonly bigint[]): void {
  let running = 0n;
  for (const [index, numerator] of numerators.entries()) {
    running += steps[index] ?? 0n;
    if (running !== 0n) numerators[index] = numerator + running;
  }
}
