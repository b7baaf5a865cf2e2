import { describe, expect, test } from "vitest";
import type { Hold } from "#lib/domain/facts/hold.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import {
  aFile,
  aGap,
  anAnchor,
  anAuthority,
  anObservation,
  aRule,
  aRun,
  aScopeItem,
} from "#tests/support/file.ts";

// A gas line bored through a sewer is cut by whoever clears roots. What nobody could see is not safe.

function openHolds(overrides: Parameters<typeof aFile>[0]): readonly Hold[] {
  const file = aFile({
    authority: anAuthority({ rules: [aRule("rule")] }),
    line: { authorityId: "authority-1", ruleId: "rule" },
    runs: [aRun("run")],
    anchors: [anAnchor("run")],
    ...overrides,
  });
  return reportOn(file, "2026-11-25").holds.filter(
    ({ cause }) => cause === "crossing-not-ruled-out",
  );
}

const sayIt = (holds: readonly Hold[]) =>
  holds.map(({ stretch, stops, sentence }) => ({
    at: stretch === null ? null : [stretch.from, stretch.to],
    stops,
    why: sentence.split("is not known: ")[1],
  }));

const CUTS = ["clearing", "lining", "bursting"];

describe("a run that could not tell", () => {
  test("holds cutting, lining and bursting over all that it saw", () => {
    const runs = [aRun("run", { crossingSeen: "cannot-tell", toCounter: 6_000 })];
    expect(sayIt(openHolds({ runs }))).toEqual([
      { at: [0, 6_000], stops: CUTS, why: "the run could not tell." },
    ]);
  });

  test("holds only what no other run saw and ruled out", () => {
    const runs = [
      aRun("run", { crossingSeen: "cannot-tell", toCounter: 6_000 }),
      aRun("second", { toCounter: 4_000 }),
    ];
    const anchors = [anAnchor("run"), anAnchor("second")];
    expect(sayIt(openHolds({ runs, anchors })).map(({ at }) => at)).toEqual([[4_000, 6_000]]);
  });

  test("holds the whole line where it was never tied to it", () => {
    const runs = [aRun("run", { crossingSeen: "cannot-tell" })];
    expect(sayIt(openHolds({ runs, anchors: [] }))).toEqual([
      { at: null, stops: CUTS, why: "no run tied to the line looked for it." },
    ]);
  });
});

describe("what is to be cut, lined or burst", () => {
  const clear = aScopeItem("cut", { title: "Cut roots", kind: "clear", from: 2_000, to: 8_000 });

  test("is free where a run saw it and said that nothing crosses", () => {
    expect(openHolds({ scope: [clear] })).toEqual([]);
  });

  test("is held where no run filmed it, before any run over all of it", () => {
    const runs = [aRun("run", { toCounter: 5_000 })];
    expect(sayIt(openHolds({ scope: [clear], runs }))).toEqual([
      { at: [5_000, 8_000], stops: CUTS, why: "no run tied to the line filmed it." },
    ]);
    expect(sayIt(openHolds({ scope: [clear], runs: [], anchors: [] }))[0]?.at).toEqual([
      2_000, 8_000,
    ]);
  });

  test("is held where it was under water", () => {
    const gaps = [aGap("run", { fromCounter: 3_000, toCounter: 4_000 })];
    expect(sayIt(openHolds({ scope: [clear], gaps }))).toEqual([
      { at: [3_000, 4_000], stops: CUTS, why: "it was under water." },
    ]);
  });

  test("counts an item of no kind that may be lined, and one without a place for the whole line", () => {
    const runs = [aRun("run", { toCounter: 5_000 })];
    const unsaid = aScopeItem("s", { kind: "unknown", title: "Mend it", place: "general" });
    expect(sayIt(openHolds({ scope: [unsaid], runs }))[0]?.at).toEqual([5_000, 10_000]);
    expect(openHolds({ scope: [{ ...unsaid, kind: "dig-and-replace" }], runs })).toEqual([]);
  });
});

describe("roots and blockages", () => {
  const roots = anObservation("r", {
    kind: "fault",
    fault: "roots",
    counter: 3_000,
    toCounter: 3_300,
  });

  test("hold the cutting of them, priced or not", () => {
    expect(sayIt(openHolds({ observations: [roots] }))).toEqual([
      { at: [2_900, 3_400], stops: ["clearing"], why: "roots hide it." },
    ]);
  });

  test("are held once where their cutting is priced", () => {
    const scope = [aScopeItem("cut", { kind: "clear", from: 2_800, to: 3_500 })];
    expect(sayIt(openHolds({ observations: [roots], scope }))).toEqual([
      { at: [2_900, 3_400], stops: CUTS, why: "roots hide it." },
    ]);
  });

  test("are free once a later run filmed the place and said that nothing crosses", () => {
    const runs = [aRun("run"), aRun("after", { ranOn: "2026-11-20" })];
    const anchors = [anAnchor("run"), anAnchor("after")];
    expect(openHolds({ observations: [roots], runs, anchors })).toEqual([]);
    const blind = runs.map((run) => ({ ...run, crossingSeen: "cannot-tell" as const }));
    expect(openHolds({ observations: [roots], runs: blind, anchors }).length).toBeGreaterThan(0);
  });

  test("hide only a part of what a run that could not tell went through", () => {
    const runs = [aRun("run", { toCounter: 10_000, crossingSeen: "cannot-tell" })];
    const said = sayIt(openHolds({ observations: [roots], runs })).map(({ why }) => why);
    expect(said.toSorted()).toEqual([
      "roots hide it and the run could not tell.",
      "roots hide part of it and the run could not tell.",
    ]);
  });

  test("say to look at both sides and to call the gas company", () => {
    const [hold] = openHolds({ observations: [roots] });
    expect(hold?.closes).toMatch(/both sides.*call the gas company before anything is cut/);
  });
});
