import { describe, expect, test } from "vitest";
import { SPLIT_RULES } from "#lib/domain/facts/split.ts";
import { presentChoice, splitOutcomes } from "#lib/domain/split/outcomes.ts";
import {
  aFile,
  anAgreement,
  anAnchor,
  anObservation,
  aProperty,
  aRun,
  aScopeItem,
  aSplit,
  aUnit,
} from "#tests/support/file.ts";
import {
  amountsOf,
  aPricedLine,
  divideLine,
  exactOf,
  wordsOf,
} from "#tests/support/priced-line.ts";

/** Main at 0 ft; A at 20, B (two units) at 60, C at 100 ft; 10 to 70 ft is mended at $100 a foot. */
const FOUR_POINT_TWO = aPricedLine(
  [
    { id: "A", station: 2_000 },
    { id: "B", station: 6_000 },
    { id: "C", station: 10_000 },
  ],
  {
    units: [aUnit("a1", "A"), aUnit("b1", "B"), aUnit("b2", "B"), aUnit("c1", "C")],
    scope: [aScopeItem("trench", { from: 1_000, to: 7_000, quantity: 6_000 })],
  },
);

describe("one job, five answers", () => {
  test("splitOutcome() shares equally per owner", () => {
    const outcome = divideLine(FOUR_POINT_TWO, "equal");
    expect(outcome.total).toBe(600_000);
    expect(amountsOf(outcome)).toEqual({ A: 200_000, B: 200_000, C: 200_000 });
    expect(wordsOf(outcome, "A")).toEqual(["10.0–70.0 ft: $6,000.00 ÷ 3"]);
    expect(outcome.oddCents).toBe("Every share comes out in whole cents.");
  });

  test("splitOutcome() shares by dwelling unit", () => {
    const outcome = divideLine(FOUR_POINT_TWO, "per-unit");
    expect(amountsOf(outcome)).toEqual({ A: 150_000, B: 300_000, C: 150_000 });
    expect(wordsOf(outcome, "B")).toEqual(["10.0–70.0 ft: $6,000.00 × 2 ÷ 4 units"]);
  });

  test("splitOutcome() shares by the portion used, the last cent to C", () => {
    const outcome = divideLine(FOUR_POINT_TWO, "portion-used");
    expect(amountsOf(outcome)).toEqual({ A: 33_333, B: 233_333, C: 333_334 });
    expect(exactOf(outcome)).toEqual({ A: "100000/3", B: "700000/3", C: "1000000/3" });
    expect(wordsOf(outcome, "C")).toEqual([
      "10.0–20.0 ft at $100.00 a foot: $1,000.00 ÷ 3",
      "20.0–60.0 ft at $100.00 a foot: $4,000.00 ÷ 2",
      "60.0–70.0 ft at $100.00 a foot: $1,000.00, alone",
    ]);
    expect(outcome.oddCents).toBe(
      "Every share was rounded down to the cent and 1 cent was left after rounding. It went to the shares that lost the most, and among equal ones to the tie-in farthest upstream: C Fennel Row.",
    );
  });

  test("splitOutcome() shares among those who join above the fault", () => {
    const outcome = divideLine(FOUR_POINT_TWO, "upstream-of-fault", { faultStation: 4_000 });
    expect(amountsOf(outcome)).toEqual({ A: 0, B: 300_000, C: 300_000 });
    expect(wordsOf(outcome, "A")).toEqual([]);
    expect(wordsOf(outcome, "B")).toEqual(["10.0–70.0 ft: $6,000.00 ÷ 2 at or above 40.0 ft"]);
  });

  test("splitOutcome() gives each reach to the owner of the next tie-in above it", () => {
    const outcome = divideLine(FOUR_POINT_TWO, "reach-owner");
    expect(amountsOf(outcome)).toEqual({ A: 100_000, B: 400_000, C: 100_000 });
  });
});

