import { describe, expect, test } from "vitest";
import { aProperty, aScopeItem } from "#tests/support/file.ts";
import { aPricedLine, divideLine } from "#tests/support/priced-line.ts";

const dig = aScopeItem("dig", { from: 0, to: 3_000, quantity: 3_000 });
const ABC = [
  { id: "A", station: 1_000 },
  { id: "B", station: 1_000 },
  { id: "C", station: 3_000 },
];

describe("standAloneTest()", () => {
  test("standAloneTest() names the group that pays too much and by how much", () => {
    expect(divideLine(aPricedLine(ABC, { scope: [dig] }), "equal").standAlone).toEqual({
      passes: false,
      group: ["A", "B"],
      excess: 100_000,
      sentence:
        "A Fennel Row and B Fennel Row together pay $1,000.00 more than it would cost to repair only the pipe they use.",
    });
  });

  test("standAloneTest() passes where nobody pays for others", () => {
    expect(divideLine(aPricedLine(ABC, { scope: [dig] }), "portion-used").standAlone).toEqual({
      passes: true,
      group: [],
      excess: 0,
      sentence:
        "No group of neighbors pays more than it would cost to repair only the pipe they use.",
    });
  });

  test("standAloneTest() leaves general work and items with one payer out, and says so", () => {
    const scope = [
      dig,
      aScopeItem("permit", { place: "general", from: null, to: null, spread: "equally" }),
      aScopeItem("upgrade", { payerId: "A" }),
    ];
    const { standAlone } = divideLine(aPricedLine(ABC, { scope }), "portion-used");
    expect(standAlone?.passes).toBe(true);
    expect(standAlone?.sentence).toContain("are left out on both sides");
  });

  test("standAloneTest() finds a payer whom none of the pipe serves", () => {
    const line = aPricedLine(ABC, { properties: [aProperty("Z")], scope: [dig] });
    expect(divideLine(line, "single-payer", { payerId: "Z" }).standAlone).toMatchObject({
      group: ["Z"],
      excess: 300_000,
    });
  });

  test("standAloneTest() counts both branches of a property that comes through two of them", () => {
    const line = aPricedLine(
      [
        { id: "S1", propertyId: null, station: 1_000 },
        { id: "S2", propertyId: null, station: 1_000 },
        { id: "A1", propertyId: "A", parentId: "S1", station: 100 },
        { id: "A2", propertyId: "A", parentId: "S2", station: 100 },
        { id: "B1", propertyId: "B", parentId: "S1", station: 200 },
        { id: "C1", propertyId: "C", parentId: "S2", station: 200 },
      ],
      {
        scope: [
          aScopeItem("one", { place: "branch", tieInId: "S1", quantity: 1_000 }),
          aScopeItem("two", { place: "branch", tieInId: "S2", quantity: 1_000 }),
        ],
      },
    );
    // A pays all $2,000 for two branches that cost just that: nobody pays too much.
    expect(divideLine(line, "single-payer", { payerId: "A" }).standAlone?.passes).toBe(true);
    expect(divideLine(line, "single-payer", { payerId: "B" }).standAlone).toMatchObject({
      group: ["B"],
      excess: 100_000,
    });
  });
});
