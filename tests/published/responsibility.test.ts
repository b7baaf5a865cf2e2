import { describe, expect, test } from "vitest";
import type { ResponsibilityRule } from "#lib/domain/facts/authority.ts";
import type { Fault } from "#lib/domain/facts/run.ts";
import type { Holder } from "#lib/domain/findings/reach-finding.ts";
import {
  type anAgreement,
  anAnchor,
  anAuthority,
  anObservation,
  aPoint,
  aRule,
  aRun,
  type aScopeItem,
} from "#tests/support/file.ts";
import { aPricedLine } from "#tests/support/priced-line.ts";

// Who holds, clears, repairs and replaces the pipe, as real authorities write it. Each model names the
// authority whose published rule it is, with the address of the copy that was read. What is our own
// beside them is in tests/derived.

interface Place {
  readonly points?: readonly ReturnType<typeof aPoint>[];
  readonly fault?: number;
  /** What the fault is: broken unless said otherwise. */
  readonly kind?: Fault;
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
          : [
              anObservation("f", {
                kind: "fault",
                fault: place.kind ?? "broken",
                counter: place.fault,
              }),
            ],
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

/** Who clears, repairs and replaces the lowest reach. */
function below(rule: Partial<ResponsibilityRule>, place: Place = {}): Holder[] {
  const menders = lineUnder(rule, place).found.reaches[0]?.menders;
  return [menders?.clearing, menders?.repair, menders?.replacement].map(
    (each) => each ?? "unclear",
  );
}

describe("owners to the main", () => {
  test("Seattle: “up to, but not including, the connection to the public main”", () => {
    // http://www.seattle.gov/dpd/permits/permittypes/sidesewer/default.htm: from memory, the page was not
    // found again.
    const rule = { pattern: "owners-to-main", boundary: "main-connection" } as const;
    expect(belowAndAbove(rule)).toEqual(OWNERS);
    expect(lineUnder(rule).found.reaches[0]?.reason).toContain(
      "connection at the main belongs to the auth",
    );
  });

  test("Riverbank CA, Pueblo CO 16-3-8: “including the tap itself”", () => {
    // https://codelibrary.amlegal.com/codes/riverbank, https://www.pueblo.us/FAQ.aspx?QID=156
    const rule = { pattern: "owners-including-tap", boundary: "main-connection" } as const;
    expect(belowAndAbove(rule)).toEqual(OWNERS);
    expect(lineUnder(rule).found.reaches[0]?.reason).toContain("at the main belongs to the owners");
  });

  test("Portland TX: the city ends “at the outside surface of the pipe… where the tap is made”", () => {
    // http://portlandtx.com/FAQ.aspx?QID=138: from memory, the page was not found again.
    const rule = { pattern: "owners-from-outside-of-main", boundary: "main-connection" } as const;
    expect(belowAndAbove(rule)).toEqual(OWNERS);
    expect(lineUnder(rule).found.reaches[0]?.reason).toContain("outside of the main");
  });
});

describe("divided at a place", () => {
  test("Lynnwood WA: owners clean the service lateral, the city maintains it in the right-of-way", () => {
    // https://www.lynnwoodwa.gov/Government/Departments/Public-Works/Sewer-and-Water-Utilities/Sewer-Line-Cleaning
    // “Cleaning of the service lateral that serves their property” is the owner's.
    const rule = {
      pattern: "authority-in-right-of-way",
      boundary: "right-of-way-line",
      clearingBy: "owners",
    } as const;
    expect(belowAndAbove(rule)).toEqual(AUTHORITY_BELOW);
    expect(below(rule)).toEqual(["owners", "authority", "authority"]);
  });

  test("District of Columbia: the department maintains to the property line or the outermost projection, the owner clears to the main", () => {
    // 21 DCMR 202 at casetext.com, 21 DCMR 204.3 at http://dcrules.elaws.us/dcmr/21-204: “at his or her
    // own expense … to clear the stoppage from the building to the main sewer”.
    for (const boundary of ["property-line", "foundation"] as const) {
      const rule = {
        pattern: "authority-in-right-of-way",
        boundary,
        clearingBy: "owners",
      } as const;
      expect(belowAndAbove(rule)).toEqual(AUTHORITY_BELOW);
      expect(below(rule)[0]).toBe("owners");
    }
  });

  test("Clark Regional WA: the district is responsible from the main to the property line cleanout, clearing with it", () => {
    // https://www.crwwd.com/faq-items/what-do-i-do-if-i-have-a-sewer-stoppage
    const rule = {
      pattern: "divided-at-cleanout",
      boundary: "cleanout",
      clearingBy: "authority",
    } as const;
    expect(belowAndAbove(rule)).toEqual(AUTHORITY_BELOW);
    expect(below(rule)).toEqual(["authority", "authority", "authority"]);
  });

  test("San Francisco: owners own all and clear all; the city repairs or replaces the lower lateral, curb to main", () => {
    // https://www.sfpuc.gov/about-us/news/how-take-care-your-sewer-lateral and sfwater.org page 1320:
    // below the curb too “you are responsible for maintaining it, including clearing and jetting”.
    const rule = {
      pattern: "owners-own-authority-mends-lower",
      boundary: "curb",
      clearingBy: "owners",
    } as const;
    expect(belowAndAbove(rule)).toEqual(["owners/authority", "owners/owners"]);
    expect(below(rule)).toEqual(["owners", "authority", "authority"]);
  });
});

test("San Diego County: the owner clears and repairs up to the connection with the public main", () => {
  // https://sandiegocounty.gov/content/sdc/dpw/wasteh2o/blockages-spills/blockages---what-to-do.html
  const rule = { pattern: "owners-to-main", boundary: "main-connection" } as const;
  expect(belowAndAbove(rule)).toEqual(OWNERS);
  expect(below(rule)).toEqual(["owners", "owners", "owners"]);
});

describe("by the kind of work", () => {
  // San Diego (city), http://archive.sandiego.gov/mwwd/general/plumbing.shtml, an archived page: the
  // owner clears the whole lateral; a break past the property line the city will investigate. Who pays
  // for it is not said, so repair stays unclear.
  const SAN_DIEGO = {
    pattern: "by-kind-of-work",
    boundary: "property-line",
    clearingBy: "owners",
    repairBy: "unclear",
    replacementBy: "unclear",
  } as const;

  test("San Diego: the owner clears the whole lateral; what the city does past the property line is not settled", () => {
    expect(below(SAN_DIEGO)).toEqual(["owners", "unclear", "unclear"]);
    const { reaches } = lineUnder(SAN_DIEGO).found;
    expect(new Set(Object.values(reaches.at(-1)?.menders ?? {}))).toEqual(new Set(["owners"]));
    expect(reaches[0]?.reason).toContain(
      "clearing is up to the owners; repair and replacement are not determined by the rule",
    );
  });
});

describe("proof, and what is not clear", () => {
  test("Durango: a video “with measurements” that shows a break, and no root, grease or other blockage", () => {
    // https://www.durangogov.org/775/Property-Owner-Responsibilities
    const rule = { pattern: "authority-when-proven", boundary: "right-of-way-line" } as const;
    expect(belowAndAbove(rule)).toEqual(OWNERS);
    expect(belowAndAbove(rule, { fault: 800 })).toEqual(["unclear/unclear", "owners/owners"]);
    expect(belowAndAbove(rule, { fault: 5_000 })).toEqual(OWNERS);
    expect(belowAndAbove(rule, { fault: 800, kind: "roots" })).toEqual(OWNERS);
    expect(below(rule, { fault: 800 })[0]).toBe("owners");
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

  test("Ross Valley: “generally” each down to the next lateral below, the farthest downstream to the main", () => {
    // https://rvsd.org/223/Common-Laterals, an illustration, not a code
    expect(answer("next-downstream-tie-in")).toEqual([["A"], ["B"]]);
  });

  test("Portland OR, PCC 25.09.050: “proportionally liable”, by what proportion it does not say", () => {
    // https://www.portlandoregon.gov/citycode/60465 (replaced since 2025)
    expect(answer("unclear")).toEqual([[], []]);
  });
});