describe("splitOutcomes()", () => {
  test("splitOutcomes() answers for every rule in their order, each total the same", () => {
    const outcomes = splitOutcomes(FOUR_POINT_TWO.file, FOUR_POINT_TWO.found);
    expect(outcomes.map((outcome) => outcome.choice.rule)).toEqual([...SPLIT_RULES]);
    expect(new Set(outcomes.map((outcome) => outcome.total))).toEqual(new Set([600_000]));
  });

  test("presentChoice() keeps what the latest version of the rule chose", () => {
    const splits = [
      aSplit("1", { number: 1, rule: "single-payer", payerId: "A" }),
      aSplit("3", { number: 3, rule: "single-payer", payerId: "C", unknownShares: "held-apart" }),
      aSplit("2", { number: 2, rule: "single-payer", payerId: "B" }),
    ];
    expect(presentChoice(aFile({ splits }), "single-payer")).toEqual({
      rule: "single-payer",
      faultStation: null,
      payerId: "C",
      unknownShares: "held-apart",
    });
  });

  test("presentChoice() treats unknown owners as the latest version did, else holds them apart", () => {
    expect(presentChoice(aFile(), "equal").unknownShares).toBe("held-apart");
    const splits = [aSplit("1", { rule: "equal", unknownShares: "carried" })];
    expect(presentChoice(aFile({ splits }), "weights").unknownShares).toBe("carried");
  });

  test("presentChoice() takes the only fault that the camera placed, and no guess among several", () => {
    const seen = (id: string, counter: number) =>
      anObservation(id, { kind: "fault", fault: "roots", counter });
    const run = { runs: [aRun("run")], anchors: [anAnchor("run")] };
    const one = aFile({ ...run, observations: [seen("f1", 3_400)] });
    expect(presentChoice(one, "upstream-of-fault").faultStation).toBe(3_400);
    expect(presentChoice(one, "equal").faultStation).toBeNull();
    const two = aFile({ ...run, observations: [seen("f1", 3_400), seen("f2", 5_000)] });
    expect(presentChoice(two, "upstream-of-fault").faultStation).toBeNull();
  });

  test("presentChoice() takes what two runs saw of one fault for one, from its lower end", () => {
    const crack = { kind: "fault", fault: "crack" } as const;
    const file = aFile({
      runs: [aRun("up"), aRun("down", { looks: "downstream" })],
      anchors: [anAnchor("up"), anAnchor("down", { counter: 0, station: 10_000 })],
      observations: [
        anObservation("a", { runId: "up", ...crack, counter: 2_860, toCounter: 3_260 }),
        anObservation("b", { runId: "down", ...crack, counter: 6_740, toCounter: 7_140 }),
      ],
    });
    expect(presentChoice(file, "upstream-of-fault").faultStation).toBe(2_860);
  });

  test("presentChoice() takes the only placed point where no fault was placed", () => {
    const scope = [
      aScopeItem("spot", { place: "point", from: 4_100, to: null }),
      aScopeItem("permit", { place: "general", from: null, to: null }),
    ];
    expect(presentChoice(aFile({ scope }), "upstream-of-fault").faultStation).toBe(4_100);
  });
});

