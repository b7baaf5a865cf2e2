import { describe, expect, test } from "vitest";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { crossingUses } from "#lib/domain/responsibility/crossing-uses.ts";
import { aCrossing, anAgreement, aProperty, aScopeItem } from "#tests/support/file.ts";
import { amountsOf, aPricedLine, divideLine, exactOf } from "#tests/support/priced-line.ts";

// Rules of sharing as they really appear, each with the source that was read; arithmetic done by hand
// from the published rule where the source prints no amounts (said so beside). What is our own is in
// tests/derived.

const TODAY = "2026-11-25";

/** A line of three with $1 a foot, and one item over the whole need. */
function threeNeeds(needs: readonly [number, number, number], total: number) {
  const ids = ["A", "B", "C"] as const;
  return aPricedLine(
    ids.map((id, at) => ({ id, station: needs[at] ?? 0 })),
    {
      properties: ids.map((id, at) => ({ ...aProperty(id), weight: needs[at] ?? 0 })),
      scope: [aScopeItem("all", { from: 0, to: needs[2], quantity: 100, rate: total })],
    },
  );
}

describe("in proportion to need", () => {
  // https://thoughtfulexaminations.com/?p=19583 prints whole dollars beside the sequential shares.
  test("needs of 1500, 2200 and 3000 pay 672, 985 and 1343 of 3000", () => {
    const amounts = amountsOf(divideLine(threeNeeds([1_500, 2_200, 3_000], 300_000), "weights"));
    expect(Object.values(amounts).map((cents) => Math.round(cents / 100))).toEqual([
      672, 985, 1343,
    ]);
  });

  test("needs of 1500, 2200 and 3500 pay 729, 1069 and 1701 of 3500", () => {
    const amounts = amountsOf(divideLine(threeNeeds([1_500, 2_200, 3_500], 350_000), "weights"));
    expect(Object.values(amounts).map((cents) => Math.round(cents / 100))).toEqual([
      729, 1069, 1701,
    ]);
  });

  test("and stand beside 500, 850 and 1650 by the portion used, on the same page", () => {
    const amounts = amountsOf(
      divideLine(threeNeeds([1_500, 2_200, 3_000], 300_000), "portion-used"),
    );
    expect(amounts).toEqual({ A: 50_000, B: 85_000, C: 165_000 });
  });
});

test("by equivalent dwellings (HDWD: house 1.0, multifamily unit 0.75, mobile home 0.60)", () => {
  // https://hdwd.com/229/Sewer-Maintenance-Fees; a house, four flats and a mobile home: 1 + 3 + 0.6.
  const line = aPricedLine(
    [
      { id: "house", station: 1_000 },
      { id: "flats", station: 2_000 },
      { id: "mobile", station: 3_000 },
    ],
    {
      properties: [
        { ...aProperty("house"), weight: 1 },
        { ...aProperty("flats"), weight: 3 },
        { ...aProperty("mobile"), weight: 0.6 },
      ],
      scope: [aScopeItem("job", { from: 0, to: 1_000, quantity: 100, rate: 1_000_000 })],
    },
  );
  const outcome = divideLine(line, "weights");
  expect(amountsOf(outcome)).toEqual({ house: 217_391, flats: 652_174, mobile: 130_435 });
  expect(exactOf(outcome)["flats"]).toBe("15000000/23");
});

test("Conn. Gen. Stat. § 47-42f(d): who damages it pays alone, as an item with one payer; the rest by the rule", () => {
  // https://instalawyer.io/laws/connecticut-general-statutes/section-47-42f-maintenance-of
  const line = aPricedLine(
    [
      { id: "A", station: 2_000 },
      { id: "B", station: 4_000 },
    ],
    {
      scope: [
        aScopeItem("crushed", { payerId: "A", quantity: 100, rate: 120_000 }),
        aScopeItem("worn", { quantity: 100, rate: 80_000 }),
      ],
    },
  );
  expect(amountsOf(divideLine(line, "equal"))).toEqual({ A: 160_000, B: 40_000 });
});

test("Donner v. Blue, 187 Wn. App. 51: repair costs go to the uphill users; the crossed lot that uses nothing pays nothing", () => {
  // http://law.justia.com/cases/washington/court-of-appeals-division-i/2015/71441-4.html: “We affirm the
  // trial court's order allocating repair costs to the uphill respondents.” How it divided them is not in
  // the part that was read; that nobody below the fault pays is our rule's, not the court's.
  const line = aPricedLine(
    [
      { id: "up-1", station: 6_000 },
      { id: "up-2", station: 8_000 },
    ],
    {
      properties: [aProperty("lot", { stake: "crossed" })],
      crossings: [aCrossing("x", { propertyId: "lot", from: 2_000, to: 4_000 })],
      scope: [
        aScopeItem("fix", {
          place: "point",
          from: 3_000,
          to: null,
          quantity: 100,
          rate: 900_000,
          allegedCause: "roots of the trees on the lot",
        }),
      ],
    },
  );
  const outcome = divideLine(line, "upstream-of-fault", { faultStation: 3_000 });
  expect(Object.keys(amountsOf(outcome))).toEqual(["up-1", "up-2"]);
  expect(outcome.total).toBe(900_000);
  expect(crossingUses(line.file, line.found.reaches)[0]?.uses).toBe("none");
  expect(reportOn(line.file, TODAY).holds.map(({ key }) => key)).toContain("easement-missing:x");
});

test("Everett record 1451359: installing the shared meter is paid in equal thirds, by the lot without a house too", () => {
  // https://lfportal.everettwa.gov/WebLink/0/doc/1451359/Page64.aspx, a shared WATER line: a lot that is
  // denied a building permit pays no running costs, but “all three lots owners shall contribute equally
  // to the cost of labor and materials”. So an instrument may bind a lot that is not connected.
  const line = aPricedLine(
    [
      { id: "A", station: 2_000 },
      { id: "B", station: 4_000 },
    ],
    {
      properties: [aProperty("unbuilt")],
      agreements: [
        anAgreement("record", {
          recordedOn: "1990-01-01",
          shares: ["A", "B", "unbuilt"].map((propertyId) => ({ propertyId, parts: 1 })),
        }),
      ],
      scope: [aScopeItem("job", { quantity: 100, rate: 90_000 })],
    },
  );
  expect(amountsOf(divideLine(line, "recorded-shares"))).toEqual({
    A: 30_000,
    B: 30_000,
    unbuilt: 30_000,
  });
});
