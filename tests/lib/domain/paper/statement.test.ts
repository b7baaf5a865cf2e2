import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { LineFacts } from "#lib/domain/facts/line.ts";
import { SPLIT_RULES } from "#lib/domain/facts/split.ts";
import type { SumStep } from "#lib/domain/findings/outcome.ts";
import { multiplyRatios, type Ratio, ratio } from "#lib/domain/money/ratio.ts";
import { statementOf, statementPlaces, statementsOf } from "#lib/domain/paper/statement.ts";
import { letterText } from "#lib/domain/paper/text.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import {
  aFile,
  anAddress,
  anOffice,
  aParty,
  aProperty,
  aRole,
  aScopeItem,
  aSplit,
  aTieIn,
} from "#tests/support/file.ts";
import { aPricedLine, divideLine } from "#tests/support/priced-line.ts";

const TODAY = "2026-11-25";

/**
 * Two houses: 12 joins at 20 ft, 14 at 50 ft. 40 ft of lining at $100.00 a foot from 10 ft, a
 * permit of $300.00 for the whole job. By portion used: 12 pays half of 10 ft, $500.00, and of the
 * permit 500/4000, $37.50; 14 pays the rest. Worked by hand.
 */
function twoHouses(line: Partial<LineFacts> = {}) {
  const facts = {
    properties: [
      aProperty("p12", { address: anAddress("12 Fennel Row") }),
      aProperty("p14", { address: anAddress("14 Fennel Row") }),
    ],
    parties: [
      aParty("ottilie", { name: "Ottilie Brandvold" }),
      aParty("otto", { name: "Otto Brandvold" }),
      aParty("jesus", { name: "Jesús Peña", language: "es" as const }),
    ],
    roles: [aRole("ottilie", "p12"), aRole("otto", "p12"), aRole("jesus", "p14")],
    tieIns: [
      aTieIn("T1", { station: 2_000, propertyId: "p12", ownerAccepted: true }),
      aTieIn("T2", { station: 5_000, propertyId: "p14", ownerAccepted: true }),
    ],
    scope: [
      aScopeItem("lining", {
        title: "Lining",
        place: "stretch",
        from: 1_000,
        to: 5_000,
        quantity: 4_000,
        unit: "ft",
        rate: 10_000,
      }),
      aScopeItem("permit", {
        title: "Permit",
        place: "general",
        from: null,
        to: null,
        quantity: 100,
        unit: "job",
        rate: 30_000,
      }),
    ],
    line: { upperEnd: 6_000, ...line },
  };
  const bare = aFile(facts);
  const outcome = reportOn(bare, TODAY).splits.find(({ choice }) => choice.rule === "portion-used");
  if (outcome === undefined) throw new Error("The rule by portion used gives no outcome");
  const split = aSplit("split-1", {
    ...outcome.choice,
    number: 2,
    total: outcome.total,
    basis: outcome.basis,
    reason: "Asked for by all",
    shares: outcome.shares.map(({ propertyId, tieInId, amount, recoverable }) => ({
      propertyId,
      tieInId,
      amount,
      recoverable,
    })),
  });
  const file = aFile({ ...facts, splits: [split] });
  return { file, report: reportOn(file, TODAY), office: anOffice() };
}

function textOf(propertyId: string, line = {}) {
  const statement = statementOf({ ...twoHouses(line), propertyId });
  if (statement === null) throw new Error("No statement");
  const text = letterText({ ...statement, kind: "proposed-split" });
  return { statement, text: text.replaceAll(/\s+/g, " ") };
}