describe("placing", () => {
  const AB = [
    { id: "A", station: 2_000 },
    { id: "B", station: 6_000 },
  ];

  test("splitOutcome() gives a point to those who join there or above", () => {
    const at = (from: number) =>
      amountsOf(
        divideLine(
          aPricedLine(AB, {
            scope: [aScopeItem("spot", { place: "point", from, to: null, quantity: 100 })],
          }),
          "portion-used",
        ),
      );
    expect(at(0)).toEqual({ A: 5_000, B: 5_000 });
    expect(at(2_000)).toEqual({ A: 5_000, B: 5_000 });
    expect(at(2_001)).toEqual({ A: 0, B: 10_000 });
    expect(at(6_000)).toEqual({ A: 0, B: 10_000 });
  });

  test("splitOutcome() treats a stretch of no length as a point", () => {
    const line = aPricedLine(AB, { scope: [aScopeItem("spot", { from: 1_000, to: 1_000 })] });
    const outcome = divideLine(line, "portion-used");
    expect(amountsOf(outcome)).toEqual({ A: 50_000, B: 50_000 });
    expect(wordsOf(outcome, "A")).toEqual(["at 10.0 ft: $1,000.00 ÷ 2"]);
  });

  test("splitOutcome() turns a stretch given from top to bottom", () => {
    const scope = [aScopeItem("dig", { from: 6_000, to: 0, quantity: 6_000 })];
    expect(amountsOf(divideLine(aPricedLine(AB, { scope }), "portion-used"))).toEqual({
      A: 100_000,
      B: 500_000,
    });
  });

  test("splitOutcome() writes a part of the length where a foot has no price in whole cents", () => {
    const scope = [aScopeItem("dig", { from: 0, to: 3_000, quantity: 100, rate: 100_001 })];
    const outcome = divideLine(aPricedLine(AB, { scope }), "portion-used");
    expect(wordsOf(outcome, "B")).toEqual([
      "0.0–20.0 ft: $1,000.01 × 20.0 ÷ 30.0 ft ÷ 2",
      "20.0–30.0 ft: $1,000.01 × 10.0 ÷ 30.0 ft, alone",
    ]);
  });

  test("splitOutcome() refuses work where nobody’s flow passes, and says what to do", () => {
    const scope = [aScopeItem("Top end", { from: 5_000, to: 7_000 })];
    const line = aPricedLine(AB, { scope });
    expect(divideLine(line, "portion-used").refusal).toBe(
      "“Top end” lies on 60.0–70.0 ft, but no one’s flow passes there. Shorten it, or give it its own payer or rule.",
    );
    expect(divideLine(line, "reach-owner").refusal).toContain("no tie-in above is responsible");
    expect(divideLine(line, "equal").refusal).toBeNull();
  });

  test("splitOutcome() refuses work beyond the upper end or below the main", () => {
    const beyond = aPricedLine(AB, {
      line: { upperEnd: 6_000 },
      scope: [aScopeItem("Too long", { from: 5_000, to: 6_100 })],
    });
    expect(divideLine(beyond, "portion-used").refusal).toBe(
      "“Too long” reaches 61.0 ft, but the line ends at 60.0 ft. Correct one of the two.",
    );
    const below = aPricedLine(AB, { scope: [aScopeItem("Too low", { from: -100, to: 500 })] });
    expect(divideLine(below, "reach-owner").refusal).toContain("below the main connection");
  });

  test("splitOutcome() asks for the place of an item only where the rule needs it", () => {
    const scope = [
      aScopeItem("Somewhere", { from: 100, to: null }),
      aScopeItem("Spot", { place: "point", from: null, to: null }),
    ];
    const line = aPricedLine(AB, { scope });
    expect(divideLine(line, "portion-used").refusal).toBe("Enter both ends of “Somewhere”.");
    const equal = divideLine(line, "equal");
    expect(equal.refusal).toBeNull();
    expect(equal.standAlone).toBeNull();
    const spot = aPricedLine(AB, { scope: scope.slice(1) });
    expect(divideLine(spot, "reach-owner").refusal).toBe("Enter the station of “Spot”.");
  });

  test("splitOutcome() asks for the station of a tie-in only where the rule needs it", () => {
    const line = aPricedLine([...AB, { id: "C", label: "T3", station: null }], {
      scope: [aScopeItem("dig")],
    });
    for (const rule of ["portion-used", "reach-owner", "upstream-of-fault"] as const) {
      expect(divideLine(line, rule, { faultStation: 100 }).refusal).toBe(
        "T3 has no station yet. Enter it, or give the camera run a point of known station.",
      );
    }
    expect(amountsOf(divideLine(line, "equal"))).toEqual({ A: 33_333, B: 33_334, C: 33_333 });
  });

  test("splitOutcome() gives one step the sum of an item that runs over very many pieces", () => {
    const tieIns = Array.from({ length: 20 }, (_, index) => ({
      id: `P${String(index).padStart(2, "0")}`,
      station: (index + 1) * 100,
    }));
    const scope = [aScopeItem("dig", { from: 0, to: 2_000, quantity: 2_000 })];
    for (const rule of ["portion-used", "reach-owner"] as const) {
      const outcome = divideLine(aPricedLine(tieIns, { scope }), rule);
      for (const share of outcome.shares) {
        expect(share.steps.map((step) => step.exact)).toEqual([share.exact]);
      }
      expect(wordsOf(outcome, "P00")).toEqual([
        `0.0–20.0 ft, $2,000.00 in 20 pieces, each among its own payers: ${rule === "portion-used" ? "0.05" : "1.00"} ft of 20.00 ft`,
      ]);
    }
  });
});

