import { describe, expect, test } from "vitest";
import type { RulePattern } from "#lib/domain/facts/authority.ts";
import type { Level } from "#lib/domain/facts/capacity.ts";
import { deepestBetween, notedDepths } from "#lib/domain/split/depth.ts";
import { depthUnknown, groupCautions, scopeCautions } from "#lib/domain/split/scope-cautions.ts";
import { aFinding } from "#tests/support/answers.ts";
import { aFile, anAuthority, aPoint, aRule, aScopeItem, aTieIn } from "#tests/support/file.ts";

function aLevel(station: number, rest: Partial<Level> = {}): Level {
  return {
    id: `level-${station}`,
    station,
    ground: null,
    depth: null,
    invert: null,
    method: "level",
    uncertainty: null,
    note: "",
    ...rest,
  };
}

describe("depth along the line", () => {
  test("notedDepths() takes points and levels, also ground less invert, the deeper where two differ", () => {
    const noted = notedDepths({
      points: [aPoint("c1", { station: 3_000, depth: 500 }), aPoint("c2", { station: 9_000 })],
      levels: [
        aLevel(1_000, { ground: 10_000, invert: 9_350 }),
        aLevel(3_000, { depth: 480 }),
        aLevel(4_000, { ground: 10_000 }),
      ],
    });
    expect(noted).toEqual([
      { station: 1_000, depth: 650 },
      { station: 3_000, depth: 500 },
    ]);
  });

  test("deepestBetween() goes straight between notes and by the nearest beyond them", () => {
    const noted = [
      { station: 1_000, depth: 700 },
      { station: 3_000, depth: 500 },
    ];
    expect(deepestBetween(noted, 2_000, 2_000)).toEqual({
      station: 2_000,
      depth: 600,
      by: "between",
    });
    expect(deepestBetween(noted, 500, 900)).toMatchObject({ depth: 700, by: "nearest" });
    expect(deepestBetween(noted, 4_000, 5_000)).toMatchObject({ depth: 500, by: "nearest" });
    expect(deepestBetween(noted, 3_000, 3_000)).toMatchObject({ depth: 500, by: "noted" });
    expect(deepestBetween([], 0, 1_000)).toBeNull();
  });

  test("deepestBetween() finds a note inside the stretch that is deeper than both ends", () => {
    const noted = [0, 1_000, 2_000].map((station) => ({
      station,
      depth: station === 1_000 ? 900 : 300,
    }));
    expect(deepestBetween(noted, 500, 1_500)).toEqual({ station: 1_000, depth: 900, by: "noted" });
  });
});

