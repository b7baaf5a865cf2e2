import { expect, test } from "vitest";
import { answerTo, requirementApplies } from "#lib/domain/application/conditions.ts";
import { neededPermits } from "#lib/domain/closing/needed.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { RequirementCondition } from "#lib/domain/facts/permit-rule.ts";
import { aFinding } from "#tests/support/answers.ts";
import { aCondition, aSurfaceCut } from "#tests/support/application.ts";
import {
  aCrossing,
  aFile,
  aLand,
  anAuthority,
  aPoint,
  aProperty,
  aRequirement,
  aRequirementMark,
  aScopeItem,
  aTieIn,
} from "#tests/support/file.ts";

const STREET = aLand("street", {
  from: 0,
  to: 1_200,
  kind: "right-of-way",
  propertyId: null,
  shownBy: "Map",
});
const LOT = aLand("lot", {
  from: 1_200,
  to: 9_000,
  kind: "lot",
  propertyId: "p12",
  shownBy: "Plat",
});
const DIG = aScopeItem("dig", {
  title: "Replace",
  kind: "dig-and-replace",
  place: "stretch",
  from: 0,
  to: 1_000,
});

function answer(
  fact: RequirementCondition["fact"],
  change: Partial<LineFile>,
  rest: Partial<RequirementCondition> = {},
) {
  const file = aFile({ properties: [aProperty("p12")], ...change });
  return answerTo(aCondition(fact, rest), { file, tieIns: [] });
}

function lineTo(upperEnd: number | null): LineFile["line"] {
  return { ...aFile().line, upperEnd };
}

test("what nobody entered is unknown, never no", () => {
  for (const fact of [
    "something-dug",
    "dug-in-right-of-way",
    "pipe-lined",
    "branch-capped",
  ] as const)
    expect(answer(fact, {}), fact).toEqual({
      answer: "unknown",
      because: "no work is entered yet",
    });
  expect(answer("undocumented-tie-in", {}).answer).toBe("unknown");
  expect(answer("lot-crossed", { line: lineTo(null) }).answer).toBe("unknown");
  expect(answer("depth-over", { scope: [DIG] }, { limit: 500 }).because).toBe(
    "no depth is noted where “Replace” digs",
  );
  expect(answer("depth-over", { scope: [DIG] }).because).toBe(
    "no limit in feet is entered with the condition",
  );
});

test("a stretch dug lies in the right-of-way where the land says so", () => {
  expect(answer("dug-in-right-of-way", { scope: [DIG], land: [STREET, LOT] })).toEqual({
    answer: "yes",
    because: "the right-of-way is dug from 0.0 to 10.0 ft",
  });
  const above = { ...DIG, from: 2_000, to: 3_000 };
  expect(answer("dug-in-right-of-way", { scope: [above], land: [STREET, LOT] }).answer).toBe("no");
  expect(answer("dug-in-right-of-way", { scope: [above], land: [STREET] })).toEqual({
    answer: "unknown",
    because: "the land from 20.0 to 30.0 ft is not entered",
  });
  const unsaid = { ...DIG, kind: "unknown" as const };
  expect(answer("dug-in-right-of-way", { scope: [unsaid], land: [STREET, LOT] })).toEqual({
    answer: "unknown",
    because: "the work type of “Replace” is not set",
  });
  expect(answer("dug-on-lot", { scope: [above], land: [STREET, LOT] }).answer).toBe("yes");
  const lined = { ...DIG, kind: "line" as const };
  expect(answer("dug-in-right-of-way", { scope: [lined] })).toEqual({
    answer: "no",
    because: "nothing is dug",
  });
});

test("work of an option that nobody chose makes nothing sure", () => {
  const options = ["a", "b"].map((id) => ({
    id,
    title: id,
    kind: "other" as const,
    duration: "",
    disruption: "",
    limits: "",
    note: "",
  }));
  const scope = [{ ...DIG, optionId: "a" }];
  const found = answer("something-dug", { scope, options: options as never });
  expect(found.answer).toBe("unknown");
  expect(found.because).toContain("no repair option is selected");
});

test("depth counts the trench, not the pipe alone, and nothing beyond the last note", () => {
  const points = [
    aPoint("low", { station: 0, depth: 480 }),
    aPoint("high", { station: 1_000, depth: 480 }),
  ];
  expect(answer("depth-over", { scope: [DIG], points }, { limit: 500 })).toEqual({
    answer: "yes",
    because: "the trench at 0.0 ft is about 5.3 ft deep",
  });
  expect(answer("depth-over", { scope: [DIG], points }, { limit: 600 }).answer).toBe("no");
  const [first] = points;
  expect(
    answer(
      "depth-over",
      { scope: [{ ...DIG, from: 500, to: 900 }], points: first ? [first] : [] },
      { limit: 600 },
    ).answer,
  ).toBe("unknown");
});