describe("branches and several tie-ins", () => {
  test("splitOutcome() gives work on a branch to those behind it, by nested branches too", () => {
    const line = aPricedLine(
      [
        { id: "A", station: 1_000 },
        { id: "B", station: 3_000 },
        { id: "B1", station: 500, parentId: "B" },
        { id: "B2", station: 800, parentId: "B1" },
      ],
      {
        scope: [
          aScopeItem("stem", { place: "branch", tieInId: "B", quantity: 300 }),
          aScopeItem("leaf", { place: "branch", tieInId: "B2", quantity: 100 }),
        ],
      },
    );
    for (const rule of ["equal", "portion-used", "per-unit", "reach-owner"] as const) {
      expect(amountsOf(divideLine(line, rule))).toEqual({
        A: 0,
        B: 10_000,
        B1: 10_000,
        B2: 20_000,
      });
    }
    expect(wordsOf(divideLine(line, "equal"), "B2")).toEqual([
      "branch at B: $300.00 ÷ 3 behind it",
      "branch at B2: $100.00, alone behind it",
    ]);
  });

  test("splitOutcome() takes a nested tie-in’s flow into the trunk where its branch joins", () => {
    const line = aPricedLine(
      [
        { id: "A", station: 1_000 },
        { id: "B", station: 3_000 },
        { id: "B1", station: 5_000, parentId: "B" },
      ],
      { scope: [aScopeItem("dig", { from: 1_000, to: 3_000, quantity: 2_000 })] },
    );
    expect(amountsOf(divideLine(line, "portion-used"))).toEqual({ A: 0, B: 100_000, B1: 100_000 });
  });

  test("splitOutcome() counts a property once that connects through two tie-ins", () => {
    const line = aPricedLine(
      [
        { id: "T1", propertyId: "A", station: 1_000 },
        { id: "T2", propertyId: "B", station: 2_000 },
        { id: "T3", propertyId: "A", station: 3_000 },
      ],
      { scope: [aScopeItem("dig", { from: 0, to: 3_000, quantity: 3_000 })] },
    );
    expect(amountsOf(divideLine(line, "equal"))).toEqual({ A: 150_000, B: 150_000 });
    expect(amountsOf(divideLine(line, "portion-used"))).toEqual({ A: 200_000, B: 100_000 });
    expect(amountsOf(divideLine(line, "reach-owner"))).toEqual({ A: 200_000, B: 100_000 });
  });

  test("splitOutcome() refuses a branch behind which nobody takes part, or that is not named", () => {
    const line = aPricedLine([{ id: "A", station: 1_000 }], {
      scope: [aScopeItem("Cap", { place: "branch", tieInId: null })],
    });
    expect(divideLine(line, "equal").refusal).toBe("Choose the branch on which “Cap” is done.");
  });

  test("splitOutcome() says that a property without units counts as one", () => {
    const line = aPricedLine(
      [
        { id: "A", station: 1_000 },
        { id: "B", station: 2_000 },
      ],
      { units: [aUnit("a1", "A"), aUnit("a2", "A")], scope: [aScopeItem("dig")] },
    );
    const outcome = divideLine(line, "per-unit");
    expect(amountsOf(outcome)).toEqual({ A: 66_667, B: 33_333 });
    expect(outcome.sentence).toContain("B Fennel Row has no units entered and counts as one.");
  });
});

