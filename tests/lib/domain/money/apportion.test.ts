import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { apportion, oddCentReceivers, roundShares, toCents } from "#lib/domain/money/apportion.ts";

const weights = fc
  .array(fc.bigInt({ min: 0n, max: 10n ** 30n }), { minLength: 1, maxLength: 30 })
  .filter((list) => list.some((weight) => weight > 0n));
const totals = fc.integer({ min: -(10 ** 12), max: 10 ** 12 });

describe("apportion()", () => {
  test("apportion() gives the odd cent to the earliest of equal shares", () => {
    expect(apportion(100, [1n, 1n, 1n])).toEqual([34, 33, 33]);
  });

  test("apportion() gives the odd cent by the tie order where one is stated", () => {
    expect(apportion(100, [1n, 1n, 1n], [2, 1, 0])).toEqual([33, 33, 34]);
  });

  test("apportion() gives the odd cent to the larger remainder before any tie order", () => {
    expect(apportion(10, [1n, 2n, 4n], [0, 1, 2])).toEqual([1, 3, 6]);
  });

  test("apportion() takes a cent off the shares of a credit as exactly as off a charge", () => {
    expect(apportion(-100, [1n, 1n, 1n])).toEqual([-33, -33, -34]);
  });

  test("apportion() gives nothing to a weight of zero", () => {
    expect(apportion(101, [0n, 1n, 1n])).toEqual([0, 51, 50]);
  });

  test("apportion() refuses weights below zero and weights that are all zero", () => {
    expect(() => apportion(100, [1n, -3n])).toThrow("weights must be >= 0, got -3");
    expect(() => apportion(100, [0n, 0n])).toThrow("the weights add up to 0");
    expect(() => apportion(100, [])).toThrow("the weights add up to 0");
  });

  test("apportion() never gains or loses a cent, whatever the weights", () => {
    fc.assert(
      fc.property(totals, weights, (total, list) => {
        const shares = apportion(total, list);
        expect(shares.reduce((sum, share) => sum + share, 0)).toBe(total);
      }),
    );
  });

  test("apportion() keeps every share within a cent of its exact part", () => {
    fc.assert(
      fc.property(totals, weights, (total, list) => {
        const sum = list.reduce((all, weight) => all + weight, 0n);
        for (const [index, share] of apportion(total, list).entries()) {
          const exact = BigInt(total) * (list[index] ?? 0n);
          const off = BigInt(share) * sum - exact;
          expect(off < sum && off > -sum).toBe(true);
        }
      }),
    );
  });

  test("apportion() follows the owner and not the order, when ties go by the owner", () => {
    const byOwner = (owners: readonly number[]) =>
      Object.fromEntries(
        apportion(
          1000,
          owners.map(() => 1n),
          owners,
        ).map((share, index) => [owners[index], share]),
      );
    fc.assert(
      fc.property(fc.shuffledSubarray([0, 1, 2, 3, 4, 5, 6], { minLength: 7 }), (owners) => {
        expect(byOwner(owners)).toEqual(byOwner([0, 1, 2, 3, 4, 5, 6]));
      }),
    );
  });
});

describe("roundShares()", () => {
  test("roundShares() rounds a sum that is not whole to the nearest cent", () => {
    expect(roundShares([1n, 1n], 3n, [0, 1])).toEqual([1, 0]);
    expect(roundShares([1n, 0n], 3n, [0, 1])).toEqual([0, 0]);
  });

  test("oddCentReceivers() names who gets the cents left over, the largest loss first", () => {
    expect(oddCentReceivers([5n, 4n, 3n], 6n, [0, 1, 2])).toEqual([0, 1]);
    expect(oddCentReceivers([6n, 12n], 6n, [0, 1])).toEqual([]);
  });

  test("toCents() throws rather than hold an amount that is not exact", () => {
    expect(() => toCents(2n ** 60n)).toThrow("Cannot hold an amount of 1152921504606846976 cents");
  });
});
