import { expect, test } from "vitest";
import { formatExactCents } from "#lib/domain/split/exact.ts";

test("formatExactCents() writes whole cents as money", () => {
  expect(formatExactCents("100000/1")).toBe("$1,000.00");
  expect(formatExactCents("-5/1")).toBe("-$0.05");
});

test("formatExactCents() keeps a readable fraction of a cent", () => {
  expect(formatExactCents("100000/3")).toBe("$333.33 + 1/3 ¢");
  expect(formatExactCents("-1/2")).toBe("-($0.00 + 1/2 ¢)");
});

test("formatExactCents() cuts an unreadable fraction after four decimals and says so", () => {
  expect(formatExactCents("1/361")).toBe("$0.00 + 0.0027… ¢");
  expect(formatExactCents("1/100000")).toBe("$0.00 + 0.0000… ¢");
});
