import type { Cents } from "./cents.ts";

/** `1864000` → `$18,640.00`; below zero `-$5.00`. */
export function formatCents(amount: Cents): string {
  const size = Math.abs(amount);
  const dollars = String(Math.floor(size / 100)).replace(/\B(?=(\d{3})+$)/g, ",");
  const cents = String(size % 100).padStart(2, "0");
  return `${amount < 0 ? "-" : ""}$${dollars}.${cents}`;
}
