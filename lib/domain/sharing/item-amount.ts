import type { ScopeItem } from "../facts/scope.ts";
import { plainFeet } from "../length/station.ts";
import { toCents } from "../money/apportion.ts";
import type { Cents } from "../money/cents.ts";
import { formatCents } from "../money/format-cents.ts";
import { roundDiv } from "../money/ratio.ts";

type Priced = Pick<ScopeItem, "quantity" | "unit" | "rate" | "markup" | "tax">;

/**
 * What an item costs: quantity × rate, then the markup, then the tax on the marked-up amount.
 * Exact all the way and rounded once, at the end, to the nearest cent (half a cent away from zero).
 */
export function itemAmount(item: Priced): Cents {
  const exact =
    BigInt(item.quantity) *
    BigInt(item.rate) *
    BigInt(10_000 + item.markup) *
    BigInt(10_000 + item.tax);
  return toCents(roundDiv(exact, 100n * 10_000n * 10_000n));
}

/** `12.5 ft × $100.00 + 10% markup + 8.25% tax = $1,488.44, rounded once to the cent`. */
export function itemAmountWords(item: Priced): string {
  const start = `${plainQuantity(item.quantity)} ${item.unit} × ${formatCents(item.rate)}`;
  const markup = item.markup === 0 ? "" : ` + ${percent(item.markup)} markup`;
  const tax = item.tax === 0 ? "" : ` + ${percent(item.tax)} tax`;
  return `${start}${markup}${tax} = ${formatCents(itemAmount(item))}${roundedNote(item)}`;
}

function roundedNote(item: Priced): string {
  const before =
    BigInt(item.quantity) *
    BigInt(item.rate) *
    BigInt(10_000 + item.markup) *
    BigInt(10_000 + item.tax);
  return before % (100n * 10_000n * 10_000n) === 0n ? "" : ", rounded once to the cent";
}

function plainQuantity(hundredths: number): string {
  return hundredths % 100 === 0 ? String(hundredths / 100) : plainFeet(hundredths);
}

function percent(basisPoints: number): string {
  return `${basisPoints / 100}%`;
}