describe("items with a rule or a payer of their own", () => {
  const AB = [
    { id: "A", station: 1_000 },
    { id: "B", station: 2_000 },
  ];

  test("splitOutcome() lets one property pay an item alone, connected or not", () => {
    const line = aPricedLine(AB, {
      properties: [aProperty("Z")],
      scope: [aScopeItem("dig"), aScopeItem("upgrade", { payerId: "Z" })],
    });
    const outcome = divideLine(line, "equal");
    expect(amountsOf(outcome)).toEqual({ A: 50_000, B: 50_000, Z: 100_000 });
    expect(wordsOf(outcome, "Z")).toEqual(["$1,000.00, the only payer of this item"]);
  });

  test("splitOutcome() leaves a property out that neither takes part nor pays", () => {
    const line = aPricedLine(AB, { properties: [aProperty("Z")], scope: [aScopeItem("dig")] });
    expect(Object.keys(amountsOf(divideLine(line, "equal")))).toEqual(["A", "B"]);
  });

  test("splitOutcome() divides an item by its own rule and the rest by the chosen one", () => {
    const line = aPricedLine(AB, {
      scope: [
        aScopeItem("dig", { from: 0, to: 2_000, quantity: 2_000, rule: "portion-used" }),
        aScopeItem("liner", { from: 0, to: 2_000, quantity: 1_000 }),
      ],
    });
    expect(amountsOf(divideLine(line, "equal"))).toEqual({ A: 100_000, B: 200_000 });
  });

  test("splitOutcome() refuses a payer that is not on the line", () => {
    const line = aPricedLine(AB, { scope: [aScopeItem("dig", { payerId: "nobody" })] });
    expect(divideLine(line, "equal").refusal).toBe(
      "“dig” names a payer that is not on this line. Select another.",
    );
  });

  test("splitOutcome() names the item whose own rule lacks something", () => {
    const line = aPricedLine(AB, { scope: [aScopeItem("dig", { rule: "weights" })] });
    expect(divideLine(line, "equal").refusal).toBe(
      "“dig” has its own rule. Enter a weight for A Fennel Row and B Fennel Row.",
    );
  });
});

describe("general work", () => {
  const AB = [
    { id: "A", station: 1_000 },
    { id: "B", station: 2_000 },
  ];
  const dig = aScopeItem("dig", { from: 0, to: 2_000, quantity: 2_000 });
  const permit = aScopeItem("permit", { place: "general", from: null, to: null, quantity: 400 });

  test("splitOutcome() spreads general work as the placed work falls", () => {
    const outcome = divideLine(aPricedLine(AB, { scope: [dig, permit] }), "portion-used");
    expect(amountsOf(outcome)).toEqual({ A: 60_000, B: 180_000 });
    expect(wordsOf(outcome, "A")).toEqual([
      "0.0–10.0 ft at $100.00 a foot: $1,000.00 ÷ 2",
      "$400.00 × 1/4, its share of the located work",
    ]);
  });

  test("splitOutcome() spreads general work equally where the item says so", () => {
    const equally = { ...permit, spread: "equally" as const };
    const outcome = divideLine(aPricedLine(AB, { scope: [dig, equally] }), "portion-used");
    expect(amountsOf(outcome)).toEqual({ A: 70_000, B: 170_000 });
  });

  test("splitOutcome() lets general work with a rule of its own follow the trunk’s work by that rule", () => {
    const own = { ...permit, rule: "portion-used" as const };
    expect(amountsOf(divideLine(aPricedLine(AB, { scope: [dig, own] }), "equal"))).toEqual({
      A: 110_000,
      B: 130_000,
    });
    const perUnit = { ...permit, rule: "per-unit" as const };
    const line = aPricedLine(AB, {
      units: [aUnit("b1", "B"), aUnit("b2", "B"), aUnit("b3", "B")],
      scope: [dig, perUnit],
    });
    expect(amountsOf(divideLine(line, "portion-used"))).toEqual({ A: 60_000, B: 180_000 });
  });

  test("splitOutcome() refuses general work that has no placed work to follow, where places matter", () => {
    const line = aPricedLine(AB, { scope: [permit] });
    expect(divideLine(line, "portion-used").refusal).toBe(
      "“permit” is prorated over located work, and nothing has a location yet. Give the work a location, or allocate this item equally.",
    );
    expect(amountsOf(divideLine(line, "equal"))).toEqual({ A: 20_000, B: 20_000 });
  });

  test("splitOutcome() leaves all general work to a single payer", () => {
    const equally = { ...permit, id: "equally", spread: "equally" as const };
    const line = aPricedLine(AB, { scope: [dig, permit, equally] });
    expect(amountsOf(divideLine(line, "single-payer", { payerId: "B" }))).toEqual({
      A: 0,
      B: 280_000,
    });
  });
});

