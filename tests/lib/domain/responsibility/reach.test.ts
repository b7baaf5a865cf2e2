import { describe, expect, test } from "vitest";
import {
  type ResponsibilityRule,
  RULE_PATTERNS,
  SHARED_RULES,
} from "#lib/domain/facts/authority.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { FAULTS, type Fault } from "#lib/domain/facts/run.ts";
import type { ReachFinding } from "#lib/domain/findings/reach-finding.ts";
import {
  aConsent,
  aCrossing,
  anAgreement,
  anAnchor,
  anAuthority,
  anObservation,
  aPoint,
  aProperty,
  aRule,
  aRun,
  aScopeItem,
} from "#tests/support/file.ts";
import { aPricedLine } from "#tests/support/priced-line.ts";

const ABC = [
  { id: "A", station: 2_000 },
  { id: "B", station: 6_000 },
  { id: "C", station: 10_000 },
];

/** The line of three under a rule, with a right-of-way line at 12 ft unless said otherwise. */
function reachesUnder(
  rule: Partial<ResponsibilityRule> | null,
  facts: Partial<Omit<LineFile, "line">> & { readonly tieIns?: never } = {},
  tieIns: Parameters<typeof aPricedLine>[0] = ABC,
): readonly ReachFinding[] {
  const authority = anAuthority({ rules: rule === null ? [] : [aRule("rule-1", rule)] });
  const line = aPricedLine(tieIns, {
    points: [aPoint("row", { kind: "right-of-way-line", station: 1_200 })],
    authority,
    ...facts,
    line: { authorityId: authority.id, ruleId: rule === null ? null : "rule-1" },
  });
  return line.found.reaches;
}

function holders(reaches: readonly ReachFinding[]) {
  return reaches.map((reach) => `${reach.from}-${reach.to} ${reach.holder}/${reach.mender}`);
}

describe("reachFindings() cuts the line", () => {
  test("reachFindings() cuts at tie-ins and points and says who is served by each reach", () => {
    const reaches = reachesUnder({});
    expect(reaches.map(({ from, to, servedBy }) => [from, to, servedBy])).toEqual([
      [0, 1_200, ["A", "B", "C"]],
      [1_200, 2_000, ["A", "B", "C"]],
      [2_000, 6_000, ["B", "C"]],
      [6_000, 10_000, ["C"]],
    ]);
  });

  test("reachFindings() keeps unknown owners apart from the properties served", () => {
    const [first] = reachesUnder({}, {}, [
      { id: "A", station: 2_000 },
      { id: "T2", propertyId: null, station: 3_000 },
    ]);
    expect(first).toMatchObject({ servedBy: ["A"], unknownTieIns: ["T2"] });
  });

  test("reachFindings() says that flow of a tie-in without a station may pass too", () => {
    const reaches = reachesUnder({}, {}, [...ABC, { id: "D", label: "T4", station: null }]);
    expect(reaches[0]?.servedBy).toEqual(["A", "B", "C"]);
    expect(reaches[0]?.reason).toContain(
      "T4 has no station yet: flow from there may pass here too.",
    );
  });

  test("reachFindings() follows the material that the camera saw, counting a change once", () => {
    const change = (id: string, counter: number) =>
      anObservation(id, { kind: "material", material: "pvc", diameter: 6, counter });
    const reaches = reachesUnder(
      {},
      {
        points: [],
        runs: [aRun("run")],
        anchors: [anAnchor("run")],
        observations: [change("m2", 3_100), change("m1", 3_000)],
      },
    );
    expect(reaches.map(({ from, to, material }) => [from, to, material])).toEqual([
      [0, 2_000, "vitrified-clay"],
      [2_000, 3_000, "vitrified-clay"],
      [3_000, 6_000, "pvc"],
      [6_000, 10_000, "pvc"],
    ]);
  });

  test("reachFindings() finds no reaches on a line of no known length", () => {
    expect(reachesUnder({}, {}, [])).toEqual([]);
  });

  test("reachFindings() prices each reach by length, to the total of what is placed", () => {
    const reaches = reachesUnder(
      {},
      {
        points: [],
        scope: [
          aScopeItem("dig", { from: 1_000, to: 7_000, quantity: 6_000 }),
          aScopeItem("spot", { place: "point", from: 2_000, to: null, quantity: 1, rate: 100 }),
          aScopeItem("permit", { place: "general", from: null, to: null }),
        ],
      },
    );
    expect(reaches.map((reach) => reach.cost)).toEqual([100_001, 400_000, 100_000]);
  });

  test("reachFindings() names lots that are crossed and whose owner does not use the pipe there", () => {
    const reaches = reachesUnder(
      {},
      {
        points: [],
        crossings: [
          aCrossing("x1", { propertyId: "A", from: 500, to: 3_000 }),
          aCrossing("x2", { propertyId: "Z", from: 2_500, to: 3_000 }),
        ],
      },
    );
    expect(
      reaches
        .filter((reach) => reach.crossedBy.length > 0)
        .map((each) => [each.from, each.crossedBy]),
    ).toEqual([
      [2_000, ["A"]],
      [2_500, ["A", "Z"]],
    ]);
  });
});

