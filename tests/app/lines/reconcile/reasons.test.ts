import { describe, expect, test } from "vitest";
import {
  ACCEPT_REASONS,
  fittingReason,
  fittingRefusal,
  REFUSE_REASONS,
  reasonFrom,
} from "#app/lines/[lineId]/reconcile/reasons.ts";
import type { ProposedPairing } from "#lib/domain/findings/report.ts";
import { likenessReasons } from "#lib/domain/reconcile/likeness.ts";
import { sureProposals } from "#lib/domain/report/pairs-now.ts";
import { aStationed } from "#tests/support/answers.ts";
import { aTieIn } from "#tests/support/file.ts";
import { aFinding } from "#tests/support/report.ts";

const SAME: ProposedPairing = {
  entryId: "e1",
  tieInId: "t1",
  distance: 40,
  rawDistance: 280,
  tolerance: 100,
  band: "same",
  reasons: [],
  nearTie: false,
};

describe("reasonFrom()", () => {
  test.each([
    ["", "  ", null],
    ["", " It was seen ", "It was seen"],
    ["Same place", "", "Same place"],
    ["Same place", "and size", "Same place. and size"],
  ])("reasonFrom(%j, %j) is %j", (chosen, written, reason) => {
    expect(reasonFrom(chosen, written)).toBe(reason);
  });
});

describe("fittingReason()", () => {
  test("fittingReason() speaks of the zero only where the record's own reading is too far off", () => {
    expect(fittingReason(SAME)).toBe(ACCEPT_REASONS[1]);
    expect(fittingReason({ ...SAME, rawDistance: -100 })).toBe(ACCEPT_REASONS[0]);
  });

  test("fittingReason() leaves a conflict and a near tie to the person", () => {
    expect(fittingReason({ ...SAME, band: "conflict" })).toBe("");
    expect(fittingReason({ ...SAME, nearTie: true })).toBe("");
  });
});

test("fittingReason() says nothing of a side or size that record and camera tell differently", () => {
  const traits = {
    material: "unknown",
    fitting: "unknown",
    propertyId: null,
    diameter: 4,
  } as const;
  const reasons = likenessReasons({ ...traits, side: "left" }, { ...traits, side: "right" });
  const other = { ...SAME, rawDistance: 0, band: "likely" as const, reasons };
  expect(fittingReason(other)).toBe("Same place; the record gives another side or size");
  expect(fittingReason({ ...other, rawDistance: 400 })).toBe("");
});

describe("sureProposals()", () => {
  test("sureProposals() leaves out what is only likely and what has a rival", () => {
    const likely: ProposedPairing = { ...SAME, entryId: "e2", band: "likely" };
    const rival: ProposedPairing = { ...SAME, entryId: "e3", nearTie: true };
    expect(sureProposals({ proposals: [likely, SAME, rival], tieIns: [] })).toEqual([SAME]);
  });

  test("sureProposals() leaves out a tie-in whose sightings contradict one another", () => {
    const seen = (station: number) => aStationed("o", { station, uncertainty: 100 });
    const at = (...stations: number[]) => [
      aFinding("t1", { tieIn: aTieIn("t1"), sightings: stations.map(seen) }),
    ];
    expect(sureProposals({ proposals: [SAME], tieIns: at(6_600, 6_700) })).toEqual([SAME]);
    expect(sureProposals({ proposals: [SAME], tieIns: at(6_600, 6_950) })).toEqual([]);
  });
});

test("fittingRefusal() has a reason ready where a pairing contradicts itself, and only there", () => {
  expect(fittingRefusal({ ...SAME, band: "conflict", distance: 4_300 })).toBe(REFUSE_REASONS[0]);
  expect(fittingRefusal({ ...SAME, band: "conflict", distance: 0 })).toBe(REFUSE_REASONS[1]);
  expect(fittingRefusal(SAME)).toBe("");
});
