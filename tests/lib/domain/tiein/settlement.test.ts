import { expect, test } from "vitest";
import type { TieIn } from "#lib/domain/facts/line.ts";
import type { TieInTest } from "#lib/domain/facts/test.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { provenSettlement } from "#lib/domain/tiein/settlement.ts";
import {
  aFile,
  anAnchor,
  anEntry,
  anObservation,
  aProperty,
  aRecord,
  aRun,
  aTest,
  aTieIn,
} from "#tests/support/file.ts";

const ONCE = [aTest("a", "t", { propertyId: "14" })];
const TWICE = [...ONCE, aTest("b", "t", { propertyId: "14" })];

function proven(tests: readonly TieInTest[], tieIn: Partial<TieIn> = {}) {
  const file = aFile({
    properties: [aProperty("14")],
    records: [aRecord("card")],
    entries: [anEntry("e", { distance: 8_000, explanation: "Never built", explainedBy: "Ruth" })],
    runs: [aRun("run")],
    anchors: [anAnchor("run")],
    tieIns: [aTieIn("t", { kind: "unknown", ...tieIn })],
    observations: [anObservation("o", { counter: 3_650, tieInId: "t" })],
    tests,
  });
  const [finding] = reportOn(file, "2026-11-25").tieIns;
  if (finding === undefined) throw new Error("There is no tie-in");
  return provenSettlement(finding, tests);
}

test("provenSettlement() puts to a person what dye seen twice, or digging, has proven", () => {
  expect(proven(TWICE)).toEqual({ kind: "building", propertyId: "14", shownBy: "dye" });
  const dug = [aTest("a", "t", { kind: "excavation", propertyId: "14" })];
  expect(proven(dug)).toMatchObject({ propertyId: "14", shownBy: "digging" });
});

test("provenSettlement() puts nothing where dye was seen once, or a person has settled it", () => {
  expect(proven(ONCE)).toBe(null);
  expect(proven(TWICE, { propertyId: "14", settledBy: "Dana Okafor" })).toBe(null);
});
