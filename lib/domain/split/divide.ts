import { err, ok, type Result } from "../../result.ts";
import type { SplitChoice, SplitRule } from "../facts/split.ts";
import type { SumStep } from "../findings/outcome.ts";
import type { Cents } from "../money/cents.ts";
import { formatCents } from "../money/format-cents.ts";
import { soleAllotment } from "../sharing/allotment.ts";
import type { Ground } from "../sharing/ground.ts";
import { type PlacedItem, placementOf } from "../sharing/placing.ts";
import {
  type GeneralPen,
  type GeneralTerms,
  type PlacedBase,
  tallyGeneral,
} from "./general-work.ts";
import type { Plan } from "./plan.ts";
import { planOf } from "./rules.ts";
import { addTallies, type Tally, tallyPlaced, tallyWhole, writeSteps } from "./tally.ts";

/** What everyone pays, exactly. */
export interface Division {
  readonly tally: Tally;
  /** Of it, placed work divided under a rule (without items that have one payer). */
  readonly ruled: Tally;
}

interface Work {
  readonly ground: Ground;
  readonly choice: SplitChoice;
  readonly plans: Map<SplitRule, Plan>;
  readonly pen: GeneralPen | null;
}

/**
 * Divides every item: by its own payer, else its own rule, else the chosen one; placed work first,
 * then the general work, which may follow it. Writes the sums down where it is given a pen. Refuses in words
 * that say what to enter.
 */
export function divide(
  ground: Ground,
  choice: SplitChoice,
  pen: GeneralPen | null = null,
): Result<Division, string> {
  const items = ground.items.map((priced) => ({
    ...priced,
    placement: placementOf(priced.item, ground),
  }));
  const work: Work = { ground, choice, plans: new Map(), pen };
  const main = planFor(choice.rule, work);
  if (!main.ok) return main;
  const placed = items.filter(({ placement }) => placement.kind !== "general");
  const paid = payOwn(placed.filter(hasPayer), work);
  if (!paid.ok) return paid;
  const ruled = tallyByRule(
    placed.filter((each) => !hasPayer(each)),
    work,
  );
  if (!ruled.ok) return ruled;
  const ofPlaced = addTallies([paid.value, ruled.value], ground.people.length);
  const general = tallyAllGeneral(
    items.filter(({ placement }) => placement.kind === "general"),
    { ...work, ...followedBy(placed, { work, paid: paid.value, ruled: ruled.value }) },
  );
  if (!general.ok) return general;
  const tally = addTallies([ofPlaced, general.value], ground.people.length);
  return ok({ tally, ruled: ruled.value });
}

/**
 * The placed work that general work follows: all of it, but for what somebody who leaves the shared
 * pipe pays alone. A new line of one's own draws no part of the common permit after it.
 */
function followedBy(
  placed: readonly PlacedItem[],
  { work, paid, ruled }: { readonly work: Work; readonly paid: Tally; readonly ruled: Tally },
): Pick<GeneralWork, "placed" | "ofPlaced"> {
  const count = work.ground.people.length;
  const gone = new Set(work.ground.leavers.map(({ key }) => key));
  if (gone.size === 0) return { placed, ofPlaced: addTallies([paid, ruled], count) };
  const staying = placed.filter(({ item }) => !gone.has(item.payerId ?? ""));
  const theirs = payOwn(staying.filter(hasPayer), { ...work, pen: null });
  return {
    placed: staying,
    ofPlaced: addTallies(theirs.ok ? [theirs.value, ruled] : [ruled], count),
  };
}

function hasPayer({ item }: PlacedItem): boolean {
  return item.payerId !== null;
}

function planFor(rule: SplitRule, work: Work): Result<Plan, string> {
  const known = work.plans.get(rule);
  if (known !== undefined) return ok(known);
  const plan = planOf(work.ground, { ...work.choice, rule });
  if (plan.ok) work.plans.set(rule, plan.value);
  return plan;
}

/** A rule of an item's own that can't be worked out names the item. */
function ownPlan({ item }: PlacedItem, rule: SplitRule, work: Work): Result<Plan, string> {
  const plan = planFor(rule, work);
  if (plan.ok || item.rule === null) return plan;
  return err(`“${item.title}” has its own rule. ${plan.error}`);
}