describe("weights, recorded shares and one payer", () => {
  const AB = [
    { id: "A", station: 1_000 },
    { id: "B", station: 2_000 },
  ];

  test("splitOutcome() divides by weights with decimals exactly", () => {
    const line = aPricedLine(AB, {
      properties: [aProperty("A", { weight: 0.1 }), aProperty("B", { weight: 0.2 })],
      scope: [aScopeItem("dig")],
    });
    const outcome = divideLine(line, "weights");
    expect(exactOf(outcome)).toEqual({ A: "100000/3", B: "200000/3" });
    expect(wordsOf(outcome, "A")).toEqual(["0.0–10.0 ft: $1,000.00 × 0.1 ÷ 0.3 by weight"]);
  });

  test("splitOutcome() refuses weights that are missing, below zero or all zero", () => {
    const refusal = (a: number | null, b: number | null) =>
      divideLine(
        aPricedLine(AB, {
          properties: [aProperty("A", { weight: a }), aProperty("B", { weight: b })],
          scope: [aScopeItem("dig")],
        }),
        "weights",
      ).refusal;
    expect(refusal(null, 1)).toBe("Enter a weight for A Fennel Row.");
    expect(refusal(-1, 1)).toBe("Enter a weight of 0 or more for A Fennel Row.");
    expect(refusal(0, 0)).toBe("All weights are 0. Enter at least one weight above 0.");
    expect(refusal(0, 1)).toBeNull();
  });

  const agreement = anAgreement("G", {
    shares: [
      { propertyId: "A", parts: 1 },
      { propertyId: "Z", parts: 2 },
    ],
  });

  test("splitOutcome() follows the recorded parts, and says who is not named", () => {
    const line = aPricedLine(AB, {
      properties: [aProperty("Z")],
      agreements: [agreement],
      scope: [aScopeItem("dig")],
    });
    const outcome = divideLine(line, "recorded-shares");
    expect(amountsOf(outcome)).toEqual({ A: 33_333, B: 0, Z: 66_667 });
    expect(outcome.sentence).toBe(
      "Each pays the shares the agreement states. “Sewer agreement”, recorded as 198404120331, covers the whole line. B Fennel Row is connected but not named in it and pays nothing of what it covers.",
    );
  });

  test("splitOutcome() refuses work outside of what the agreements cover", () => {
    const line = aPricedLine(AB, {
      properties: [aProperty("Z")],
      agreements: [{ ...agreement, fromStation: 0, toStation: 1_000 }],
      scope: [aScopeItem("dig", { from: 500, to: 1_500 })],
    });
    expect(divideLine(line, "recorded-shares").refusal).toBe(
      "“dig” lies on 10.0–15.0 ft, but no agreement covers it. Enter the agreement that does, or give the item its own payer or rule.",
    );
  });

  test("splitOutcome() takes each stretch by the agreement that covers it", () => {
    const line = aPricedLine(AB, {
      agreements: [
        anAgreement("low", { toStation: 1_000, shares: [{ propertyId: "A", parts: 1 }] }),
        anAgreement("high", { fromStation: 1_000, shares: [{ propertyId: "B", parts: 1 }] }),
      ],
      scope: [aScopeItem("dig", { from: 500, to: 2_000, quantity: 1_500 })],
    });
    expect(amountsOf(divideLine(line, "recorded-shares"))).toEqual({ A: 50_000, B: 100_000 });
  });

  test("splitOutcome() refuses recorded shares without an agreement that counts, or without parts", () => {
    const refusal = (agreements: (typeof agreement)[]) =>
      divideLine(
        aPricedLine(AB, { properties: [aProperty("Z")], agreements, scope: [aScopeItem("dig")] }),
        "recorded-shares",
      ).refusal;
    expect(refusal([])).toBe("No agreement is entered. Enter it with each property’s share.");
    expect(refusal([{ ...agreement, recordedOn: null, recordingNumber: "" }])).toContain(
      "neither recorded nor signed for every property in it",
    );
    expect(refusal([{ ...agreement, shares: [] }])).toContain("states no shares");
    expect(refusal([{ ...agreement, shares: [{ propertyId: "gone", parts: 1 }] }])).toContain(
      "not on this line",
    );
  });

  test("splitOutcome() asks who the one payer is", () => {
    const line = aPricedLine(AB, { scope: [aScopeItem("dig")] });
    expect(divideLine(line, "single-payer").refusal).toBe("Select the property that pays.");
    expect(divideLine(line, "single-payer", { payerId: "gone" }).refusal).toContain(
      "Select another",
    );
    const outcome = divideLine(line, "single-payer", { payerId: "A" });
    expect(amountsOf(outcome)).toEqual({ A: 100_000, B: 0 });
    expect(outcome.sentence).toContain("A Fennel Row pays for everything");
  });
});