describe("statementOf()", () => {
  test("statementOf() writes each piece with cost, how many share and their part", () => {
    const { statement } = textOf("p12");
    const sum = statement.blocks.find(
      (block) => block.kind === "table" && block.head[4] === "Shared",
    );
    expect(sum).toMatchObject({
      rows: [
        ["Lining", "10.0 to 50.0 ft", "40 ft × $100.00", "$4,000.00", "", ""],
        ["", "10.0 to 20.0 ft (10.0 ft of 40.0 ft)", "", "$1,000.00", "by 2 (÷ 2)", "$500.00"],
        ["Permit", "whole job", "1 job × $300.00", "$300.00", "× 1/8", "$37.50"],
        ["Total", "", "", "$4,300.00", "", "$537.50"],
      ],
      totals: 1,
    });
  });

  test("statementOf() shows how the fraction for the whole job comes about", () => {
    expect(textOf("p12").text).toContain("× 1/8: your $500.00 of the $4,000.00");
  });

  test("statementOf() says that a piece is theirs alone, in their own language", () => {
    const { statement, text } = textOf("p14");
    expect(statement.language).toBe("es");
    expect(text).toContain("solo usted");
    expect(text).toContain("$3,762.50");
  });

  test("statementOf() names all holders of its own title and nobody else’s, nor others’ amounts", () => {
    const { statement, text } = textOf("p12");
    expect(statement.to[0]).toBe("Ottilie Brandvold & Otto Brandvold");
    expect(text).not.toContain("Jesús");
    expect(text).toContain("14 Fennel Row");
    expect(text).not.toContain("$3,762.50");
  });

  test("statementOf() shows the others’ amounts and the other rules where the office decided so", () => {
    expect(textOf("p12", { statementOthers: true }).text).toContain("$3,762.50");
    const withRules = textOf("p12", { statementRules: true }).text;
    expect(withRules).toContain("YOUR SHARE UNDER OTHER RULES");
    expect(withRules).not.toContain("$3,762.50");
    expect(textOf("p12").text).not.toContain("UNDER OTHER RULES");
  });

  test("statementOf() says where they join and which part of the pipe they use", () => {
    const { text } = textOf("p12");
    expect(text).toContain("joins the shared pipe at 20.0 ft");
    expect(text).toContain("0.0 to 20.0 ft from the main: 20.0 ft of the 60.0 ft");
  });

  test("statementOf() leaves the steps out, and says so, once the facts have changed", () => {
    const { file, office } = twoHouses();
    const [lining, ...rest] = file.scope;
    if (lining === undefined) throw new Error("No scope");
    const dearer = { ...file, scope: [{ ...lining, rate: 20_000 }, ...rest] };
    const report = reportOn(dearer, TODAY);
    const statement = statementOf({ file: dearer, report, office, propertyId: "p12" });
    const text = JSON.stringify(statement?.blocks);
    expect(text).toContain("do not rely on this statement");
    expect(text).not.toContain("÷ 2");
  });

  test("statementOf() speaks of the owner where no name is known, and gives nothing before a split", () => {
    const { file, report, office } = twoHouses();
    const nameless = { ...file, roles: [], parties: [] };
    const statement = statementOf({ file: nameless, report, office, propertyId: "p12" });
    expect(statement?.to[0]).toBe("The owner of 12 Fennel Row");
    const early = { ...file, splits: [] };
    expect(statementOf({ file: early, report, office, propertyId: "p12" })).toBeNull();
  });
});

test("statementOf() goes to the mailing address of an owner who lives elsewhere", () => {
  const input = twoHouses();
  const parties = input.file.parties.map((party) =>
    party.id === "jesus"
      ? {
          ...party,
          mailing: anAddress("PO Box 77", { city: "Dry Mesa", state: "NV", zip: "89000" }),
        }
      : party,
  );
  const file = { ...input.file, parties };
  expect(statementOf({ ...input, file, propertyId: "p14" })?.to).toEqual([
    "Jesús Peña",
    "PO Box 77",
    "Dry Mesa, NV 89000",
  ]);
  expect(statementOf({ ...input, propertyId: "p14" })?.to).toContain("14 Fennel Row");
});

test("statementsOf() keeps the order asked for and leaves out what is gone", () => {
  const input = twoHouses();
  const subjects = statementsOf(input, ["p14", "gone", "p12"]).map(({ subject }) => subject);
  expect(subjects).toEqual([
    "Desglose de la parte de 14 Fennel Row",
    "Statement for 12 Fennel Row",
  ]);
  expect(statementPlaces(input.file)).toEqual(["p12", "p14"]);
});

test("every step of a sum is its cost times its part, under every rule", () => {
  const stations = fc.array(fc.integer({ min: 1, max: 60 }), { minLength: 1, maxLength: 16 });
  fc.assert(
    fc.property(
      stations,
      fc.integer({ min: 1, max: 99_999 }),
      fc.constantFrom(...SPLIT_RULES),
      (feet, cents, rule) => {
        const line = aPricedLine(
          feet.map((each, index) => ({ id: `T${index}`, station: each * 100 })),
          {
            scope: [
              aScopeItem("a", {
                place: "stretch",
                from: 0,
                to: Math.max(...feet) * 100,
                quantity: 100,
                rate: cents,
              }),
              aScopeItem("b", { place: "general", from: null, to: null, rate: 777 }),
            ],
          },
        );
        const outcome = divideLine(line, rule, { payerId: "T0", faultStation: 0 });
        for (const step of outcome.shares.flatMap(({ steps }) => steps)) {
          expect(worked(step)).toEqual(parsed(step.exact));
          const { sharers, part } = step.piece;
          if (sharers !== null) expect(part).toBe(`1/${sharers}`);
        }
      },
    ),
  );
});

function worked({ piece }: SumStep): Ratio {
  return multiplyRatios(parsed(piece.cost), parsed(piece.part));
}

function parsed(exact: string): Ratio {
  const [top = "0", bottom = "1"] = exact.split("/");
  return ratio(BigInt(top), BigInt(bottom));
}
