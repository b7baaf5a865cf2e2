import { expect, test } from "vitest";
import type { TieInTest } from "#lib/domain/facts/test.ts";
import { bearsDemand, type EvidenceHints, evidenceLevel } from "#lib/domain/tiein/evidence.ts";
import { aTest, aTieIn } from "#tests/support/file.ts";

const TIE_IN = aTieIn("t", { kind: "unknown" });
const NAMES: Record<string, string> = { "12": "12 Fennel Row", "14": "14 Fennel Row" };

function hints(overrides: Partial<EvidenceHints> = {}): EvidenceHints {
  return {
    recordPropertyId: null,
    nearbyPropertyIds: [],
    nameOf: (id) => NAMES[id] ?? id,
    ...overrides,
  };
}

function dye(id: string, overrides: Partial<TieInTest> = {}): TieInTest {
  return aTest(id, "t", { propertyId: "14", ...overrides });
}

function levelOf(tests: TieInTest[], given = hints()): number {
  return evidenceLevel(TIE_IN, tests, given).level;
}

test("evidenceLevel() is 0 where nothing shows whose it is", () => {
  expect(evidenceLevel(TIE_IN, [], hints())).toEqual({
    level: 0,
    reason: "Nothing shows the owner yet.",
    propertyId: null,
  });
});

test("evidenceLevel() is 1 by position, and names who may be meant", () => {
  const found = evidenceLevel(TIE_IN, [], hints({ nearbyPropertyIds: ["12", "14"] }));
  expect(found).toEqual({
    level: 1,
    reason: "By location it may belong to 12 Fennel Row or 14 Fennel Row; no evidence yet.",
    propertyId: null,
  });
});

test("evidenceLevel() is 2 by a record or a statement", () => {
  expect(levelOf([], hints({ recordPropertyId: "14" }))).toBe(2);
  expect(levelOf([dye("a", { kind: "statement" })])).toBe(2);
});

test("evidenceLevel() is 2 where somebody put it down to a property and no test shows it", () => {
  const settled = aTieIn("t", { propertyId: "14", settledBy: "Dana Okafor" });
  expect(evidenceLevel(settled, [], hints())).toMatchObject({
    level: 2,
    reason: "It was assigned to 14 Fennel Row by Dana Okafor; no test confirms it.",
  });
});

test.each(["trace", "smoke"] as const)("evidenceLevel() is 3 by a %s", (kind) => {
  expect(levelOf([dye("a", { kind })])).toBe(3);
});

test.each(["dye", "flow"] as const)("evidenceLevel() is 4 by %s seen once", (kind) => {
  expect(levelOf([dye("a", { kind })])).toBe(4);
});

test("evidenceLevel() is 5 by dye seen twice, filmed, by two people, with a negative control", () => {
  const tests = [dye("a"), dye("b", { controlResult: "not-run" })];
  const found = evidenceLevel(TIE_IN, tests, hints());
  expect(found.level).toBe(5);
  expect(found.propertyId).toBe("14");
  expect(found.reason).toBe(
    "Dye from 14 Fennel Row was seen here twice, on video, with other water off, by two people, with a negative control.",
  );
});

test.each<[string, Partial<TieInTest>, string]>([
  ["not filmed", { filmed: " " }, "video of both tests"],
  ["watched by who dosed", { watchedBy: "marek sandoval " }, "two names on both tests"],
  ["watched by nobody", { watchedBy: "" }, "two names on both tests"],
  ["run with other water on", { otherWaterBarred: false }, "other water shut off in both tests"],
])(
  "evidenceLevel() stays at 4 where one of two dye tests was %s, and says so",
  (_, flaw, missing) => {
    const found = evidenceLevel(TIE_IN, [dye("a"), dye("b", flaw)], hints());
    expect(found.level).toBe(4);
    expect(found.reason).toContain(`still needed for proof: ${missing}.`);
  },
);

test("evidenceLevel() stays at 4 without a negative control", () => {
  const tests = [dye("a", { controlResult: "not-run" }), dye("b", { controlResult: "not-run" })];
  expect(evidenceLevel(TIE_IN, tests, hints())).toMatchObject({ level: 4 });
});

test("evidenceLevel() does not take a flow test for the second dye test", () => {
  const found = evidenceLevel(TIE_IN, [dye("a"), dye("b", { kind: "flow" })], hints());
  expect(found.level).toBe(4);
  expect(found.reason).toContain("a second dye test");
});

test("evidenceLevel() falls to 3 where the control was seen too: the test does not tell them apart", () => {
  const found = evidenceLevel(TIE_IN, [dye("a"), dye("b", { controlResult: "positive" })], hints());
  expect(found).toMatchObject({ level: 3, propertyId: "14" });
});

test("evidenceLevel() falls to 3, and names nobody, where tests at two properties were seen", () => {
  const found = evidenceLevel(TIE_IN, [dye("a"), dye("b", { propertyId: "12" })], hints());
  expect(found).toMatchObject({ level: 3, propertyId: null });
  expect(found.reason).toContain("14 Fennel Row and 12 Fennel Row");
});

test("evidenceLevel() is 6 by digging or by the owner's written word", () => {
  expect(levelOf([dye("a", { kind: "excavation" })])).toBe(6);
  const accepted = aTieIn("t", { propertyId: "14", ownerAccepted: true });
  expect(evidenceLevel(accepted, [], hints())).toMatchObject({
    level: 6,
    reason: "The owner of 14 Fennel Row accepted in writing that it is theirs.",
  });
});

test("evidenceLevel() lets a dye test that was not seen lower nothing, and says that it is weak", () => {
  const unseen = dye("b", { result: "not-seen", waitMinutes: 20 });
  const found = evidenceLevel(TIE_IN, [dye("a"), unseen], hints());
  expect(found.level).toBe(4);
  expect(found.reason).toContain(
    "A dye test at 14 Fennel Row was not seen in 20 minutes: weak evidence, since slow pipes, traps and blockages hide it.",
  );
});

test("evidenceLevel() takes an unseen test alone for no more than a guess by position", () => {
  expect(levelOf([dye("a", { result: "not-seen" })])).toBe(1);
});

test("evidenceLevel() looks at this tie-in's tests only", () => {
  expect(levelOf([aTest("a", "another", { propertyId: "14" })])).toBe(0);
});

test.each([
  [4, false, false],
  [5, false, true],
  [2, true, true],
] as const)("bearsDemand() at level %s, accepted by the owner: %s", (level, accepted, bears) => {
  expect(bearsDemand(level, accepted)).toBe(bears);
});