/** Items that one property pays alone. */
function payOwn(items: readonly PlacedItem[], work: Work): Result<Tally, string> {
  const count = work.ground.people.length;
  const tallies: Tally[] = [];
  for (const { item, amount } of items) {
    const index = work.ground.indexOf.get(item.payerId ?? "");
    if (index === undefined) {
      return err(`“${item.title}” names a payer that is not on this line. Select another.`);
    }
    const allotment = soleAllotment(index, "the only payer of this item");
    const n = BigInt(amount);
    writeSteps(work.pen, allotment, { itemId: item.id, cost: formatCents(amount), n, d: 1n });
    tallies.push(tallyWhole(amount, allotment, count));
  }
  return ok(addTallies(tallies, count));
}

function tallyByRule(items: readonly PlacedItem[], work: Work): Result<Tally, string> {
  const byRule = new Map<SplitRule, PlacedItem[]>();
  for (const placed of items) {
    const rule = placed.item.rule ?? work.choice.rule;
    const same = byRule.get(rule);
    if (same === undefined) byRule.set(rule, [placed]);
    else same.push(placed);
  }
  const tallies: Tally[] = [];
  for (const [rule, same] of byRule) {
    const [first] = same;
    if (first === undefined) continue;
    const plan = ownPlan(first, rule, work);
    if (!plan.ok) return plan;
    const tally = tallyPlaced(same, plan.value, work);
    if (!tally.ok) return tally;
    tallies.push(tally.value);
  }
  return ok(addTallies(tallies, work.ground.people.length));
}

interface GeneralWork extends Work {
  readonly placed: readonly PlacedItem[];
  readonly ofPlaced: Tally;
}

/** What general work follows: all placed work, or the trunk's as a rule would divide it. */
type Bases = Map<SplitRule | "all", PlacedBase>;

function tallyAllGeneral(items: readonly PlacedItem[], work: GeneralWork): Result<Tally, string> {
  const count = work.ground.people.length;
  const paid = payOwn(items.filter(hasPayer), work);
  if (!paid.ok) return paid;
  const tallies = [paid.value];
  const bases: Bases = new Map();
  for (const placed of items.filter((each) => !hasPayer(each))) {
    const terms = generalTerms(placed, bases, work);
    if (!terms.ok) return terms;
    const tally = tallyGeneral(placed, terms.value, work);
    if (!tally.ok) return tally;
    tallies.push(tally.value);
  }
  return ok(addTallies(tallies, count));
}

/**
 * Without a rule of its own, an item is spread as it says. With one, it goes by that rule: where
 * the rule needs places, as if it lay where the placed work on the trunk lies.
 */
function generalTerms(
  placed: PlacedItem,
  bases: Bases,
  work: GeneralWork,
): Result<GeneralTerms, string> {
  const { item } = placed;
  const plan = ownPlan(placed, item.rule ?? work.choice.rule, work);
  if (!plan.ok) return plan;
  if (item.rule === null) {
    const equally = item.spread === "equally";
    return ok({ plan: plan.value, follows: true, equally, base: baseOfAll(bases, work) });
  }
  const base =
    plan.value.kind === "free" ? ok(baseOfAll(bases, work)) : baseUnder(item.rule, bases, work);
  if (!base.ok) return base;
  return ok({ plan: plan.value, follows: false, equally: false, base: base.value });
}

function baseOfAll(bases: Bases, work: GeneralWork): PlacedBase {
  const base = bases.get("all") ?? { tally: work.ofPlaced, total: sumOf(work.placed) };
  bases.set("all", base);
  return base;
}

function sumOf(items: readonly PlacedItem[]): Cents {
  return items.reduce((sum, { amount }) => sum + amount, 0);
}

function baseUnder(rule: SplitRule, bases: Bases, work: GeneralWork): Result<PlacedBase, string> {
  const known = bases.get(rule);
  if (known !== undefined) return ok(known);
  const plan = planFor(rule, work);
  if (!plan.ok) return plan;
  const onTrunk = work.placed.filter(({ placement }) => placement.kind === "trunk");
  const tally = tallyPlaced(onTrunk, plan.value, { ground: work.ground, pen: null });
  if (!tally.ok) return tally;
  const base = { tally: tally.value, total: sumOf(onTrunk) };
  bases.set(rule, base);
  return ok(base);
}

/** The sums behind a division, by the person's index, as a person would write them down. */
export function writtenSums(ground: Ground, choice: SplitChoice): readonly (readonly SumStep[])[] {
  const pen: GeneralPen = { steps: ground.people.map(() => []), parts: new Map() };
  divide(ground, choice, pen);
  return pen.steps;
}