describe("scopeCautions()", () => {
  const dig = aScopeItem("dig", { from: 1_000, to: 2_000 });
  const needsAt = (depth: number) =>
    scopeCautions(
      aFile({ scope: [dig], points: [aPoint("c1", { station: 1_500, depth })] }),
      [],
    )[0]?.needs.map(({ citation }) => citation);

  test("scopeCautions() asks for what the federal rules ask for at the depth of each item", () => {
    // 29 CFR 1926 Subpart P: a way out from 4 ft, protection from 5 ft, an engineer beyond 20 ft of
    // trench, which goes half a foot deeper than the pipe.
    expect(needsAt(349)).toEqual(["29 CFR 1926.652(a)(1)(ii)"]);
    expect(needsAt(350)).toContain("29 CFR 1926.651(c)(2)");
    expect(needsAt(449)).not.toContain("29 CFR 1926.652(a)(1)");
    expect(needsAt(450)).toContain("29 CFR 1926.652(a)(1)");
    expect(needsAt(1_950)).not.toContain("29 CFR 1926 Subpart P");
    expect(needsAt(1_951)).toContain("29 CFR 1926 Subpart P");
  });

  test("scopeCautions() goes by the place of each item, not by the deepest of the line", () => {
    const file = aFile({
      scope: [dig, aScopeItem("top", { place: "point", from: 9_000, to: null })],
      points: [
        aPoint("c1", { station: 1_500, depth: 720 }),
        aPoint("c2", { station: 9_000, depth: 300 }),
      ],
    });
    const [low, high] = scopeCautions(file, []);
    expect(low?.depth).toBe("The pipe lies 7.2 ft deep at 15.0 ft.");
    expect(high?.depth).toBe("The pipe lies 3.0 ft deep at 90.0 ft.");
    expect(high?.needs).toHaveLength(1);
  });

  test("depthUnknown() says once that no depth is noted, where something is dug", () => {
    expect(depthUnknown(aFile({ scope: [dig] }))).toMatch(
      /^No depth is recorded.*5.0 ft or deeper/,
    );
    expect(depthUnknown(aFile({ scope: [{ ...dig, kind: "clear" }] }))).toBeNull();
    expect(depthUnknown(aFile({ scope: [{ ...dig, kind: "line" }] }))).toBeNull();
    const points = [aPoint("c1", { station: 1_500, depth: 300 })];
    expect(depthUnknown(aFile({ scope: [dig], points }))).toBeNull();
    expect(scopeCautions(aFile({ scope: [dig] }), [])).toEqual([]);
  });

  test("scopeCautions() says that the connection itself is the authority’s where the rule ends at the main", () => {
    const needsOf = (pattern: RulePattern, station: number) =>
      scopeCautions(
        aFile({
          authority: anAuthority({ rules: [aRule("rule", { pattern, title: "Up to the main" })] }),
          line: { ruleId: "rule" },
          scope: [aScopeItem("tap", { place: "point", from: station, to: null, kind: "other" })],
        }),
        [],
      ).flatMap(({ needs }) => needs.map(({ words }) => words));
    expect(needsOf("owners-to-main", 0)).toContain(
      "It reaches the connection at the main, which is the authority’s by “Up to the main”, not the owners’: ask City of Quillhaven who works on it and who pays before the owners are asked for it.",
    );
    for (const [pattern, station] of [
      ["owners-to-main", 100],
      ["owners-including-tap", 0],
    ] as const)
      expect(needsOf(pattern, station).join(" ")).not.toContain("connection at the main");
  });

  test("scopeCautions() names the permit for the right-of-way below its line only", () => {
    const edge = aPoint("row", { kind: "right-of-way-line", station: 1_200, depth: 300 });
    const words = (from: number) =>
      scopeCautions(
        aFile({ scope: [aScopeItem("dig", { from, to: from + 500 })], points: [edge] }),
        [],
      )[0]?.needs.map((need) => need.words);
    expect(words(1_000)?.at(-1)).toContain("below the right-of-way line at 12.0 ft");
    expect(words(1_200)?.join(" ")).not.toContain("right-of-way");
  });

  test("scopeCautions() takes work on a branch where it leaves the trunk, and asks nothing of a test", () => {
    const branch = { place: "branch", from: null, to: null, tieInId: "T1" } as const;
    const file = aFile({
      scope: [aScopeItem("own", branch), aScopeItem("camera", { kind: "test" })],
      points: [aPoint("c1", { station: 4_000, depth: 600 })],
    });
    const cautions = scopeCautions(file, [aFinding(aTieIn("T1", { station: 4_000 }))]);
    expect(cautions.map(({ itemId, depth }) => [itemId, depth])).toEqual([
      ["own", "The pipe lies 6.0 ft deep at 40.0 ft."],
    ]);
  });

  test("scopeCautions() reopens every live branch under a liner and stops where one is undocumented", () => {
    const liner = aScopeItem("liner", { kind: "line", from: 0, to: 5_000 });
    const at = (id: string, station: number, rest: Parameters<typeof aFinding>[1] = {}) =>
      aFinding(aTieIn(id, { station }), rest);
    const [caution] = scopeCautions(aFile({ scope: [liner] }), [
      at("T1", 1_000),
      at("T2", 5_000),
      at("T3", 4_000, { standing: "undocumented", level: 0 }),
      at("T4", 6_000),
      at("T5", 2_000, { live: false }),
    ]);
    expect(caution?.needs.map(({ stops }) => stops)).toEqual([true, false]);
    expect(caution?.needs[0]?.words).toContain("Stop: T3 at 40.0 ft");
    expect(caution?.needs[1]?.words).toContain("reinstate T1 at 10.0 ft and T2 at 50.0 ft");
  });

  const under = [
    aFinding(aTieIn("T1", { station: 1_200 })),
    aFinding(aTieIn("T3", { station: 1_800 }), { standing: "undocumented", level: 0 }),
    aFinding(aTieIn("T5", { station: 1_500 }), { live: false }),
  ];
  const wordsOf = (rest: Parameters<typeof aScopeItem>[1]) =>
    scopeCautions(
      aFile({
        scope: [{ ...dig, ...rest }],
        points: [aPoint("c1", { station: 1_500, depth: 720 })],
      }),
      under,
    ).flatMap(({ needs }) => needs.map(({ words }) => words));

  test("scopeCautions() has live branches joined again under a burst and in an open trench", () => {
    expect(wordsOf({ kind: "burst" })).toEqual(
      expect.arrayContaining([
        expect.stringMatching(/^Stop: T3 at 18.0 ft .* Bursting would cut it off/),
        expect.stringMatching(
          /cuts off every branch between 10.0 and 20.0 ft: dig up and reconnect T1/,
        ),
        expect.stringContaining("breaks what crosses"),
      ]),
    );
    expect(wordsOf({ kind: "dig-and-replace" })[0]).toBe(
      "Active branches connect here: keep each one running, and connect T1 at 12.0 ft and T3 at 18.0 ft to the new pipe.",
    );
  });

  test("scopeCautions() has both sides looked at and the gas company called before anything is cut", () => {
    expect(wordsOf({ kind: "clear" })).toEqual([
      expect.stringMatching(/look at both sides of the blockage.*call the gas company/),
    ]);
  });

  test("scopeCautions() says nothing of a trench where nothing is dug", () => {
    for (const kind of [
      "line",
      "clear",
      "clean",
      "test",
      "restore",
      "permit-fee",
      "other",
    ] as const)
      expect(wordsOf({ kind }).join(" ")).not.toMatch(/trench|ladder|cave-in|walls/);
    for (const kind of ["burst", "cap", "spot-repair", "reconnect"] as const)
      expect(wordsOf({ kind }).join(" ")).toMatch(/Slope, shore or shield/);
  });

  test("scopeCautions() takes work of no kind for all that it may be, and says so", () => {
    const words = wordsOf({ kind: "unknown", title: "Mend it", work: "repair" });
    expect(words.join(" ")).toMatch(/liner would seal.*Bursting would cut/);
    expect(words.at(-1)).toContain("The work type is not set");
  });

  test("scopeCautions() says a depth that was worked out to the next half foot, and goes by that", () => {
    const file = aFile({
      scope: [aScopeItem("dig", { place: "point", from: 2_000, to: null })],
      points: [
        aPoint("c1", { station: 1_000, depth: 520 }),
        aPoint("c2", { station: 3_000, depth: 448 }),
      ],
    });
    const [caution] = scopeCautions(file, []);
    expect(caution?.depth).toBe(
      "The pipe lies about 5.0 ft deep at 20.0 ft, estimated between two recorded depths.",
    );
    expect(caution?.needs.map(({ citation }) => citation)).toContain("29 CFR 1926.652(a)(1)");
  });
});

test("groupCautions() says once what several pieces of work need alike", () => {
  const at = (id: string, from: number) => aScopeItem(id, { place: "point", from, to: null });
  const file = aFile({
    scope: [at("a", 1_000), at("shallow", 9_000), at("b", 1_100)],
    points: [
      aPoint("c1", { station: 1_000, depth: 700 }),
      aPoint("c2", { station: 1_100, depth: 680 }),
      aPoint("c3", { station: 9_000, depth: 300 }),
    ],
  });
  const groups = groupCautions(scopeCautions(file, []));
  expect(groups.map(({ works }) => works.map(({ itemId }) => itemId))).toEqual([
    ["a", "b"],
    ["shallow"],
  ]);
  expect(groups.map(({ needs }) => needs.length)).toEqual([3, 1]);
});
