import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { formatCents } from "#lib/domain/money/format-cents.ts";
import { parseCents } from "#lib/domain/money/parse-cents.ts";

describe("formatCents()", () => {
  test.each([
    [1_864_000, "$18,640.00"],
    [0, "$0.00"],
    [5, "$0.05"],
    [99_999, "$999.99"],
    [100_000, "$1,000.00"],
    [123_456_789_01, "$123,456,789.01"],
    [-500, "-$5.00"],
  ])("formatCents(%i) writes %s", (amount, text) => {
    expect(formatCents(amount)).toBe(text);
  });
});

describe("parseCents()", () => {
  test.each([
    ["18640", 1_864_000],
    ["$18,640.00", 1_864_000],
    [" $ 18,640.5 ", 1_864_050],
    [".5", 50],
    ["7.", 700],
    ["-5", -500],
    ["-$1,234.56", -123_456],
    ["0", 0],
    ["-0", 0],
  ])("parseCents(%s) reads %i", (text, amount) => {
    expect(parseCents(text)).toBe(amount);
  });

  test.each([
    "",
    "$",
    ".",
    "-",
    "1.234",
    "1,23",
    "12,3456",
    "1e5",
    "five",
    "1.2.3",
    "99999999999999999",
  ])("parseCents(%s) reads nothing", (text) => {
    expect(parseCents(text)).toBeNull();
  });

  test("parseCents() reads back every amount that formatCents() writes", () => {
    fc.assert(
      fc.property(fc.integer({ min: -(10 ** 14), max: 10 ** 14 }), (amount) => {
        expect(parseCents(formatCents(amount))).toBe(amount);
      }),
    );
  });
});
