import { expect, test } from "vitest";
import type { SplitRule } from "#lib/domain/facts/split.ts";
import type { Share, SplitOutcome } from "#lib/domain/findings/outcome.ts";
import { compareSplits } from "#lib/domain/split/compare.ts";

function share(key: string, amount: number): Share {
  const unknown = key.startsWith("T");
  return {
    propertyId: unknown ? null : key,
    tieInId: unknown ? key : null,
    label: key,
    amount,
    recoverable: 0,
    exact: `${amount}/1`,
    steps: [],
  };
}

function outcome(rule: SplitRule, shares: Share[], refusal: string | null = null): SplitOutcome {
  return {
    choice: { rule, faultStation: null, payerId: null, unknownShares: "carried" },
    title: rule,
    sentence: "",
    refusal,
    total: shares.reduce((sum, each) => sum + each.amount, 0),
    shares,
    standAlone: null,
    oddCents: "",
    basis: "",
  };
}

const EQUAL = outcome("equal", [share("A", 200_000), share("B", 200_000)]);
const USED = outcome("portion-used", [share("A", 33_333), share("B", 366_667)]);

test("compareSplits() measures every rule against the chosen one", () => {
  const [a, b] = compareSplits([EQUAL, USED], "portion-used");
  expect(a?.cells.map((cell) => cell?.difference)).toEqual([166_667, null]);
  expect(b?.cells.map((cell) => cell?.difference)).toEqual([-166_667, null]);
});

test("compareSplits() gives no differences while no rule is chosen", () => {
  const [a] = compareSplits([EQUAL, USED], null);
  expect(a?.cells.map((cell) => cell?.difference)).toEqual([null, null]);
});

test("compareSplits() leaves a rule that cannot be worked out empty", () => {
  const refused = outcome("weights", [], "Enter a weight for each property.");
  const [a] = compareSplits([refused, EQUAL, USED], null);
  expect(a?.cells.map((cell) => cell?.amount ?? null)).toEqual([null, 200_000, 33_333]);
});

test("compareSplits() counts a payer that a rule does not name as paying nothing under it", () => {
  const single = outcome("single-payer", [share("B", 400_000)]);
  const [a] = compareSplits([EQUAL, single], "equal");
  expect(a?.cells[1]).toMatchObject({ recoverable: 0, amount: 0, difference: -200_000 });
});

test("compareSplits() marks a payer who is not known", () => {
  const apart = outcome("equal", [share("A", 100_000), share("T7", 300_000)]);
  expect(compareSplits([apart], null).map((payer) => payer.unknown)).toEqual([false, true]);
});
