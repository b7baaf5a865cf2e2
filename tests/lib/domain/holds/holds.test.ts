import { expect, test } from "vitest";
import type { Hold } from "#lib/domain/facts/hold.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { isStopped } from "#lib/domain/stops/stopped-by.ts";
import {
  aCrossing,
  aFile,
  anAnchor,
  anAuthority,
  anEntry,
  anObservation,
  aPairing,
  aProperty,
  aRecord,
  aRule,
  aRun,
  aTest,
  aTieIn,
  aWaiver,
} from "#tests/support/file.ts";

const RULED = {
  authority: anAuthority({ rules: [aRule("rule")] }),
  line: { authorityId: "authority-1", ruleId: "rule" },
};

function holdsOf(overrides: Parameters<typeof aFile>[0]): readonly Hold[] {
  return reportOn(aFile({ ...RULED, ...overrides }), "2026-11-25").holds;
}

/** An undocumented branch at 36.5 ft, with a record that shows another. */
const FOUND = {
  records: [aRecord("card")],
  entries: [anEntry("e", { distance: 8_000, explanation: "Never built", explainedBy: "Ruth" })],
  runs: [aRun("run")],
  anchors: [anAnchor("run")],
  tieIns: [aTieIn("t", { label: "T3", kind: "unknown" })],
  observations: [anObservation("o", { counter: 3_650, tieInId: "t" })],
  properties: [aProperty("14")],
};

function foundWith(overrides: Omit<Partial<LineFile>, "line">): readonly Hold[] {
  return holdsOf({ ...FOUND, ...overrides });
}

test("an undocumented tie-in of unknown owner stops capping, lining, bursting, the final split and demands", () => {
  const [hold, ...rest] = foundWith({});
  expect(rest).toEqual([]);
  expect(hold).toMatchObject({
    key: "tie-in-owner-unknown:t",
    subjectLabel: "T3",
    stops: ["capping", "lining", "bursting", "final-split", "demand"],
    stretch: { from: 3_550, to: 3_750 },
    waiver: null,
  });
  expect(hold?.sentence).toBe(
    "T3 at 36.5 ft is not on record and its owner is not proven. Nothing shows the owner yet.",
  );
});

const DYED_ONCE = [aTest("a", "t", { propertyId: "14" })];
const DYED_TWICE = [...DYED_ONCE, aTest("b", "t", { propertyId: "14" })];

test("dye seen once leaves the hold; dye seen twice with a control lets the pipe be worked", () => {
  expect(foundWith({ tests: DYED_ONCE }).map(({ key }) => key)).toEqual(["tie-in-owner-unknown:t"]);
  expect(isStopped(foundWith({ tests: DYED_TWICE }), "lining")).toBe(false);
});

test("what tests have shown holds cap, split and demand until a person has settled it so", () => {
  const [hold, ...rest] = foundWith({ tests: DYED_TWICE });
  expect(rest).toEqual([]);
  expect(hold).toMatchObject({
    key: "tie-in-undecided:t",
    sentence: "Tests show that T3 at 36.5 ft serves 14 Fennel Row; no one has settled it yet.",
    stops: ["capping", "final-split", "demand"],
  });
  const tieIns = [aTieIn("t", { kind: "building", propertyId: "14", settledBy: "Dana Okafor" })];
  expect(foundWith({ tests: DYED_TWICE, tieIns })).toEqual([]);
});

test("a tie-in that was settled against what tests show stops as if nobody knew whose it is", () => {
  const tieIns = [aTieIn("t", { kind: "building", propertyId: "18", settledBy: "Dana Okafor" })];
  const properties = [aProperty("14"), aProperty("18")];
  const file = aFile({ ...RULED, ...FOUND, tests: DYED_TWICE, tieIns, properties });
  const { holds, tieIns: found } = reportOn(file, "2026-11-25");
  expect(holds.map(({ key }) => key)).toEqual(["tie-in-owner-unknown:t"]);
  expect(found[0]).toMatchObject({ propertyId: "18", level: 3 });
  expect(found[0]?.levelReason).toMatch(
    /^It is assigned to 18 Fennel Row, but tests say otherwise. Dye from 14 Fennel Row/,
  );
});

test("tests against the owner of a tie-in on record stop a demand until that is settled", () => {
  const entries = [anEntry("e", { distance: 3_650, propertyId: "18" })];
  const properties = [aProperty("14"), aProperty("18")];
  const on = { entries, properties, pairings: [aPairing("e", "t")] };
  expect(foundWith(on)).toEqual([]);
  const holds = foundWith({ ...on, tests: DYED_ONCE });
  expect(holds.map(({ key, sentence }) => [key, sentence])).toEqual([
    [
      "tie-in-undecided:t",
      "T3 at 36.5 ft is assigned to 18 Fennel Row, but tests point to 14 Fennel Row.",
    ],
  ]);
  const tieIns = [aTieIn("t", { propertyId: "18", ownerAccepted: true })];
  expect(foundWith({ ...on, tests: DYED_ONCE, tieIns })).toEqual([]);
});

test("the owner's written word lifts the hold, a person's guess does not", () => {
  const settled = { propertyId: "14", settledBy: "Dana Okafor", settledReason: "Nearest house" };
  const guessed = [aTieIn("t", { kind: "building", ...settled })];
  const accepted = [aTieIn("t", { kind: "building", ...settled, ownerAccepted: true })];
  expect(foundWith({ tieIns: guessed })).toHaveLength(1);
  expect(foundWith({ tieIns: accepted })).toEqual([]);
});