describe("reachFindings() applies the nine patterns", () => {
  const lower = "0-1200";
  const uppers = ["1200-2000", "2000-6000", "6000-10000"];
  const all = (state: string) => [lower, ...uppers].map((reach) => `${reach} ${state}`);
  const split = (below: string, above: string) => [
    `${lower} ${below}`,
    ...uppers.map((reach) => `${reach} ${above}`),
  ];

  test.each([
    ["owners-to-main", all("owners/owners")],
    ["owners-including-tap", all("owners/owners")],
    ["owners-from-outside-of-main", all("owners/owners")],
    ["authority-in-right-of-way", split("authority/authority", "owners/owners")],
    ["owners-own-authority-mends-lower", split("owners/authority", "owners/owners")],
    ["by-kind-of-work", split("owners/authority", "owners/owners")],
    ["authority-when-proven", all("owners/owners")],
    ["unclear", all("unclear/unclear")],
  ] as const)("reachFindings() under %s", (pattern, expected) => {
    expect(holders(reachesUnder({ pattern, boundary: "right-of-way-line" }))).toEqual(expected);
  });

  test("reachFindings() divides at the cleanout nearest the main", () => {
    const points = [
      aPoint("c2", { kind: "cleanout", station: 6_000 }),
      aPoint("c1", { kind: "cleanout", station: 1_200 }),
    ];
    const reaches = reachesUnder(
      { pattern: "divided-at-cleanout", boundary: "cleanout" },
      { points },
    );
    expect(holders(reaches)).toEqual(split("authority/authority", "owners/owners"));
    expect(reaches[0]?.reason).toBe(
      "From the main up to the cleanout nearest the main at 12.0 ft the pipe belongs to the authority: clearing is up to the owners; repair and replacement are up to the authority.",
    );
    expect(reaches[0]?.answerable).toEqual([]);
  });

  test.each([
    ["authority-in-right-of-way", "unclear/unclear"],
    ["divided-at-cleanout", "unclear/unclear"],
    ["owners-own-authority-mends-lower", "owners/unclear"],
    ["by-kind-of-work", "owners/unclear"],
    ["authority-when-proven", "unclear/unclear"],
  ] as const)(
    "reachFindings() keeps %s unclear while the boundary is not entered",
    (pattern, state) => {
      const reaches = reachesUnder({ pattern, boundary: "curb" }, { points: [] });
      expect(new Set(holders(reaches).map((each) => each.split(" ")[1]))).toEqual(new Set([state]));
      expect(reaches[0]?.reason).toContain(
        "The rule divides the line at the curb, and its station is not entered. Enter it.",
      );
    },
  );

  test("reachFindings() tells the three rules on the connection itself apart, at the main only", () => {
    const reason = (pattern: ResponsibilityRule["pattern"], reach: number) =>
      reachesUnder({ pattern })[reach]?.reason ?? "";
    expect(reason("owners-to-main", 0)).toContain(
      "The connection at the main belongs to the authority.",
    );
    expect(reason("owners-including-tap", 0)).toContain(
      "tee or saddle at the main belongs to the owners.",
    );
    expect(reason("owners-from-outside-of-main", 0)).toContain(
      "outside of the main belongs to the owners.",
    );
    expect(reason("owners-to-main", 1)).not.toContain("The connection at the main");
  });

  test("reachFindings() keeps only the stretch unclear on which a break is seen that the owner could prove", () => {
    const reaches = reachesUnder(
      { pattern: "authority-when-proven", boundary: "right-of-way-line" },
      {
        runs: [aRun("run")],
        anchors: [anAnchor("run")],
        observations: [
          anObservation("f1", { kind: "fault", fault: "broken", counter: 800 }),
          anObservation("f2", { kind: "fault", fault: "crack", counter: 5_000 }),
        ],
      },
    );
    expect(holders(reaches)).toEqual(split("unclear/unclear", "owners/owners"));
    expect(reaches[0]?.reason).toContain(
      "The camera saw a break at 8.0 ft: submit that to the authority, with the video and its measurements.",
    );
  });

  test("reachFindings() leaves the rest of the lower part to the owners", () => {
    const reaches = reachesUnder(
      { pattern: "authority-when-proven", boundary: "property-line" },
      {
        points: [
          aPoint("c1", { kind: "cleanout", station: 600 }),
          aPoint("edge", { kind: "property-line", station: 1_200 }),
        ],
        runs: [aRun("run")],
        anchors: [anAnchor("run")],
        observations: [
          anObservation("f1", { kind: "fault", fault: "broken", counter: 700, toCounter: 900 }),
        ],
      },
    );
    expect(reaches.map(({ from, holder }) => [from, holder]).slice(0, 2)).toEqual([
      [0, "owners"],
      [600, "unclear"],
    ]);
    expect(reaches[0]?.reason).toContain("No break with a station is noted in this section");
    expect(reaches[1]?.reason).toContain("The camera saw a break from 7.0 to 9.0 ft: submit that");
  });

  test("reachFindings() takes no roots, belly or leak for a break that proves anything", () => {
    const seen = (fault: Fault) => {
      const reaches = reachesUnder(
        { pattern: "authority-when-proven", boundary: "right-of-way-line" },
        {
          runs: [aRun("run")],
          anchors: [anAnchor("run")],
          observations: [anObservation("f", { kind: "fault", fault, counter: 800 })],
        },
      );
      return reaches[0]?.holder;
    };
    const proven = FAULTS.filter((fault) => seen(fault) === "unclear");
    expect(proven).toEqual([
      "broken",
      "collapsed",
      "crack",
      "deformed",
      "hole",
      "offset-joint",
      "open-joint",
    ]);
    expect(seen("roots")).toBe("owners");
  });

  test.each([
    ["authority-in-right-of-way", "right-of-way-line"],
    ["divided-at-cleanout", "right-of-way-line"],
    ["owners-own-authority-mends-lower", "right-of-way-line"],
    ["by-kind-of-work", "right-of-way-line"],
  ] as const)(
    "reachFindings() gives each kind of work below the boundary as %s has it",
    (pattern, boundary) => {
      const kinds = {
        clearingBy: "owners",
        repairBy: "authority",
        replacementBy: "unclear",
      } as const;
      const [below, above] = reachesUnder({ pattern, boundary, ...kinds });
      expect(below?.menders).toEqual({
        clearing: "owners",
        repair: "authority",
        replacement: "unclear",
      });
      expect(below?.reason).toContain(
        "clearing is up to the owners; repair is up to the authority; replacement is not determined by the rule",
      );
      expect(new Set(Object.values(above?.menders ?? {}))).toEqual(new Set(["owners"]));
      const unplaced = reachesUnder({ pattern, boundary, ...kinds }, { points: [] })[0];
      expect(unplaced?.menders).toEqual({
        clearing: "owners",
        repair: "unclear",
        replacement: "unclear",
      });
    },
  );

  test("reachFindings() names the rule’s citation and when it was looked at", () => {
    expect(reachesUnder({})[0]?.citation).toBe("QMC 13.08.010, as of October 1, 2026");
  });

  test("reachFindings() stays unclear without an authority or a chosen rule, and says what to choose", () => {
    const noRule = reachesUnder(null)[0];
    expect(noRule?.holder).toBe("unclear");
    expect(noRule?.reason).toBe(
      "No rule of City of Quillhaven is selected for this line yet. Select one.",
    );
    const nobody = reachesUnder(null, { authority: null })[0];
    expect(nobody?.reason).toContain("No authority is selected for this line yet.");
  });

  test("reachFindings() gives a reason for every pattern under every shared rule", () => {
    for (const pattern of RULE_PATTERNS) {
      for (const sharedRule of SHARED_RULES) {
        for (const reach of reachesUnder({ pattern, sharedRule, boundary: "right-of-way-line" })) {
          expect(reach.reason).toMatch(/^[A-Z].*[.]$/);
          expect(reach.holder === "owners" || reach.answerable.length === 0).toBe(true);
        }
      }
    }
  });
});

