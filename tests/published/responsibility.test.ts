import { describe, expect, test } from "vitest";
import type { ResponsibilityRule, WorkKind } from "#lib/domain/responsibility/authority.ts";
import { itemMenders } from "#lib/domain/responsibility/item-menders.ts";
import type { Holder } from "#lib/domain/responsibility/reach-finding.ts";
import {
  anAgreement,
  anAnchor,
  anAuthority,
  anObservation,
  aPoint,
  aRule,
  aRun,
  aScopeItem,
} from "#tests/support/file.ts";
import { aPricedLine, divideLine } from "#tests/support/priced-line.ts";

// Who holds and who mends the pipe, as real authorities write it. Each model names the authority
// whose published rule it is; pages read in public copies, addresses beside each.

interface Place {
  readonly points?: readonly ReturnType<typeof aPoint>[];
  readonly fault?: number;
  readonly scope?: readonly ReturnType<typeof aScopeItem>[];
  readonly agreements?: readonly ReturnType<typeof anAgreement>[];
}

/** A line of two houses at 20 and 60 ft, with a boundary of the rule's kind at 12 ft unless said otherwise. */
function lineUnder(rule: Partial<ResponsibilityRule>, place: Place = {}) {
  const authority = anAuthority({ rules: [aRule("rule-1", rule)] });
  const kind = rule.boundary === "main-connection" ? undefined : rule.boundary;
  const points = place.points ?? (kind ? [aPoint("edge", { kind, station: 1_200 })] : []);
  return aPricedLine(
    [
      { id: "A", station: 2_000 },
      { id: "B", station: 6_000 },
    ],
    {
      authority,
      points,
      scope: place.scope ?? [],
      agreements: place.agreements ?? [],
      runs: [aRun("run")],
      anchors: [anAnchor("run")],
      observations:
        place.fault === undefined
          ? []
          : [anObservation("f", { kind: "fault", fault: "broken", counter: place.fault })],
      line: { authorityId: authority.id, ruleId: "rule-1" },
    },
  );
}

/** `holder/mender` of the lowest reach and of the one above the boundary. */
function belowAndAbove(rule: Partial<ResponsibilityRule>, place: Place = {}): string[] {
  const { reaches } = lineUnder(rule, place).found;
  const [below] = reaches;
  const above = reaches.find(({ from }) => from >= 2_000);
  return [below, above].map((reach) => `${reach?.holder}/${reach?.mender}`);
}

const OWNERS = ["owners/owners", "owners/owners"];
const AUTHORITY_BELOW = ["authority/authority", "owners/owners"];

describe("owners to the main", () => {
  test("Seattle: “up to, but not including, the connection to the public main”", () => {
    // http://www.seattle.gov/dpd/permits/permittypes/sidesewer/default.htm
    const rule = { pattern: "owners-to-main", boundary: "main-connection" } as const;
    expect(belowAndAbove(rule)).toEqual(OWNERS);
    expect(lineUnder(rule).found.reaches[0]?.reason).toContain(
      "connection at the main is the auth",
    );
  });

  test("Riverbank CA, Pueblo CO 16-3-8: “including the tap itself”", () => {
    // https://codelibrary.amlegal.com/codes/riverbank, https://www.pueblo.us/FAQ.aspx?QID=156
    const rule = { pattern: "owners-including-tap", boundary: "main-connection" } as const;
    expect(belowAndAbove(rule)).toEqual(OWNERS);
    expect(lineUnder(rule).found.reaches[0]?.reason).toContain("at the main is the owners’");
  });

  test("Portland TX: the city ends “at the outside surface of the pipe… where the tap is made”", () => {
    // http://portlandtx.com/FAQ.aspx?QID=138
    const rule = { pattern: "owners-from-outside-of-main", boundary: "main-connection" } as const;
    expect(belowAndAbove(rule)).toEqual(OWNERS);
    expect(lineUnder(rule).found.reaches[0]?.reason).toContain("outside of the main");
  });
});

describe("divided at a place", () => {
  test("Lynnwood WA 14.16.015: the service lateral in the right-of-way is the city’s", () => {
    // https://www.codepublishing.com/WA/Lynnwood/html/Lynnwood14/Lynnwood1416.html
    const rule = {
      pattern: "authority-in-right-of-way",
      boundary: "right-of-way-line",
    } as const;
    expect(belowAndAbove(rule)).toEqual(AUTHORITY_BELOW);
  });

  test("District of Columbia, 21 DCMR 202: public to the property line, or to the outermost projection", () => {
    // https://casetext.com/regulation/district-of-columbia-administrative-code/…/rule-21-202
    for (const boundary of ["property-line", "foundation"] as const) {
      expect(belowAndAbove({ pattern: "authority-in-right-of-way", boundary })).toEqual(
        AUTHORITY_BELOW,
      );
    }
  });

  test("Clark Regional: the district from the main to the cleanout, the owner above", () => {
    // https://www.crwwd.com/faq-items/what-do-i-do-if-i-have-a-sewer-stoppage
    const rule = { pattern: "divided-at-cleanout", boundary: "cleanout" } as const;
    expect(belowAndAbove(rule)).toEqual(AUTHORITY_BELOW);
    expect(belowAndAbove(rule, { points: [] })).toEqual(["unclear/unclear", "unclear/unclear"]);
  });

  test("San Francisco: owners own all, the city mends the lower lateral, curb to main", () => {
    // https://www.sfpuc.gov/about-us/news/how-take-care-your-sewer-lateral
    const rule = { pattern: "owners-own-authority-mends-lower", boundary: "curb" } as const;
    expect(belowAndAbove(rule)).toEqual(["owners/authority", "owners/owners"]);
  });
});

