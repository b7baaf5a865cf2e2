import { expect, test } from "vitest";
import { isLandSaid } from "#lib/domain/line/whose-land.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import {
  aCrossing,
  aFile,
  aLand,
  anAuthority,
  anEntry,
  aPairing,
  aProperty,
  aRule,
  aScopeItem,
  aTieIn,
} from "#tests/support/file.ts";

const DIG = aScopeItem("dig", { title: "Dig", from: 1_200, to: 4_600 });

function landHolds(overrides: Parameters<typeof aFile>[0]) {
  const { line, ...rest } = overrides ?? {};
  const file = aFile({
    authority: anAuthority({ rules: [aRule("rule")] }),
    line: { authorityId: "authority-1", ruleId: "rule", ...line },
    properties: [aProperty("p")],
    scope: [DIG],
    ...rest,
  });
  return reportOn(file, "2026-11-25").holds.filter(({ cause }) => cause === "land-unknown");
}

const places = (overrides: Parameters<typeof aFile>[0]) =>
  landHolds(overrides).map(({ stretch }) => stretch && [stretch.from, stretch.to]);

test("a dug stretch of which nobody said whose land it is stops submission and digging there", () => {
  const [hold, ...rest] = landHolds({});
  expect(rest).toEqual([]);
  expect(hold).toMatchObject({
    key: "land-unknown:dig:1200-4600",
    stops: ["submission", "digging"],
    stretch: { from: 1_200, to: 4_600 },
  });
  expect(hold?.sentence).toBe(
    "The land over the pipe from 12.0 to 46.0 ft, where “Dig” digs, is not entered, so the consent or permit it takes is unknown.",
  );
});

test("only what is left without an answer holds; a crossed lot is an answer", () => {
  const land = [
    aLand("row", { to: 1_500, kind: "right-of-way", propertyId: null }),
    aLand("lot", { from: 2_000, to: 3_000 }),
  ];
  expect(places({ land })).toEqual([
    [1_500, 2_000],
    [3_000, 4_600],
  ]);
  const crossings = [aCrossing("x", { propertyId: "p", from: 1_000, to: 9_000 })];
  expect(places({ crossings })).toEqual([]);
});

test.each([
  [{}, true],
  [{ kind: "right-of-way", propertyId: null }, true],
  [{ kind: "common-area" }, true],
  [{ propertyId: null }, false],
  [{ kind: "common-area", propertyId: null }, false],
  [{ kind: "unknown" }, false],
  [{ shownBy: " " }, false],
] as const)("land that says %j is an answer: %s", (says, isAnswer) => {
  const land = aLand("all", { to: 10_000, ...says });
  expect(isLandSaid(land)).toBe(isAnswer);
  expect(places({ land: [land] })).toHaveLength(isAnswer ? 0 : 1);
});

test("work that digs nowhere asks nothing; work without a place asks for the whole line", () => {
  expect(places({ scope: [{ ...DIG, kind: "line" }] })).toEqual([]);
  expect(places({ scope: [{ ...DIG, place: "general", from: null, to: null }] })).toEqual([
    [0, 10_000],
  ]);
});

test("a branch is dug on the lot of its property, once that is known", () => {
  const scope = [aScopeItem("own", { place: "branch", from: null, to: null, tieInId: "T1" })];
  const known = {
    tieIns: [aTieIn("T1", { station: 4_000 })],
    entries: [anEntry("e", { propertyId: "p" })],
  };
  expect(places({ scope, tieIns: known.tieIns })).toEqual([[3_900, 4_100]]);
  expect(places({ ...known, scope, pairings: [aPairing("e", "T1")] })).toEqual([]);
});

test("another option's digging holds no submission, and keeps its hold when it is chosen", () => {
  const options = ["a", "b"].map((id) => ({ id, title: id, kind: "other" as const, note: "" }));
  const scope = [
    { ...DIG, id: "one", optionId: "a" },
    { ...DIG, id: "two", optionId: "b" },
  ];
  const stops = (optionId: string | null) =>
    landHolds({ options, scope, line: { optionId } }).map(({ key, stops: each }) => [key, each]);
  expect(stops("a")).toEqual([
    ["land-unknown:one:1200-4600", ["submission", "digging"]],
    ["land-unknown:two:1200-4600", ["digging"]],
  ]);
  expect(stops(null).map(([, each]) => each)).toEqual([
    ["submission", "digging"],
    ["submission", "digging"],
  ]);
});