describe("reachFindings() applies the shared rules", () => {
  const answerable = (
    sharedRule: ResponsibilityRule["sharedRule"],
    tieIns: Parameters<typeof aPricedLine>[0] = ABC,
  ) => reachesUnder({ sharedRule }, { points: [] }, tieIns).map((reach) => reach.answerable);

  test("reachFindings() finds all whose flow passes", () => {
    expect(answerable("all-whose-flow-passes")).toEqual([["A", "B", "C"], ["B", "C"], ["C"]]);
  });

  test("reachFindings() finds the next tie-in above, the lowest down to the main", () => {
    expect(answerable("next-downstream-tie-in")).toEqual([["A"], ["B"], ["C"]]);
  });

  test("reachFindings() counts a property’s own lower tie-in before its upper one", () => {
    const tieIns = [
      { id: "T1", propertyId: "A", station: 1_000 },
      { id: "T2", propertyId: "B", station: 2_000 },
      { id: "T3", propertyId: "A", station: 3_000 },
    ];
    expect(answerable("next-downstream-tie-in", tieIns)).toEqual([["A"], ["B"], ["A"]]);
    expect(answerable("all-whose-flow-passes", tieIns)).toEqual([["B", "A"], ["B", "A"], ["A"]]);
  });

  test("reachFindings() finds all connected owners on every reach", () => {
    expect(answerable("all-connected-equally")).toEqual([
      ["A", "B", "C"],
      ["A", "B", "C"],
      ["A", "B", "C"],
    ]);
  });

  test("reachFindings() names nobody where the parties decide or the rule does not say", () => {
    expect(answerable("parties-decide")).toEqual([[], [], []]);
    expect(answerable("unclear")).toEqual([[], [], []]);
  });

  test("reachFindings() names an unknown owner in the reason, never in the list", () => {
    const [, upper] = reachesUnder({ sharedRule: "next-downstream-tie-in" }, { points: [] }, [
      { id: "A", station: 1_000 },
      { id: "T2", label: "T2", propertyId: null, station: 2_000 },
    ]);
    expect(upper?.answerable).toEqual([]);
    expect(upper?.reason).toContain("Here that is T2 (owner unknown).");
  });

  test("reachFindings() says that nobody’s flow passes above the highest tie-in", () => {
    const tieIns = [
      { id: "A", station: 0 },
      { id: "B", parentId: "A", station: 500 },
    ];
    const under = (sharedRule: ResponsibilityRule["sharedRule"]) =>
      reachesUnder({ sharedRule }, { points: [] }, tieIns);
    expect(under("all-whose-flow-passes")[0]).toMatchObject({ servedBy: [], answerable: [] });
    expect(under("all-whose-flow-passes")[0]?.reason).toContain(
      "No active tie-in upstream, so no flow passes here.",
    );
    expect(under("next-downstream-tie-in")[0]?.reason).toContain("No active tie-in upstream");
  });
});