describe("by the kind of work", () => {
  const SAN_DIEGO = {
    pattern: "by-kind-of-work",
    boundary: "property-line",
    clearingBy: "owners",
    repairBy: "authority",
    replacementBy: "unclear",
  } as const;
  const kindsAt = (place: Place = {}): Record<WorkKind, Holder>[] =>
    lineUnder(SAN_DIEGO, place).found.reaches.map(({ menders }) => menders);

  test("San Diego: the owner clears the whole lateral; a break past the property line is looked into by the city", () => {
    // http://archive.sandiego.gov/mwwd/general/plumbing.shtml
    expect(kindsAt()[0]).toEqual({
      clearing: "owners",
      repair: "authority",
      replacement: "unclear",
    });
    expect(kindsAt().at(-1)).toEqual({
      clearing: "owners",
      repair: "owners",
      replacement: "owners",
    });
    expect(lineUnder(SAN_DIEGO).found.reaches[0]?.reason).toContain(
      "clearing is the owners’; repair is the authority’s; replacement is not settled by the rule",
    );
  });

  test("San Diego County policy: after the owner’s attempt the county clears and repairs to the main", () => {
    const county = { ...SAN_DIEGO, clearingBy: "authority", replacementBy: "authority" } as const;
    const [below] = lineUnder(county).found.reaches;
    expect(new Set(Object.values(below?.menders ?? {}))).toEqual(new Set(["authority"]));
  });

  test("while the boundary is not entered, only what owners do on both sides is settled", () => {
    expect(kindsAt({ points: [] })[0]).toEqual({
      clearing: "owners",
      repair: "unclear",
      replacement: "unclear",
    });
  });

  test("each item’s kind of work decides who does it, and how much of the split is the authority’s", () => {
    const span = { from: 0, to: 2_000, quantity: 2_000 };
    const line = lineUnder(SAN_DIEGO, {
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
});

describe("proof, and what is not clear", () => {
  test("Durango: a video “with measurements” that shows the break within the right-of-way", () => {
    // https://www.durangogov.org/775/Property-Owner-Responsibilities
    const rule = { pattern: "authority-when-proven", boundary: "right-of-way-line" } as const;
    expect(belowAndAbove(rule)).toEqual(OWNERS);
    expect(belowAndAbove(rule, { fault: 800 })).toEqual(["unclear/unclear", "owners/owners"]);
    expect(belowAndAbove(rule, { fault: 5_000 })).toEqual(OWNERS);
  });

  test("Portland OR, PCC 17.32.055: “unclear ownership” is a state of its own", () => {
    // http://www.portlandonline.com/auditor/index.cfm?a=479547&c=28859
    const rule = { pattern: "unclear", boundary: "right-of-way-line" } as const;
    expect(belowAndAbove(rule)).toEqual(["unclear/unclear", "unclear/unclear"]);
  });
});

describe("among the owners", () => {
  const answer = (sharedRule: ResponsibilityRule["sharedRule"]) =>
    lineUnder({ sharedRule }).found.reaches.map(({ answerable }) => answerable);

  test("Ross Valley: each down to the next lateral below, the farthest downstream to the main", () => {
    // https://rvsd.org/223/Common-Laterals
    expect(answer("next-downstream-tie-in")).toEqual([["A"], ["B"]]);
  });

  test("Seattle, joint use: all who use the shared portion answer for it", () => {
    // https://my.seattle.gov/utilities/your-services/sewer-and-drainage/side-sewers
    expect(answer("all-whose-flow-passes")).toEqual([["A", "B"], ["B"]]);
  });

  test("Portland OR, PCC 25.09.050: every connected property is liable", () => {
    // https://www.portlandoregon.gov/citycode/60465 (replaced since 2025)
    expect(answer("all-connected-equally")).toEqual([
      ["A", "B"],
      ["A", "B"],
    ]);
  });

  test("Harrisburg: “must be worked out between homeowners”", () => {
    // https://capitalregionwater.com/resources/education/homeowners-guidelines-and-responsibilities/
    expect(answer("parties-decide")).toEqual([[], []]);
  });
});

test("a recorded agreement comes before the code, and what the code says is told beside it", () => {
  // Order of authority: recorded agreement, signed agreement, local code, proposal.
  const line = lineUnder(
    { pattern: "authority-in-right-of-way", boundary: "right-of-way-line" },
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
  expect(line.found.reaches[0]?.reason).toContain("By itself the rule says:");
});
