import { expect, test } from "vitest";
import type { LetterKind } from "#lib/domain/facts/notice.ts";
import { recipientsOf } from "#lib/domain/paper/recipients.ts";
import { aHold } from "#tests/support/answers.ts";
import { aRole, aSplit, aTestDay, aTestStop } from "#tests/support/file.ts";
import { sampleLine } from "#tests/support/sample-line.ts";

function parties(kind: LetterKind, line = sampleLine()): string[] {
  return recipientsOf(line.file, line.report, kind).map(({ partyId }) => partyId);
}

test("recipientsOf() a finding are all owners and owners of crossed lots, no tenant", () => {
  expect(parties("finding")).toEqual(["ottilie", "jesus", "larkspur", "lodz", "nils", "georgina"]);
});

test("recipientsOf() counts a party once for a property, however many roles it has there", () => {
  const { file, report } = sampleLine();
  const twice = { ...file, roles: [...file.roles, aRole("ottilie", "p12", { role: "manager" })] };
  expect(parties("work-start", { ...sampleLine(), file: twice, report })).toEqual([
    "ottilie",
    "jesus",
    "larkspur",
    "tenant",
    "lodz",
    "nils",
    "georgina",
  ]);
});

test("recipientsOf() an inquiry are people of candidate addresses, each with the tie-in asked about", () => {
  const { file, report } = sampleLine();
  const found = recipientsOf(file, report, "tie-in-inquiry");
  expect(found.map(({ partyId }) => partyId)).toContain("nils");
  expect(new Set(found.map(({ tieInId }) => tieInId))).toEqual(new Set(["T3"]));
});

test("recipientsOf() an inquiry are none once the owner has accepted the tie-in", () => {
  const { file, report } = sampleLine();
  const tieIns = report.tieIns.map((finding) => ({
    ...finding,
    tieIn: { ...finding.tieIn, ownerAccepted: true },
  }));
  expect(recipientsOf(file, { ...report, tieIns }, "tie-in-inquiry")).toEqual([]);
});

test("recipientsOf() a test visit are people of the addresses that a day to come is planned for", () => {
  const { file, report } = sampleLine();
  const stop = aTestStop("p12", { tieInIds: ["T3"] });
  const day = aTestDay([stop, { ...stop, startsAt: "10:00" }], { on: report.today });
  const planned = { ...sampleLine(), file: { ...file, testDays: [day] } };
  // Whoever is asked to keep water off is written to as well: those above, and the candidate.
  expect(parties("test-visit", planned)).toEqual(["ottilie", "larkspur", "tenant", "lodz", "nils"]);
  const past = { ...sampleLine(), file: { ...file, testDays: [{ ...day, on: "2026-01-02" }] } };
  expect(parties("test-visit", past)).toEqual(parties("test-visit"));
  expect(parties("test-visit")).toContain("nils");
});

test("recipientsOf() a proposed split are owners with a share, never tenants", () => {
  const { file, report } = sampleLine();
  expect(parties("proposed-split")).toEqual(["ottilie", "jesus", "larkspur", "lodz"]);
  const found = recipientsOf(file, report, "proposed-split");
  expect(new Set(found.map(({ splitId }) => splitId))).toEqual(new Set(["split-1"]));
});

test("recipientsOf() a proposed split takes the latest version", () => {
  const { file, report } = sampleLine();
  const newer = aSplit("split-2", {
    number: 3,
    shares: [{ propertyId: "p12", tieInId: null, amount: 1, recoverable: 0 }],
  });
  const line = { ...sampleLine(), file: { ...file, splits: [newer, ...file.splits] } };
  expect(recipientsOf(line.file, report, "proposed-split").map(({ splitId }) => splitId)).toEqual([
    "split-2",
  ]);
});

test("recipientsOf() a demand leaves out who is not decided, below level 5, or held", () => {
  // 16 Fennel Row rests on a pairing that nobody has accepted.
  expect(parties("share-demand")).toEqual(["ottilie", "jesus", "lodz"]);
  const { file, report } = sampleLine();
  const weaker = {
    ...report,
    tieIns: report.tieIns.map((finding) =>
      finding.tieIn.id === "T5" ? { ...finding, level: 4 as const } : finding,
    ),
  };
  expect(parties("share-demand", { ...sampleLine(), report: weaker })).toEqual([
    "ottilie",
    "jesus",
  ]);
  const held = { ...report, holds: [aHold("tie-in-undecided:T1", { subjectId: "T1" })] };
  expect(parties("share-demand", { ...sampleLine(), file, report: held })).toEqual([
    "jesus",
    "lodz",
  ]);
});

test("recipientsOf() a demand takes an owner's own acceptance below level 5", () => {
  const { report } = sampleLine();
  const accepted = {
    ...report,
    tieIns: report.tieIns.map((finding) =>
      finding.tieIn.id === "T5"
        ? { ...finding, level: 1 as const, tieIn: { ...finding.tieIn, ownerAccepted: true } }
        : finding,
    ),
  };
  expect(parties("share-demand", { ...sampleLine(), report: accepted })).toContain("lodz");
});

test("recipientsOf() a pause of drains are occupants, and owners where no occupant is known", () => {
  expect(parties("drain-pause")).toEqual(["ottilie", "jesus", "tenant", "lodz", "nils"]);
});

test("recipientsOf() a consent to enter are owners of lots that the work touches", () => {
  expect(parties("entry-consent")).toEqual(["georgina"]);
});

test("recipientsOf() an answer to the authority are public bodies, about no property", () => {
  const { file, report } = sampleLine();
  expect(recipientsOf(file, report, "authority-response")).toEqual([
    { partyId: "utility", propertyId: null, tieInId: null, splitId: null },
  ]);
});