describe("unknown owners", () => {
  const THREE = [
    { id: "A", station: 1_000 },
    { id: "T2", label: "T2", propertyId: null, station: 2_000 },
    { id: "C", station: 3_000 },
  ];
  const scope = [aScopeItem("dig", { from: 0, to: 3_000, quantity: 3_000 })];

  test("splitOutcome() holds an unknown owner’s share apart", () => {
    const outcome = divideLine(aPricedLine(THREE, { scope }), "portion-used");
    expect(amountsOf(outcome)).toEqual({ A: 33_333, T2: 83_333, C: 183_334 });
    expect(outcome.shares[1]).toMatchObject({
      propertyId: null,
      tieInId: "T2",
      label: "T2 (owner unknown)",
    });
    expect(outcome.sentence).toContain(
      "T2 (owner unknown): its share is set aside until the owner is known.",
    );
    expect(outcome.shares.every((share) => share.recoverable === 0)).toBe(true);
  });

  test("splitOutcome() lets the others carry it, and says how much each may recover", () => {
    const outcome = divideLine(aPricedLine(THREE, { scope }), "portion-used", {
      unknownShares: "carried",
    });
    expect(amountsOf(outcome)).toEqual({ A: 50_000, C: 250_000 });
    expect(outcome.shares.map((share) => share.recoverable)).toEqual([16_667, 66_666]);
    expect(outcome.sentence).toContain("the others cover its share, recoverable");
  });

  test("splitOutcome() has everyone carry what only an unknown owner uses", () => {
    const line = aPricedLine(
      [
        { id: "A", station: 1_000 },
        { id: "B", station: 2_000 },
        { id: "T3", propertyId: null, station: 3_000 },
      ],
      { scope: [aScopeItem("dig", { from: 2_000, to: 3_000 })] },
    );
    for (const rule of ["portion-used", "reach-owner"] as const) {
      const outcome = divideLine(line, rule, { unknownShares: "carried" });
      expect(amountsOf(outcome)).toEqual({ A: 50_000, B: 50_000 });
      expect(outcome.shares.map((share) => share.recoverable)).toEqual([50_000, 50_000]);
      expect(wordsOf(outcome, "A")).toEqual([
        "20.0–30.0 ft: $1,000.00 ÷ 2, carried for an unknown owner",
      ]);
      expect(outcome.standAlone?.passes).toBe(false);
    }
  });

  test("splitOutcome() cannot weigh an unknown owner held apart, and gives it nothing when carried", () => {
    const line = aPricedLine(THREE, {
      scope,
      properties: [aProperty("A", { weight: 1 }), aProperty("C", { weight: 2 })],
    });
    expect(divideLine(line, "weights").refusal).toBe(
      "T2 (owner unknown) can’t have a weight yet. Identify the owner, or let the others cover the share.",
    );
    const carried = divideLine(line, "weights", { unknownShares: "carried" });
    expect(amountsOf(carried)).toEqual({ A: 100_000, C: 200_000 });
    expect(carried.shares.every((share) => share.recoverable === 0)).toBe(true);
    expect(carried.sentence).toContain("this rule gives an unknown owner no share");
  });

  test("splitOutcome() refuses to have nobody carry an unknown owner", () => {
    const line = aPricedLine([{ id: "T1", propertyId: null, station: 100 }], { scope });
    expect(divideLine(line, "equal", { unknownShares: "carried" }).refusal).toContain(
      "no one to cover their share",
    );
    expect(amountsOf(divideLine(line, "equal"))).toEqual({ T1: 300_000 });
  });

  test("splitOutcome() does not count a shared branch as one more unknown owner", () => {
    const line = aPricedLine(
      [
        { id: "stem", propertyId: null, station: 2_000 },
        { id: "A", parentId: "stem", station: 100 },
        { id: "B", parentId: "stem", station: 200 },
      ],
      { scope: [aScopeItem("dig")] },
    );
    expect(amountsOf(divideLine(line, "equal"))).toEqual({ A: 50_000, B: 50_000 });
  });
});