test("a waiver stays with its hold, and then the hold stops nothing", () => {
  const waivers = [aWaiver("tie-in-owner-unknown:t"), aWaiver("easement-missing:x")];
  const holds = foundWith({ waivers });
  expect(holds[0]?.waiver?.by).toBe("Dana Okafor");
  expect(isStopped(holds, "lining")).toBe(false);
  expect(isStopped(foundWith({}), "lining")).toBe(true);
  expect(isStopped(foundWith({}), "digging")).toBe(false);
});

test("a proposed pairing holds the tie-in until a person accepts or refuses it, and the entry not twice", () => {
  const entries = [anEntry("e", { distance: 3_650, propertyId: "14" })];
  expect(foundWith({ entries }).map(({ key }) => key)).toEqual(["tie-in-undecided:t"]);
  expect(foundWith({ entries, pairings: [aPairing("e", "t")] })).toEqual([]);
});

test("an entry not seen holds submission and the final split until explained", () => {
  const entries = [
    anEntry("e", { label: "Shop 22", distance: 8_000 }),
    anEntry("f", { distance: 3_650 }),
  ];
  const hold = foundWith({ entries }).find(({ cause }) => cause === "entry-undecided");
  expect(hold).toMatchObject({ key: "entry-undecided:e", stops: ["final-split", "submission"] });
});

test("an entry whose place is in doubt holds lining as well, and no stretch bounds it", () => {
  const entries = [anEntry("e", { label: "Shop 22", distance: 8_000 })];
  const hold = foundWith({ entries }).find(({ cause }) => cause === "entry-place-unclear");
  expect(hold).toMatchObject({ key: "entry-place-unclear:e", stretch: null });
  expect(hold?.stops).toEqual(["lining", "bursting", "final-split", "submission"]);
});

test("an entry not inspected holds lining: a branch nobody saw would be shut", () => {
  const entries = [anEntry("e", { label: "Shop 22", distance: 8_000 })];
  const runs = [aRun("run", { toCounter: 5_000 })];
  const hold = foundWith({ entries, runs }).find(({ cause }) => cause === "entry-not-inspected");
  expect(hold?.stops).toContain("lining");
});

test("a relative-only tie-in holds digging", () => {
  const hold = foundWith({ anchors: [] }).find(({ cause }) => cause === "station-relative-only");
  expect(hold).toMatchObject({ key: "station-relative-only:t" });
  expect(hold?.stops).toContain("digging");
});

test("an old septic line is thought dead, not proven dead, and holds capping", () => {
  const settled = { settledBy: "Dana Okafor", settledReason: "Runs to the old tank" };
  const tieIns = [aTieIn("t", { label: "T3", kind: "old-septic-line", ...settled })];
  const pairings = [aPairing("e", "t")];
  const [hold] = foundWith({ tieIns, pairings });
  expect(hold?.sentence).toContain("believed inactive but not proven");
  const dead = tieIns.map((tieIn) => ({ ...tieIn, inactive: true }));
  expect(foundWith({ tieIns: dead, pairings })).toEqual([]);
});

test("a yard drain holds until a named person settles that it is one", () => {
  const drain = aTieIn("t", { kind: "yard-drain" });
  expect(foundWith({ tieIns: [drain] }).map(({ key }) => key)).toEqual(["tie-in-undecided:t"]);
  expect(foundWith({ tieIns: [{ ...drain, settledBy: "Dana Okafor" }] })).toEqual([]);
});

test("unclear responsibility holds as one unbroken stretch, keyed by where it lies", () => {
  const authority = anAuthority({ rules: [aRule("rule", { pattern: "unclear" })] });
  const holds = holdsOf({ authority, points: [], line: { ...RULED.line, upperEnd: 8_000 } });
  expect(holds.map(({ key }) => key)).toEqual(["responsibility-unclear:0-8000"]);
});

test.each([
  ["unknown", true],
  ["none", true],
  ["recorded", false],
] as const)("a crossed lot whose easement is %s holds digging: %s", (easement, holds) => {
  const crossings = [aCrossing("x", { propertyId: "9", from: 7_600, to: 9_000, easement })];
  const found = holdsOf({ crossings, properties: [aProperty("9")] });
  expect(found.map(({ key }) => key)).toEqual(holds ? ["easement-missing:x"] : []);
  if (holds) expect(found[0]?.sentence).toContain("crosses 9 Fennel Row from 76.0 to 90.0 ft");
});

test("something that crosses the pipe stops cutting, lining and digging, at its station", () => {
  const observations = [anObservation("c", { kind: "crossing", counter: 2_200 })];
  const runs = [aRun("run", { crossingSeen: "yes" })];
  const found = holdsOf({ runs, anchors: [anAnchor("run")], observations });
  expect(found).toHaveLength(1);
  expect(found[0]).toMatchObject({
    key: "crossing-seen:c",
    stops: ["clearing", "jetting", "capping", "lining", "bursting", "digging"],
    stretch: { from: 2_100, to: 2_300 },
    subjectLabel: "crossing at 22.0 ft",
  });
});

test("a run that only says that something crosses holds as well", () => {
  const found = holdsOf({ runs: [aRun("run", { name: "Run 1", crossingSeen: "yes" })] });
  expect(found.map(({ key }) => key)).toEqual(["crossing-seen:run"]);
});

test("holds keep their keys and order when the file is worked out again", () => {
  const entries = [anEntry("e", { distance: 8_000 }), anEntry("f", { distance: 3_650 })];
  const once = foundWith({ entries });
  expect(foundWith({ entries })).toEqual(once);
  expect(new Set(once.map(({ key }) => key)).size).toBe(once.length);
});
