import fc from "fast-check";
import { expect, test } from "vitest";
import { itemAmount, itemAmountWords } from "#lib/domain/sharing/item-amount.ts";
import { aScopeItem } from "#tests/support/file.ts";

test("itemAmount() multiplies quantity and rate", () => {
  expect(itemAmount(aScopeItem("dig", { quantity: 1_250, rate: 10_000 }))).toBe(125_000);
});

test("itemAmount() adds the markup first, then the tax on the marked-up amount", () => {
  const item = aScopeItem("dig", { quantity: 1_250, rate: 10_000, markup: 1_000, tax: 825 });
  expect(itemAmount(item)).toBe(148_844);
  expect(itemAmountWords(item)).toBe(
    "12.5 ft × $100.00 + 10% markup + 8.25% tax = $1,488.44, rounded once to the cent",
  );
});

test("itemAmount() rounds once at the end, half a cent away from zero", () => {
  const half = { quantity: 50, rate: 1, markup: 0, tax: 0 };
  expect(itemAmount(aScopeItem("dig", half))).toBe(1);
  expect(itemAmount(aScopeItem("dig", { ...half, rate: -1 }))).toBe(-1);
  expect(itemAmount(aScopeItem("dig", { ...half, quantity: 49 }))).toBe(0);
  // Rounded after each step it would be 1: 1.25 → 1, then 1.1 → 1, then 1.1 → 1.
  const steps = { quantity: 125, rate: 1, markup: 1_000, tax: 1_000 };
  expect(itemAmount(aScopeItem("dig", steps))).toBe(2);
});

test("itemAmountWords() says nothing of rounding where nothing was rounded", () => {
  expect(itemAmountWords(aScopeItem("permit", { quantity: 100, unit: "each", rate: 31_000 }))).toBe(
    "1 each × $310.00 = $310.00",
  );
});

test("itemAmount() throws rather than hold an amount that is not exact", () => {
  expect(() => itemAmount(aScopeItem("dig", { quantity: 10 ** 15, rate: 10 ** 9 }))).toThrow(
    "Cannot hold an amount",
  );
});

test("itemAmount() is never more than half a cent off the exact price", () => {
  const size = fc.integer({ min: 0, max: 100_000 });
  fc.assert(
    fc.property(size, size, fc.nat(5_000), fc.nat(2_000), (quantity, rate, markup, tax) => {
      const scale = 100n * 10_000n * 10_000n;
      const exact =
        BigInt(quantity) * BigInt(rate) * BigInt(10_000 + markup) * BigInt(10_000 + tax);
      const amount = itemAmount(aScopeItem("dig", { quantity, rate, markup, tax }));
      const off = 2n * (BigInt(amount) * scale - exact);
      expect(off <= scale && off >= -scale).toBe(true);
    }),
  );
});