describe("nothing to divide", () => {
  test("splitOutcome() says so where no work is priced", () => {
    const outcome = divideLine(aPricedLine([{ id: "A", station: 100 }]), "equal");
    expect(outcome).toMatchObject({
      refusal: "No work is priced yet. Enter the work items.",
      total: 0,
      shares: [],
      standAlone: null,
    });
  });

  test("splitOutcome() says so where nobody takes part", () => {
    const outcome = divideLine(aPricedLine([], { scope: [aScopeItem("dig")] }), "equal");
    expect(outcome.refusal).toBe(
      "No active tie-in yet. Enter the tie-ins and the property each one serves.",
    );
    expect(outcome.total).toBe(100_000);
  });

  test("splitOutcome() shares work that costs nothing", () => {
    const line = aPricedLine([{ id: "A", station: 1_000 }], {
      scope: [aScopeItem("free", { rate: 0 })],
    });
    expect(amountsOf(divideLine(line, "portion-used"))).toEqual({ A: 0 });
  });

  test("splitOutcome() leaves dead tie-ins out", () => {
    const line = aPricedLine(
      [
        { id: "A", station: 100 },
        { id: "B", station: 200 },
      ],
      { scope: [aScopeItem("dig")] },
    );
    const tieIns = line.found.tieIns.map((finding) => ({
      ...finding,
      live: finding.propertyId === "A",
    }));
    const outcome = divideLine({ file: line.file, found: { ...line.found, tieIns } }, "equal");
    expect(amountsOf(outcome)).toEqual({ A: 100_000 });
  });

  test("splitOutcome() takes a credit off in the same way", () => {
    const line = aPricedLine(
      [
        { id: "A", station: 1_000 },
        { id: "B", station: 1_000 },
      ],
      { scope: [aScopeItem("dig"), aScopeItem("discount", { rate: -1_001, quantity: 100 })] },
    );
    const outcome = divideLine(line, "portion-used");
    expect(outcome.total).toBe(98_999);
    expect(amountsOf(outcome)).toEqual({ A: 49_500, B: 49_499 });
  });
});
