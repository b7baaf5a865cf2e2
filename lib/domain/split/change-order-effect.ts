import type { ChangeOrder } from "../facts/change-order.ts";
import type { LineFile } from "../facts/line-file.ts";
import type { ScopeItem } from "../facts/scope.ts";
import type { SplitChoice } from "../facts/split.ts";
import type { SplitOutcome } from "../findings/outcome.ts";
import type { Report } from "../findings/report.ts";
import type { Cents } from "../money/cents.ts";
import { formatCents } from "../money/format-cents.ts";
import { scopeInForce, scopeTotal } from "../sharing/scope-in-force.ts";
import { payerKey } from "./compare.ts";
import { outcomeAsIf } from "./option-outcomes.ts";

/** One payer's amount before and after a change order. */
interface OrderShare {
  readonly key: string;
  readonly label: string;
  readonly before: Cents;
  readonly after: Cents;
}

/** What a change order does to the work and to everybody's amount. */
export interface ChangeOrderEffect {
  readonly order: ChangeOrder;
  readonly added: readonly ScopeItem[];
  readonly dropped: readonly ScopeItem[];
  readonly before: Cents;
  readonly after: Cents;
  /** Everybody who pays before or after, to the cent; empty where the rule can't be worked out. */
  readonly shares: readonly OrderShare[];
  readonly sentence: string;
}

/**
 * What each change order does, by number: before it stand the agreed orders of lower number, after
 * it those and this one. So a proposed order shows what agreeing it would do, and a refused one
 * what it would have done.
 */
export function changeOrderEffects(
  file: LineFile,
  report: Pick<Report, "tieIns" | "extent">,
  choice: SplitChoice,
): ChangeOrderEffect[] {
  return ordersByNumber(file).map((order) => {
    const before = withOrders(file, (each) => each.number < order.number && isAgreed(each));
    const after = withOrders(
      file,
      (each) => each.id === order.id || (each.number < order.number && isAgreed(each)),
    );
    const [was, is] = [before, after].map((each) => outcomeAsIf(each, report, choice));
    const shares = was === undefined || is === undefined ? [] : sharesOf(was, is);
    const totals = { before: scopeTotal(before), after: scopeTotal(after) };
    return {
      order,
      added: missingIn(scopeInForce(before), scopeInForce(after)),
      dropped: missingIn(scopeInForce(after), scopeInForce(before)),
      ...totals,
      shares,
      sentence: sentenceFor(totals, { shares, refusal: is?.refusal ?? null }),
    };
  });
}

/** What the work came to before the first change order. */
export function firstPriced(file: LineFile): Cents {
  return scopeTotal(withOrders(file, () => false));
}

/** Change orders from the lowest number up. */
export function ordersByNumber(file: Pick<LineFile, "changeOrders">): ChangeOrder[] {
  return file.changeOrders.toSorted((one, other) => one.number - other.number);
}

/** The number that the next change order gets. */
export function nextOrderNumber(file: Pick<LineFile, "changeOrders">): number {
  return Math.max(0, ...file.changeOrders.map(({ number }) => number)) + 1;
}

function isAgreed({ state }: ChangeOrder): boolean {
  return state === "agreed";
}

/** The file as it would be if these orders, and no others, were agreed. */
function withOrders(file: LineFile, counts: (order: ChangeOrder) => boolean): LineFile {
  const changeOrders = file.changeOrders.map((order) => ({
    ...order,
    state: counts(order) ? ("agreed" as const) : ("proposed" as const),
  }));
  return { ...file, changeOrders };
}

function missingIn(some: readonly ScopeItem[], others: readonly ScopeItem[]): ScopeItem[] {
  const ids = new Set(some.map(({ id }) => id));
  return others.filter(({ id }) => !ids.has(id));
}

function sharesOf(was: SplitOutcome, is: SplitOutcome): OrderShare[] {
  if (was.refusal !== null || is.refusal !== null) return [];
  const amounts = (outcome: SplitOutcome) =>
    new Map(outcome.shares.map((share) => [payerKey(share), share.amount]));
  const [before, after] = [amounts(was), amounts(is)];
  const labels = new Map([...was.shares, ...is.shares].map((each) => [payerKey(each), each.label]));
  return [...labels].map(([key, label]) => ({
    key,
    label,
    before: before.get(key) ?? 0,
    after: after.get(key) ?? 0,
  }));
}

function sentenceFor(
  { before, after }: { readonly before: Cents; readonly after: Cents },
  { shares, refusal }: { readonly shares: readonly OrderShare[]; readonly refusal: string | null },
): string {
  const difference = formatCents(Math.abs(after - before));
  const total =
    after === before
      ? `The total stays at ${formatCents(after)}`
      : `${difference} ${after > before ? "more" : "less"}: ${formatCents(before)} before, ${formatCents(after)} after`;
  if (refusal !== null) return `${total}. Who pays can’t be calculated yet. ${refusal}`;
  const moved = shares.filter((share) => share.before !== share.after).length;
  if (moved === 0) return `${total}. No one’s amount changes.`;
  return `${total}. ${moved === 1 ? "One amount changes" : `${moved} amounts change`}.`;
}
