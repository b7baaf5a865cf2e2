import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { consentTable } from "#lib/domain/consent/table.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { Ruling } from "#lib/domain/facts/ruling.ts";
import type { OptionKind, WorkOption } from "#lib/domain/facts/work-option.ts";
import { scopeSheet } from "#lib/domain/packet/sheets-job.ts";
import {
  mustChooseOption,
  optionInForce,
  scopeInForce,
  underOption,
} from "#lib/domain/sharing/scope-in-force.ts";
import { compareOptions, optionOutcomes } from "#lib/domain/split/option-outcomes.ts";
import { aReport } from "#tests/support/answers.ts";
import { aCrossing, aFile, anAgreement, anOffice, aScopeItem } from "#tests/support/file.ts";
import { aChoice, amountsOf, aPricedLine, divideLine } from "#tests/support/priced-line.ts";

const ABC = [
  { id: "A", station: 2_000 },
  { id: "B", station: 6_000 },
  { id: "C", station: 10_000 },
];

function anOption(id: string, kind: OptionKind = "other"): WorkOption {
  return { id, title: `Option ${id}`, kind, note: "" };
}

const PERMIT = aScopeItem("permit", {
  kind: "permit-fee",
  place: "general",
  from: null,
  to: null,
  quantity: 100,
  rate: 30_000,
});

/** A general permit of $300 in every option; a spot repair of $900, or a lining of $3,000. */
function twoWays(optionId: string | null, more: Partial<Omit<LineFile, "line">> = {}) {
  return aPricedLine(ABC, {
    line: { optionId },
    options: [anOption("spot", "spot-repair"), anOption("line", "lining")],
    scope: [
      PERMIT,
      aScopeItem("dig", { optionId: "spot", from: 1_000, to: 1_900, quantity: 900 }),
      aScopeItem("liner", { optionId: "line", from: 0, to: 10_000, quantity: 3_000 }),
    ],
    ...more,
  });
}

function ids(items: readonly { readonly id: string }[]): string[] {
  return items.map(({ id }) => id);
}

describe("scopeInForce() counts what is done", () => {
  test("scopeInForce() takes the items of every option and those of the chosen one", () => {
    expect(ids(scopeInForce(twoWays("spot").file))).toEqual(["permit", "dig"]);
    expect(ids(scopeInForce(twoWays("line").file))).toEqual(["permit", "liner"]);
  });

  test("scopeInForce() keeps to what the options have in common while none is chosen", () => {
    const { file } = twoWays(null);
    expect(ids(scopeInForce(file))).toEqual(["permit"]);
    expect(mustChooseOption(file)).toBe(true);
  });

  test("optionInForce() takes the only option as chosen, and none that is no longer there", () => {
    const options = [anOption("only")];
    expect(optionInForce({ options, line: { optionId: null } })).toBe("only");
    expect(optionInForce({ ...twoWays("gone").file })).toBeNull();
  });

  test("mustChooseOption() asks for no choice where the options differ in nothing", () => {
    const { file } = twoWays(null, { scope: [PERMIT] });
    expect(mustChooseOption(file)).toBe(false);
  });

  test("scopeInForce() lets agreed change orders alone add and drop work", () => {
    const order = (id: string, state: "proposed" | "agreed" | "refused") => ({
      id,
      number: 1,
      title: id,
      reason: "",
      state,
      orderedBy: "",
      orderedOn: "2026-11-20",
      note: "",
    });
    const file = aFile({
      changeOrders: [order("yes", "agreed"), order("open", "proposed"), order("no", "refused")],
      scope: [
        aScopeItem("old", { droppedById: "yes" }),
        aScopeItem("stays", { droppedById: "open" }),
        aScopeItem("kept", { droppedById: "no" }),
        aScopeItem("new", { addedById: "yes" }),
        aScopeItem("asked", { addedById: "open" }),
        aScopeItem("rejected", { addedById: "no" }),
      ],
    });
    expect(ids(scopeInForce(file))).toEqual(["stays", "kept", "new"]);
  });
});

