import { err, ok, type Result } from "../../result.ts";
import type { Cents } from "../money/cents.ts";
import { formatCents } from "../money/format-cents.ts";
import { formatRatio, multiplyRatios, type Ratio, ratio } from "../money/ratio.ts";
import { equalAllotment } from "../sharing/allotment.ts";
import type { Ground, PricedItem } from "../sharing/ground.ts";
import { sayPart } from "./exact.ts";
import type { Plan } from "./plan.ts";
import { nobodyKnown } from "./rules-anywhere.ts";
import { type Pen, type Tally, tallyWhole, writeSteps } from "./tally.ts";

/** Placed work that general work can follow: what each pays of it, and all of it. */
export interface PlacedBase {
  readonly tally: Tally;
  readonly total: Cents;
}

/** Writes down sums of general work: keeps each person's part of the placed work it follows. */
export interface GeneralPen extends Pen {
  readonly parts: Map<PlacedBase, readonly Ratio[]>;
}

/** How a general item is to be divided. */
export interface GeneralTerms {
  readonly plan: Plan;
  /** Follow the placed work even if the plan itself does not care for places. */
  readonly follows: boolean;
  readonly equally: boolean;
  readonly base: PlacedBase;
}

/**
 * Divides work that lies nowhere in particular (permit, traffic control, diagnosis): equally, or in
 * proportion to what each pays of the placed work. Where nothing is placed it goes by the rule
 * itself, and where the rule needs places it is refused.
 */
export function tallyGeneral(
  { item, amount }: PricedItem,
  terms: GeneralTerms,
  { ground, pen }: { readonly ground: Ground; readonly pen: GeneralPen | null },
): Result<Tally, string> {
  const allotment = allotmentOf(terms, ground);
  if (allotment !== null) {
    const n = BigInt(amount);
    writeSteps(pen, allotment, { itemId: item.id, cost: formatCents(amount), n, d: 1n });
    return ok(tallyWhole(amount, allotment, ground.people.length));
  }
  const nobody = terms.equally ? nobodyKnown(ground) : null;
  if (nobody !== null) return err(nobody);
  if (terms.base.total <= 0) {
    return err(
      `“${item.title}” is prorated over located work, and nothing has a location yet. Give the work a location, or allocate this item equally.`,
    );
  }
  return ok(followPlaced({ item, amount }, terms.base, pen));
}

function allotmentOf({ plan, follows, equally, base }: GeneralTerms, ground: Ground) {
  if (plan.kind === "free" && plan.takesAll) return plan.allotment;
  if (equally) return ground.connected.length > 0 ? equalAllotment(ground.connected) : null;
  if (plan.kind === "located") return null;
  return follows && base.total > 0 ? null : plan.allotment;
}

function followPlaced(
  { item, amount }: PricedItem,
  base: PlacedBase,
  pen: GeneralPen | null,
): Tally {
  if (pen !== null) {
    for (const [index, part] of partsOf(base, pen).entries()) {
      if (part.n === 0n) continue;
      pen.steps[index]?.push({
        itemId: item.id,
        words: `${formatCents(amount)} × ${sayPart(part)}, its share of the located work`,
        exact: formatRatio(multiplyRatios(part, { n: BigInt(amount), d: 1n })),
        piece: {
          from: null,
          to: null,
          cost: `${amount}/1`,
          part: formatRatio(part),
          sharers: null,
        },
      });
    }
  }
  const { numerators, denominator } = base.tally;
  return {
    numerators: numerators.map((numerator) => numerator * BigInt(amount)),
    denominator: denominator * BigInt(base.total),
  };
}

/** Each person's part of the placed work, reckoned once for every item that follows it. */
function partsOf(base: PlacedBase, pen: GeneralPen): readonly Ratio[] {
  const whole = base.tally.denominator * BigInt(base.total);
  const parts =
    pen.parts.get(base) ?? base.tally.numerators.map((numerator) => ratio(numerator, whole));
  pen.parts.set(base, parts);
  return parts;
}
