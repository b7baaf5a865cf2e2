import fc from "fast-check";
import { expect, test } from "vitest";
import {
  addRatios,
  floorDiv,
  formatRatio,
  gcd,
  lcm,
  multiplyRatios,
  ratio,
  roundDiv,
} from "#lib/domain/money/ratio.ts";

const whole = fc.bigInt({ min: -(10n ** 40n), max: 10n ** 40n });
const above = fc.bigInt({ min: 1n, max: 10n ** 40n });

test("ratio() keeps lowest terms with the sign above the line", () => {
  expect(ratio(6n, -4n)).toEqual({ n: -3n, d: 2n });
  expect(ratio(0n, 7n)).toEqual({ n: 0n, d: 1n });
  expect(formatRatio(ratio(700_000n, 3n))).toBe("700000/3");
  expect(formatRatio(ratio(5n))).toBe("5/1");
});

test("ratio() throws on a denominator of zero", () => {
  expect(() => ratio(1n, 0n)).toThrow("Cannot make a fraction: denominator is 0");
});

test("gcd() divides both, and what it leaves has nothing in common, for numbers of any length", () => {
  fc.assert(
    fc.property(above, above, above, (a, b, c) => {
      const common = gcd(a * c, b * c);
      expect((a * c) % common).toBe(0n);
      expect((b * c) % common).toBe(0n);
      expect(common % c).toBe(0n);
      expect(gcd((a * c) / common, (b * c) / common)).toBe(1n);
    }),
  );
});

test("gcd() of zero and a number is the number, and of two zeros 1", () => {
  expect(gcd(0n, -12n)).toBe(12n);
  expect(gcd(10n ** 30n, 0n)).toBe(10n ** 30n);
  expect(gcd(0n, 0n)).toBe(1n);
});

test("lcm() is the smallest that both divide", () => {
  expect(lcm(4n, 6n)).toBe(12n);
  expect(lcm(7n, 1n)).toBe(7n);
});

test("addRatios() and multiplyRatios() agree with the sums written out", () => {
  fc.assert(
    fc.property(whole, above, whole, above, (a, b, c, d) => {
      expect(addRatios(ratio(a, b), ratio(c, d))).toEqual(ratio(a * d + c * b, b * d));
      expect(multiplyRatios(ratio(a, b), ratio(c, d))).toEqual(ratio(a * c, b * d));
    }),
  );
});

test("floorDiv() goes down and roundDiv() takes a half away from zero", () => {
  expect(floorDiv(-1n, 3n)).toBe(-1n);
  expect(floorDiv(7n, 3n)).toBe(2n);
  expect(roundDiv(5n, 2n)).toBe(3n);
  expect(roundDiv(-5n, 2n)).toBe(-3n);
  expect(roundDiv(4n, 3n)).toBe(1n);
});
