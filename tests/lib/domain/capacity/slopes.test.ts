import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { levelFindings, uncertaintyOf } from "#lib/domain/capacity/levels.ts";
import { slopeFinding, slopeFindings } from "#lib/domain/capacity/slopes.ts";
import type { Level } from "#lib/domain/facts/capacity.ts";
import { aLevel } from "#tests/support/capacity.ts";

const NO_RULE = { code: null, chosen: null, water: [], diametersBetween: () => [6] } as const;

function between(lower: Partial<Level>, upper: Partial<Level>) {
  const levels = [aLevel("low", lower), aLevel("up", { station: 4_800, ...upper })];
  return slopeFindings(levelFindings(levels), { ...NO_RULE, chosen: "eighth-inch" })[0];
}

describe("uncertaintyOf()", () => {
  test("a locator is off by 0.5 ft, or by 5% of the depth where that is more", () => {
    expect(uncertaintyOf({ method: "locator", uncertainty: null }, 600)).toBe(50);
    expect(uncertaintyOf({ method: "locator", uncertainty: null }, 1_200)).toBe(60);
    expect(uncertaintyOf({ method: "locator", uncertainty: null }, null)).toBe(50);
  });

  test("what somebody typed comes before the usual of the method", () => {
    expect(uncertaintyOf({ method: "locator", uncertainty: 20 }, 1_200)).toBe(20);
    expect(uncertaintyOf({ method: "level", uncertainty: null }, 1_200)).toBe(2);
    expect(uncertaintyOf({ method: "cleanout-drop", uncertainty: null }, null)).toBe(10);
  });
});

describe("levelFindings()", () => {
  test("takes the invert from ground less depth, and says what a depth alone lacks", () => {
    const [reckoned, bare] = levelFindings([
      aLevel("bare", { station: 2_000, depth: 600 }),
      aLevel("reckoned", { ground: 10_000, depth: 700 }),
    ]);
    expect(reckoned).toMatchObject({ levelId: "reckoned", invert: 9_300, used: true, caution: "" });
    expect(bare).toMatchObject({
      levelId: "bare",
      invert: null,
      used: false,
      caution: "At 20.0 ft only the depth is known. A slope needs the ground level there too.",
    });
  });

  test("uses the surer of two levels at one station, and says where both cannot be right", () => {
    const [located, levelled] = levelFindings([
      aLevel("located", { method: "locator", invert: 9_000 }),
      aLevel("levelled", { method: "level", invert: 9_100 }),
    ]);
    expect(levelled?.used).toBe(true);
    expect(located?.used).toBe(false);
    expect(located?.caution).toContain("The two differ by 1.0 ft");
  });

  test("names an invert that contradicts ground less depth", () => {
    const [level] = levelFindings([aLevel("one", { ground: 10_000, depth: 700, invert: 9_200 })]);
    expect(level).toMatchObject({ invert: 9_200, used: true });
    expect(level?.caution).toContain("gives 93.0 ft, but the invert is entered as 92.0 ft");
  });
});

describe("slopeFinding()", () => {
  test("meets a minimum only where it would at the worst of the uncertainty", () => {
    // 48 ft at 1/8 in per foot fall 0.5 ft; two levels off by 0.02 ft each leave 0.54 ft to be sure.
    const sure = { method: "level", invert: 0 } as const;
    expect(between(sure, { method: "level", invert: 54 })?.verdict).toBe("meets");
    expect(between(sure, { method: "level", invert: 53 })?.verdict).toBe("cannot-be-told");
    expect(between(sure, { method: "level", invert: 46 })?.verdict).toBe("cannot-be-told");
    expect(between(sure, { method: "level", invert: 45 })?.verdict).toBe("too-flat");
  });

  test("tells little from two locator depths, and says so with its numbers", () => {
    const found = between(
      { ground: 10_000, depth: 800, method: "locator" },
      { ground: 10_000, depth: 738, method: "locator" },
    );
    expect(found?.verdict).toBe("cannot-be-told");
    expect(found?.sentence).toBe(
      "Between 0.0 and 48.0 ft the invert rises 0.62 ft ± 1.0 ft over 48.0 ft: 1.29% (-0.79% to 3.38% within the uncertainty). Whether it meets 1/8 in per foot (1.0417%) can’t be determined within the uncertainty. It may slope the wrong way.",
    );
  });

  test("names a back-fall only where it falls back at the best", () => {
    const lower = { station: 0, invert: 100, uncertainty: 2 };
    const upper = (invert: number) => ({ station: 1_000, invert, uncertainty: 2 });
    expect(slopeFinding(lower, upper(95), null).verdict).toBe("falls-back");
    expect(slopeFinding(lower, upper(95), null).sentence).toContain(
      "slopes the wrong way by 0.05 ft ± 0.04 ft",
    );
    expect(slopeFinding(lower, upper(97), null).verdict).toBe("nothing-to-test");
    expect(slopeFinding(lower, upper(97), null).sentence).toContain("It may slope the wrong way.");
  });

  test("a verdict that is sure stays so for every fall within the uncertainty", () => {
    const cases = fc.record({
      run: fc.integer({ min: 100, max: 20_000 }),
      fall: fc.integer({ min: -400, max: 1_000 }),
      off: fc.integer({ min: 0, max: 60 }),
      part: fc.integer({ min: -100, max: 100 }),
    });
    fc.assert(
      fc.property(cases, ({ run, fall, off, part }) => {
        const lower = { station: 0, invert: 0, uncertainty: off };
        const verdictAt = (invert: number, uncertainty: number) =>
          slopeFinding(
            { ...lower, uncertainty },
            { station: run, invert, uncertainty },
            "eighth-inch",
          ).verdict;
        const sure = verdictAt(fall, off);
        if (sure === "cannot-be-told") return;
        const truth = fall + Math.trunc((2 * off * part) / 100);
        const exact = verdictAt(truth, 0);
        if (sure === "too-flat") expect(["too-flat", "falls-back"]).toContain(exact);
        else expect(exact).toBe(sure);
      }),
    );
  });
});

describe("slopeFindings()", () => {
  const levels = levelFindings([
    aLevel("c", { station: 6_000, invert: 300, method: "level" }),
    aLevel("a", { invert: 0, method: "level" }),
    aLevel("depth-only", { station: 2_000, depth: 500 }),
    aLevel("b", { station: 3_000, invert: 100, method: "level" }),
  ]);

  test("goes from each level that says an invert to the next, from the main upstream", () => {
    const found = slopeFindings(levels, NO_RULE);
    expect(found.map(({ from, to, fall }) => [from, to, fall])).toEqual([
      [0, 3_000, 100],
      [3_000, 6_000, 200],
    ]);
  });

  test("takes the least slope that was chosen, else the code’s for the smallest pipe between", () => {
    const against = (rule: Parameters<typeof slopeFindings>[1]) =>
      slopeFindings(levels, rule)[0]?.against;
    expect(against({ ...NO_RULE, chosen: "one-percent" })).toBe("one-percent");
    expect(against({ ...NO_RULE, code: "ipc" })).toBe("eighth-inch");
    expect(against({ ...NO_RULE, code: "ipc", water: [], diametersBetween: () => [8] })).toBe(
      "sixteenth-inch",
    );
    expect(against({ ...NO_RULE, code: "ipc", water: [], diametersBetween: () => [8, 6] })).toBe(
      "eighth-inch",
    );
    expect(
      against({ ...NO_RULE, code: "ipc", water: [], diametersBetween: () => [6, null] }),
    ).toBeNull();
    expect(against(NO_RULE)).toBeNull();
  });
});