test("lots crossed and their easements", () => {
  const line = lineTo(5_000);
  const lotOnly = { line, land: [STREET, LOT] };
  expect(answer("lot-crossed", lotOnly).answer).toBe("no");
  expect(answer("crossed-without-easement", lotOnly).answer).toBe("no");
  const crossed = {
    ...lotOnly,
    properties: [aProperty("p12"), aProperty("p9", { stake: "crossed" })],
    crossings: [aCrossing("p9", { propertyId: "p9", from: 1_500, to: 2_000, easement: "unknown" })],
  };
  expect(answer("lot-crossed", crossed).answer).toBe("yes");
  expect(answer("crossed-without-easement", crossed).answer).toBe("unknown");
  const recorded = {
    ...crossed,
    crossings: crossed.crossings.map((each) => ({ ...each, easement: "recorded" as const })),
  };
  expect(answer("crossed-without-easement", recorded).answer).toBe("no");
  const none = {
    ...crossed,
    crossings: crossed.crossings.map((each) => ({ ...each, easement: "none" as const })),
  };
  expect(answer("crossed-without-easement", none).answer).toBe("yes");
});

test("the street is cut where pavement over what is dug is entered, unknown until it is", () => {
  const file = { scope: [DIG], land: [STREET, LOT] };
  expect(answer("street-cut", file).answer).toBe("unknown");
  expect(answer("street-cut", { ...file, surfaceCuts: [aSurfaceCut()] }).answer).toBe("yes");
  expect(
    answer("street-cut", { ...file, surfaceCuts: [aSurfaceCut({ surface: "gravel" })] }).answer,
  ).toBe("no");
  expect(
    answer("street-cut", { ...file, surfaceCuts: [aSurfaceCut({ surface: "gravel", to: 500 })] })
      .answer,
  ).toBe("unknown");
});

test("limits: buildings and value", () => {
  const two = { properties: [aProperty("p12"), aProperty("p14", { stake: "candidate" })] };
  expect(answer("buildings-over", two, { limit: 100 }).answer).toBe("unknown");
  expect(answer("buildings-over", two, { limit: 200 }).answer).toBe("no");
  expect(answer("buildings-over", two, { limit: 0 }).answer).toBe("yes");
  const worth = { scope: [{ ...DIG, quantity: 100, rate: 600_000, markup: 0, tax: 0 }] };
  expect(answer("value-over", worth, { limit: 500_000 }).answer).toBe("yes");
  expect(answer("value-over", worth, { limit: 600_000 }).answer).toBe("no");
});

test("a tie-in that nobody decided may be undocumented", () => {
  const finding = aFinding(aTieIn("t1", { label: "T1" }), {
    standing: "undocumented",
    decided: false,
  });
  const ask = (tieIns: (typeof finding)[]) =>
    answerTo(aCondition("undocumented-tie-in"), { file: aFile(), tieIns }).answer;
  expect(ask([finding])).toBe("unknown");
  expect(ask([{ ...finding, decided: true }])).toBe("yes");
  expect(ask([{ ...finding, decided: true, standing: "on-record-and-seen" }])).toBe("no");
});

test("any one condition is enough; a requirement without one always applies", () => {
  const applies = (conditions: RequirementCondition[], change: Partial<LineFile> = {}) =>
    requirementApplies(
      { id: "r" },
      {
        file: aFile({
          authority: anAuthority({ requirements: [aRequirement("r")], conditions }),
          scope: [DIG],
          land: [STREET, LOT],
          ...change,
        }),
        tieIns: [],
      },
    );
  expect(applies([]).applies).toBe("always");
  expect(applies([aCondition("pipe-lined"), aCondition("dug-in-right-of-way")])).toEqual({
    applies: "yes",
    sentence: "Applies because the right-of-way is dug from 0.0 to 10.0 ft.",
  });
  expect(applies([aCondition("pipe-lined"), aCondition("branch-capped")])).toEqual({
    applies: "no",
    sentence: "Does not apply: nothing is lined; no branch is capped.",
  });
  expect(applies([aCondition("pipe-lined"), aCondition("street-cut")])).toEqual({
    applies: "unknown",
    sentence:
      "Counts as applying until this is known: the surface that is cut from 0.0 to 10.0 ft is not entered.",
  });
});

test("a permit that a requirement names is needed by its conditions, whatever was marked", () => {
  const requirements = [aRequirement("r", { permitKind: "connection" })];
  const needs = (scope: LineFile["scope"], marked = false) =>
    neededPermits(
      aFile({
        authority: anAuthority({ requirements, conditions: [aCondition("branch-capped")] }),
        scope,
        land: [LOT, STREET],
        requirementMarks: marked ? [aRequirementMark("r", { state: "does-not-apply" })] : [],
      }),
      [],
    ).map(({ kind }) => kind);
  const cap = { ...DIG, kind: "cap" as const, from: 3_000, to: 3_000 };
  expect(needs([{ ...DIG, kind: "line" }])).toEqual(["side-sewer"]);
  expect(needs([cap])).toEqual(["side-sewer", "connection"]);
  expect(needs([cap], true)).toEqual(["side-sewer", "connection"]);
  expect(needs([], true)).toEqual(["side-sewer"]);
});
