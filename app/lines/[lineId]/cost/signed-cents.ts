import { formatCents } from "#lib/domain/money/format-cents.ts";

/** `+$120.00`, `−$30.00`, `the same`. */
export function signedCents(difference: number): string {
  if (difference === 0) return "the same";
  return `${difference > 0 ? "+" : "−"}${formatCents(Math.abs(difference))}`;
}
