import fc from "fast-check";
import { expect, test } from "vitest";
import { numberFault } from "#lib/domain/notices/tracking.ts";

// The sums are from memory; RR 473124829 is the number of which the rule of S10 is explained, from memory.
test("a certified mail number with its check digit passes, however it is spaced", () => {
  for (const number of [
    "",
    "9407555010000000000004",
    "9407 5550 1000 0000 0000 04",
    "RR473124829CY",
    "rr 473 124 829 cy",
  ])
    expect(numberFault(number)).toBeNull();
});

test("what can't be a certified mail number is told apart from one with a wrong digit", () => {
  for (const typed of ["9407", "CM-1", "<1@example.com>", "94075550100000000000041"])
    expect(numberFault(typed)).toMatchObject({ fault: "no-number" });
  for (const typed of ["9407555010000000000005", "9407555010000000000014", "RR473124828CY"])
    expect(numberFault(typed)).toMatchObject({ fault: "check-digit" });
});

test("any one digit that is mistyped is noticed", () => {
  const right = "9407555010000000000004";
  const place = fc.integer({ min: 0, max: right.length - 1 });
  const more = fc.integer({ min: 1, max: 9 });
  fc.assert(
    fc.property(place, more, (at, by) => {
      const digit = (Number(right[at]) + by) % 10;
      const wrong = `${right.slice(0, at)}${digit}${right.slice(at + 1)}`;
      expect(numberFault(wrong)).toMatchObject({ fault: "check-digit" });
    }),
  );
});