describe("reachFindings() puts agreements first", () => {
  const shares = [
    { propertyId: "B", parts: 2 },
    { propertyId: "Z", parts: 1 },
    { propertyId: "A", parts: 0 },
  ];
  const partial = anAgreement("G", { toStation: 6_000, shares });
  const facts = { points: [], properties: [aProperty("Z")] };

  test("reachFindings() follows a recorded agreement where it covers the reach, the rule elsewhere", () => {
    const reaches = reachesUnder({}, { ...facts, agreements: [partial] });
    expect(reaches.map((reach) => reach.answerable)).toEqual([["B", "Z"], ["B", "Z"], ["C"]]);
    expect(reaches[0]).toMatchObject({
      holder: "owners",
      citation: "“Sewer agreement”, recorded as 198404120331",
      reason:
        "“Sewer agreement”, recorded as 198404120331, covers 0.0 to 60.0 ft and outranks the authority’s rule.",
    });
  });

  test("reachFindings() tells beside an agreement what the rule says otherwise", () => {
    const [first] = reachesUnder(
      { pattern: "authority-in-right-of-way", boundary: "right-of-way-line" },
      { properties: [aProperty("Z")], agreements: [partial] },
    );
    expect(first?.holder).toBe("owners");
    expect(first?.reason).toContain(
      "By itself, the rule says: From the main up to the right-of-way line at 12.0 ft the pipe belongs to the authority: clearing is up to the owners; repair and replacement are up to the authority.",
    );
  });

  test("reachFindings() lets the later recording replace the earlier, and recorded come before signed", () => {
    const later = anAgreement("later", {
      title: "Amendment",
      recordedOn: "2019-05-02",
      recordingNumber: "201905020007",
      shares: [{ propertyId: "C", parts: 1 }],
    });
    const signed = anAgreement("new", {
      recordedOn: null,
      recordingNumber: "",
      shares: [{ propertyId: "A", parts: 1 }],
    });
    const consents = [aConsent("s", { kind: "agreement-signed", propertyId: "A" })];
    const [first] = reachesUnder({}, { ...facts, agreements: [signed, partial, later], consents });
    expect(first?.answerable).toEqual(["C"]);
    const [alone] = reachesUnder({}, { ...facts, agreements: [signed], consents });
    expect(alone?.answerable).toEqual(["A"]);
    expect(alone?.reason).toContain("signed by all in it and not recorded");
  });

  test("reachFindings() does not follow a draft that somebody has yet to sign", () => {
    const draft = { ...partial, recordedOn: null, recordingNumber: "" };
    const consents = [aConsent("s", { kind: "agreement-signed", propertyId: "B" })];
    const [first] = reachesUnder({}, { ...facts, agreements: [draft], consents });
    expect(first?.answerable).toEqual(["A", "B", "C"]);
  });
});