describe("the split of each option", () => {
  test("optionOutcomes() splits each option by the same rule, to its own total", () => {
    const { file, found } = twoWays(null);
    const [spot, line] = optionOutcomes(file, found, aChoice("equal"));
    expect([spot?.total, line?.total]).toEqual([120_000, 330_000]);
    expect([spot?.inForce, line?.inForce]).toEqual([false, false]);
    expect(amountsOf(must(spot).outcome)).toEqual({ A: 40_000, B: 40_000, C: 40_000 });
    expect(amountsOf(must(line).outcome)).toEqual({ A: 110_000, B: 110_000, C: 110_000 });
  });

  test("splitOutcome() asks to choose while none is, and only where the amounts hang on it", () => {
    expect(divideLine(twoWays(null), "equal").refusal).toContain("Select one");
    expect(divideLine(twoWays("line"), "equal").refusal).toBeNull();
    expect(divideLine(twoWays(null, { scope: [PERMIT] }), "equal").refusal).toBeNull();
  });

  test("compareOptions() gives each payer's difference to the chosen option", () => {
    const { file, found } = twoWays("line");
    const [first] = compareOptions(optionOutcomes(file, found, aChoice("equal")));
    expect(first?.cells).toEqual([
      { amount: 40_000, difference: -70_000, leaves: false },
      { amount: 110_000, difference: null, leaves: false },
    ]);
  });
});

describe("the work that is not done", () => {
  const REFUSED = {
    id: "no",
    number: 1,
    title: "No",
    reason: "",
    state: "refused",
    orderedBy: "",
    orderedOn: "2026-11-20",
    note: "",
  } as const;
  const line = twoWays("spot", {
    changeOrders: [REFUSED],
    scope: [
      ...twoWays("spot").file.scope,
      aScopeItem("turned-down", { addedById: "no", from: 0, to: 1_000 }),
    ],
    crossings: [aCrossing("x", { propertyId: "A", from: 5_000, to: 6_000 })],
  });

  test("scopeSheet() prints neither another option's work nor a change that was refused", () => {
    const report = aReport({ tieIns: line.found.tieIns });
    const words = JSON.stringify(scopeSheet({ file: line.file, report, office: anOffice() }));
    expect(words).toContain("dig");
    expect(words).not.toContain("liner");
    expect(words).not.toContain("turned-down");
    expect(words).toContain("$1,200.00");
  });

  test("reachFindings() prices the pipe by the work in force alone", () => {
    const { reaches } = line.found;
    expect(reaches.reduce((sum, { cost }) => sum + cost, 0)).toBe(90_000);
  });

  test("consentTable() asks nobody to let another option's work onto the lot", () => {
    const digs = (optionId: string) => {
      const { file, found } = { ...line, file: underOption(line.file, optionId) };
      const rows = consentTable(file, aReport({ tieIns: found.tieIns }));
      return rows.find(({ propertyId }) => propertyId === "A")?.cells.dig.needed;
    };
    expect(digs("spot")).toBe(false);
    expect(digs("line")).toBe(true);
  });
});

