import { describe, expect, test } from "vitest";
import type { ResponsibilityRule } from "#lib/domain/facts/authority.ts";
import { itemMenders } from "#lib/domain/responsibility/item-menders.ts";
import { anAgreement, anAuthority, aPoint, aRule, aScopeItem } from "#tests/support/file.ts";
import { aPricedLine, divideLine } from "#tests/support/priced-line.ts";

// What we ourselves made of rules, where no source that was read says it.

/** A line of two houses at 20 and 60 ft, with a property line at 12 ft unless said otherwise. */
function lineUnder(
  rule: Partial<ResponsibilityRule>,
  facts: Omit<Parameters<typeof aPricedLine>[1], "line" | "authority"> = {},
) {
  const authority = anAuthority({ rules: [aRule("rule-1", rule)] });
  return aPricedLine(
    [
      { id: "A", station: 2_000 },
      { id: "B", station: 6_000 },
    ],
    {
      points: [aPoint("edge", { kind: "property-line", station: 1_200 })],
      ...facts,
      authority,
      line: { authorityId: authority.id, ruleId: "rule-1" },
    },
  );
}

const BY_KIND = {
  pattern: "by-kind-of-work",
  boundary: "property-line",
  clearingBy: "owners",
  repairBy: "authority",
  replacementBy: "unclear",
} as const;

// A district may use the house's own cleanout then (Clark Regional), another leaves clearing to the
// owner down to the main (West Valley): what a rule that divides there means without one is its own.
test("without the cleanout at which a rule divides, repair stays unclear", () => {
  const [reach] = lineUnder(
    { pattern: "divided-at-cleanout", boundary: "cleanout" },
    { points: [] },
  ).found.reaches;
  expect(reach).toMatchObject({ holder: "unclear", mender: "unclear" });
});

test("while the boundary is not entered, only what owners do on both sides is settled", () => {
  expect(lineUnder(BY_KIND, { points: [] }).found.reaches[0]?.menders).toEqual({
    clearing: "owners",
    repair: "unclear",
    replacement: "unclear",
  });
});

test("each item’s kind of work decides who does it, and how much of the split is the authority’s", () => {
  const span = { from: 0, to: 2_000, quantity: 2_000 };
  const line = lineUnder(BY_KIND, {
    scope: [
      aScopeItem("clear", { work: "clearing", ...span }),
      aScopeItem("mend", { work: "repair", ...span }),
      aScopeItem("spot", { work: "repair", place: "point", from: 1_200, to: null, rate: 100 }),
    ],
  });
  const who = (id: string) => {
    const item = line.file.scope.find((each) => each.id === id);
    return item === undefined ? [] : itemMenders(item, line.found.reaches);
  };
  expect(who("clear")).toEqual([{ from: 0, to: 2_000, mender: "owners" }]);
  expect(who("mend")).toEqual([
    { from: 0, to: 1_200, mender: "authority" },
    { from: 1_200, to: 2_000, mender: "owners" },
  ]);
  expect(who("spot")).toEqual([{ from: 1_200, to: 1_200, mender: "authority" }]);
  // $100 a foot over 12 ft, and the point of 10 ft × $1.00; the clearing is the owners’.
  expect(line.found.reaches[0]).toMatchObject({ cost: 241_000, authorityCost: 121_000 });
  expect(divideLine(line, "equal").sentence).toContain("$1,210.00 of the work");
});

describe("among the owners", () => {
  const answer = (sharedRule: ResponsibilityRule["sharedRule"]) =>
    lineUnder({ sharedRule }, { points: [] }).found.reaches.map(({ answerable }) => answerable);

  test("all whose flow passes, all who are connected, or nobody until they agree", () => {
    expect(answer("all-whose-flow-passes")).toEqual([["A", "B"], ["B"]]);
    expect(answer("all-connected-equally")).toEqual([
      ["A", "B"],
      ["A", "B"],
    ]);
    expect(answer("parties-decide")).toEqual([[], []]);
  });
});

test("a recorded agreement comes before the code, and what the code says is told beside it", () => {
  // Our order: recorded agreement, signed agreement, local code, proposal.
  const line = lineUnder(
    { pattern: "authority-in-right-of-way", boundary: "property-line" },
    {
      agreements: [
        anAgreement("deed", {
          recordedOn: "1984-04-12",
          shares: [
            { propertyId: "A", parts: 1 },
            { propertyId: "B", parts: 1 },
          ],
        }),
      ],
    },
  );
  expect(line.found.reaches[0]).toMatchObject({ holder: "owners", answerable: ["A", "B"] });
  expect(line.found.reaches[0]?.reason).toContain("By itself, the rule says:");
});
