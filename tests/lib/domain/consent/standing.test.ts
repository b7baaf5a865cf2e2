import { describe, expect, test } from "vitest";
import { consentStanding } from "#lib/domain/consent/standing.ts";
import type { Consent } from "#lib/domain/facts/consent.ts";
import type { SplitOutcome } from "#lib/domain/findings/outcome.ts";
import { latestSplit } from "#lib/domain/split/latest-split.ts";
import { aConsent, aFile, aSplit } from "#tests/support/file.ts";

const share = (propertyId: string, amount: number) => ({
  propertyId,
  tieInId: null,
  amount,
  recoverable: 0,
});
const ONE = aSplit("one", { shares: [share("p", 50_000), share("q", 50_000)] });
const SAME = aSplit("same", { number: 2, shares: [share("p", 50_000), share("q", 60_000)] });
const MORE = aSplit("more", { number: 3, shares: [share("p", 55_000), share("q", 45_000)] });
const WITHOUT = aSplit("without", { number: 4, shares: [share("q", 100_000)] });

const YES = aConsent("yes", {
  kind: "pay",
  partyId: "ada",
  propertyId: "p",
  splitId: "one",
  amount: 50_000,
});

function standing(consent: Consent, splits = [ONE], consents = [consent]) {
  return consentStanding(aFile({ splits, consents }), consent);
}

test.each(["asked", "refused", "withdrawn"] as const)(
  "consentStanding() of a consent %s is that",
  (state) => {
    expect(standing({ ...YES, state })).toBe(state);
    expect(standing(aConsent("dig", { state }))).toBe(state);
  },
);

test("consentStanding() of another consent than to pay asks for no amount", () => {
  expect(standing(aConsent("dig"), [ONE, MORE])).toBe("current");
});

describe("a signature to pay", () => {
  test("consentStanding() holds on the version that was signed", () => {
    expect(standing(YES)).toBe("current");
  });

  test("consentStanding() does not hold on another amount of the property", () => {
    expect(standing(YES, [ONE, SAME, MORE])).toBe("superseded-amount");
    expect(standing(YES, [ONE, WITHOUT])).toBe("superseded-amount");
    expect(standing({ ...YES, amount: 49_999 })).toBe("superseded-amount");
  });

  test("consentStanding() holds under a newer version that asks the very same of the property", () => {
    expect(standing(YES, [ONE, SAME])).toBe("current");
  });

  test("consentStanding() takes the amount of the signed version where none was noted", () => {
    expect(standing({ ...YES, amount: null })).toBe("current");
    expect(standing({ ...YES, amount: null }, [ONE, MORE])).toBe("superseded-amount");
    expect(standing({ ...YES, amount: null, splitId: null })).toBe("superseded-amount");
  });

  test("consentStanding() goes by the version's number, not by its place in the file", () => {
    expect(latestSplit(aFile({ splits: [MORE, ONE] }))?.id).toBe("more");
    expect(latestSplit(aFile())).toBe(null);
    expect(standing(YES, [MORE, ONE])).toBe("superseded-amount");
  });

  test("consentStanding() with a report does not hold once the facts give another amount", () => {
    const outcome = (amount: number, refusal: string | null = null): SplitOutcome => ({
      choice: ONE,
      title: "",
      sentence: "",
      refusal,
      total: 100_000,
      shares: [{ ...share("p", amount), label: "", exact: `${amount}/1`, steps: [] }],
      standAlone: null,
      oddCents: "",
      basis: "",
    });
    const file = aFile({ splits: [ONE], consents: [YES] });
    expect(consentStanding(file, YES, { splits: [outcome(50_000)] })).toBe("current");
    expect(consentStanding(file, YES, { splits: [outcome(33_334)] })).toBe("superseded-amount");
    expect(consentStanding(file, YES, { splits: [outcome(50_000, "No price")] })).toBe(
      "superseded-amount",
    );
  });
});

test("consentStanding() of a word that a later one stands for is replaced", () => {
  const no = { ...YES, id: "no", state: "withdrawn", stateOn: "2026-11-24" } as const;
  expect(standing(YES, [ONE], [no, YES])).toBe("replaced");
  expect(standing(no, [ONE], [no, YES])).toBe("withdrawn");
  const ofAnother = { ...no, partyId: "bo" };
  expect(standing(YES, [ONE], [YES, ofAnother])).toBe("current");
});

test("consentStanding() of one day goes by the order of entry", () => {
  const asked = { ...YES, id: "asked", state: "asked" } as const;
  expect(standing(YES, [ONE], [asked, YES])).toBe("current");
  expect(standing(asked, [ONE], [asked, YES])).toBe("replaced");
});
