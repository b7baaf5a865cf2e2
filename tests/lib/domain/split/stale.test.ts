import { describe, expect, test } from "vitest";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { SplitChoice, SplitVersion } from "#lib/domain/facts/split.ts";
import type { SplitOutcome } from "#lib/domain/findings/outcome.ts";
import { splitOutcome } from "#lib/domain/split/outcomes.ts";
import { splitStanding } from "#lib/domain/split/stale.ts";
import { aProperty, aScopeItem, aSplit, aUnit } from "#tests/support/file.ts";
import { aChoice, aPricedLine, foundOf, type PricedLine } from "#tests/support/priced-line.ts";

const AB = [
  { id: "A", station: 1_000 },
  { id: "B", station: 2_000 },
];
const dig = aScopeItem("dig", { from: 0, to: 1_000, quantity: 1_000 });
const LINE = aPricedLine(AB, { scope: [dig] });

function frozen({ file, found }: PricedLine, choice: SplitChoice): SplitVersion {
  const outcome: SplitOutcome = splitOutcome(file, found, choice);
  return aSplit("v1", {
    ...choice,
    total: outcome.total,
    shares: outcome.shares,
    basis: outcome.basis,
  });
}

function standing(line: PricedLine, version: SplitVersion) {
  return splitStanding(line.file, line.found, version);
}

function withFile(line: PricedLine, changes: Partial<LineFile>): PricedLine {
  const file = { ...line.file, ...changes };
  return { file, found: foundOf(file, line.found.tieIns, line.found.extent) };
}

describe("splitStanding()", () => {
  test("splitStanding() stands while nothing that the amounts depend on has changed", () => {
    const version = frozen(LINE, aChoice("portion-used"));
    const renamed = withFile(LINE, {
      scope: [{ ...dig, title: "Dig by hand", note: "Night work" }],
    });
    expect(standing(renamed, version)).toEqual({
      stale: false,
      sentence: "Nothing the amounts depend on has changed.",
      changes: [],
    });
  });

  test("splitStanding() says how a price changed every amount", () => {
    const dearer = withFile(LINE, { scope: [{ ...dig, rate: 12_000 }] });
    expect(standing(dearer, frozen(LINE, aChoice("equal")))).toEqual({
      stale: true,
      sentence:
        "Out of date: the total went from $1,000.00 to $1,200.00; A Fennel Row would pay $100.00 more and B Fennel Row would pay $100.00 more.",
      changes: [
        { propertyId: "A", tieInId: null, label: "A Fennel Row", was: 50_000, now: 60_000 },
        { propertyId: "B", tieInId: null, label: "B Fennel Row", was: 50_000, now: 60_000 },
      ],
    });
  });

  test("splitStanding() names who is new and what the others would pay less", () => {
    const more = aPricedLine([...AB, { id: "T3", label: "T3", propertyId: null, station: 1_500 }], {
      scope: [{ ...dig, quantity: 600 }],
    });
    const before = withFile(LINE, { scope: [{ ...dig, quantity: 600 }] });
    expect(standing(more, frozen(before, aChoice("equal"))).sentence).toBe(
      "Out of date: T3 (owner unknown) is new; A Fennel Row would pay $100.00 less and B Fennel Row would pay $100.00 less.",
    );
  });

  test("splitStanding() names who no longer pays, also a tie-in since removed", () => {
    const three = aPricedLine(
      [...AB, { id: "T3", label: "T3", propertyId: null, station: 1_500 }],
      { scope: [dig] },
    );
    const { sentence, changes } = standing(LINE, frozen(three, aChoice("equal")));
    expect(sentence).toContain("A tie-in since removed (owner unknown) no longer pays");
    expect(changes.at(-1)).toMatchObject({ tieInId: "T3", was: 33_333, now: null });
  });

  test("splitStanding() goes stale by a station under a rule by place, and not under equal shares", () => {
    const moved = aPricedLine([{ id: "A", station: 900 }, AB[1] ?? { id: "B" }], { scope: [dig] });
    expect(standing(moved, frozen(LINE, aChoice("portion-used"))).stale).toBe(true);
    expect(standing(moved, frozen(LINE, aChoice("equal"))).stale).toBe(false);
  });

  test("splitStanding() goes stale by units and weights only where the rule counts them", () => {
    const units = withFile(LINE, { units: [aUnit("u1", "A"), aUnit("u2", "A")] });
    expect(standing(units, frozen(LINE, aChoice("per-unit"))).stale).toBe(true);
    expect(standing(units, frozen(LINE, aChoice("portion-used"))).stale).toBe(false);
    const weighed = withFile(LINE, {
      properties: [aProperty("A", { weight: 1 }), aProperty("B", { weight: 1 })],
    });
    const heavier = withFile(LINE, {
      properties: [aProperty("A", { weight: 3 }), aProperty("B", { weight: 1 })],
    });
    expect(standing(heavier, frozen(weighed, aChoice("weights"))).sentence).toBe(
      "Out of date: A Fennel Row would pay $250.00 more and B Fennel Row would pay $250.00 less.",
    );
  });

  test("splitStanding() is stale even where the amounts come out as they were", () => {
    const split = withFile(LINE, {
      scope: [
        { ...dig, quantity: 500 },
        { ...dig, id: "again", quantity: 500 },
      ],
    });
    expect(standing(split, frozen(LINE, aChoice("equal")))).toEqual({
      stale: true,
      sentence: "Out of date: facts behind the amounts changed; the amounts did not.",
      changes: [],
    });
  });

  test("splitStanding() says what to enter where the split cannot be worked out again", () => {
    const nowhere = withFile(LINE, { scope: [{ ...dig, to: null }] });
    expect(standing(nowhere, frozen(LINE, aChoice("portion-used"))).sentence).toBe(
      "Out of date and can’t be recalculated yet. Enter both ends of “dig”.",
    );
  });
});