describe("separate lines", () => {
  /** C gets a line of its own for $5,000; the trunk to B is mended for $6,000, with a $300 permit. */
  function separate(more: Partial<Omit<LineFile, "line">> = {}) {
    return aPricedLine(ABC, {
      line: { optionId: "apart" },
      options: [anOption("apart", "separate-lines"), anOption("line", "lining")],
      scope: [
        PERMIT,
        aScopeItem("own", {
          optionId: "apart",
          title: "New line for C",
          place: "branch",
          tieInId: "C",
          from: null,
          to: null,
          payerId: "C",
          quantity: 100,
          rate: 500_000,
        }),
        aScopeItem("trunk", { optionId: "apart", from: 0, to: 6_000, quantity: 6_000 }),
      ],
      ...more,
    });
  }

  test("splitOutcome() leaves who gets its own line out of everything else", () => {
    for (const rule of ["equal", "portion-used", "reach-owner"] as const) {
      const outcome = divideLine(separate(), rule);
      const { A = 0, B = 0, C } = amountsOf(outcome);
      expect(C).toBe(500_000);
      expect(A + B).toBe(630_000);
      expect(outcome.sentence).toContain(
        "C Fennel Row (it alone pays for “New line for C”) leaves",
      );
    }
    expect(amountsOf(divideLine(separate(), "equal"))).toMatchObject({ A: 315_000, B: 315_000 });
  });

  test("splitOutcome() keeps the same property in under an option of another kind", () => {
    const line = separate();
    const asLining = { ...line.file, options: [anOption("apart", "lining")] };
    const { A } = amountsOf(divideLine({ ...line, file: asLining }, "equal"));
    expect(A).toBeLessThan(315_000);
  });

  test("splitOutcome() lets a ruling on every tie-in of a property leave it out, the last one", () => {
    const ruling = (id: string, kind: Ruling["kind"], decidedOn: string): Ruling => ({
      id,
      tieInId: "B",
      kind,
      decidedBy: "Town engineer",
      decidedOn,
      dueOn: null,
      reference: "",
      uploadId: null,
      note: "",
      enteredBy: "",
    });
    const off = separate({ rulings: [ruling("r1", "own-connection", "2026-11-01")] });
    expect(amountsOf(divideLine(off, "equal"))).toEqual({ A: 630_000, C: 500_000 });
    const back = separate({
      rulings: [
        ruling("r2", "legalise", "2026-11-10"),
        ruling("r1", "own-connection", "2026-11-01"),
      ],
    });
    expect(amountsOf(divideLine(back, "equal"))).toMatchObject({ B: 315_000 });
  });

  test("splitOutcome() lets a recorded agreement bind who leaves until it is changed", () => {
    const agreed = separate({
      agreements: [
        anAgreement("deed", {
          recordedOn: "1998-04-01",
          shares: ["A", "B", "C"].map((propertyId) => ({ propertyId, parts: 1 })),
        }),
      ],
    });
    const outcome = divideLine(agreed, "recorded-shares");
    expect(outcome.sentence).toContain("An agreement still names C Fennel Row");
    expect(amountsOf(outcome)["C"]).toBeGreaterThan(500_000);
  });
});

test("optionOutcomes() adds every option up to its own total, and all have the common work", () => {
  const option = fc.constantFrom(null, "spot", "line", "apart");
  const work = fc.record({
    optionId: option,
    payerId: fc.constantFrom(null, null, "A", "B", "C"),
    from: fc.integer({ min: 0, max: 5_000 }),
    length: fc.integer({ min: 0, max: 5_000 }),
    rate: fc.integer({ min: 1, max: 99_999 }),
    general: fc.boolean(),
  });
  fc.assert(
    fc.property(fc.array(work, { minLength: 1, maxLength: 8 }), (rows) => {
      const { file, found } = aPricedLine(ABC, {
        options: [anOption("spot"), anOption("line"), anOption("apart", "separate-lines")],
        scope: rows.map(({ general, from, length, ...rest }, at) =>
          aScopeItem(`i${at}`, {
            ...rest,
            place: general ? "general" : "stretch",
            from: general ? null : from,
            to: general ? null : Math.min(from + length, 6_000),
            spread: "equally",
            quantity: 100,
          }),
        ),
      });
      for (const { option: each, total, outcome, leavers } of optionOutcomes(
        file,
        found,
        aChoice("equal"),
      )) {
        const counted = rows.filter(({ optionId }) => optionId === null || optionId === each.id);
        expect(total).toBe(counted.reduce((sum, { rate }) => sum + rate, 0));
        if (outcome.refusal !== null) continue;
        const amounts = amountsOf(outcome);
        expect(Object.values(amounts).reduce((sum, amount) => sum + amount, 0)).toBe(total);
        for (const { key } of leavers) {
          const own = counted.filter(({ payerId }) => payerId === key);
          expect(amounts[key]).toBe(own.reduce((sum, { rate }) => sum + rate, 0));
        }
      }
    }),
  );
});

function must<T>(value: T | undefined): T {
  if (value === undefined) throw new Error("Nothing there");
  return value;
}
