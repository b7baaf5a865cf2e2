import fc from "fast-check";
import { expect, test } from "vitest";
import type { Anchor } from "#lib/domain/facts/run.ts";
import { anchorResiduals } from "#lib/domain/run/residual.ts";
import { anAnchor, aRun } from "#tests/support/file.ts";

function residuals(...places: readonly (readonly [counter: number, station: number])[]) {
  const anchors = places.map(([counter, station], at) =>
    anAnchor("run", { id: `a${at}`, counter, station }),
  );
  return anchorResiduals({ runs: [aRun("run")], anchors });
}

test("anchorResiduals() holds each anchor against the others, with the numbers", () => {
  // 40.0 ft lies halfway between 0 and 80: the others put it at 40.0, so 40.4 is 0.4 ft too far up.
  const [, middle] = residuals([0, 0], [4_000, 4_040], [8_000, 8_000]);
  expect(middle).toEqual({
    anchorId: "a1",
    runId: "run",
    residual: 40,
    sentence:
      "The other known points put reading 40.0 ft at 40.0 ft; this one is 0.4 ft farther up, within the 1.0 ft that the counter may be off.",
  });
});

test("anchorResiduals() says where an anchor lies beyond what the counter may be off", () => {
  const [, middle] = residuals([0, 0], [4_000, 3_850], [8_000, 8_000]);
  expect(middle?.residual).toBe(-150);
  expect(middle?.sentence).toContain("1.5 ft farther down, beyond the 1.0 ft");
});

test("anchorResiduals() has nothing to hold a run’s only anchor against", () => {
  expect(residuals([0, 0])).toMatchObject([
    { residual: null, sentence: expect.stringContaining("only known point") },
  ]);
});

test("anchorResiduals() names the one without which the others agree", () => {
  // Reading 40 at 70 ft runs backwards against reading 60 at 60 ft: without it all is well.
  const found = residuals([0, 0], [4_000, 7_000], [6_000, 6_000], [8_000, 8_000]);
  expect(found.map(({ residual }) => residual)).toEqual([null, 3_000, -1_500, null]);
  expect(found[1]?.sentence).toContain("check this one first");
  expect(found[0]?.sentence).toContain("contradict each other");
});

test("anchorResiduals() is nothing anywhere where anchors lie on one true line, whatever its way", () => {
  const anchor = (counter: number, station: number): Anchor =>
    anAnchor("run", { id: `at ${counter}`, counter, station });
  fc.assert(
    fc.property(
      fc.uniqueArray(fc.integer({ min: 0, max: 1_000 }), { minLength: 2, maxLength: 6 }),
      fc.boolean(),
      (tenths, upstream) => {
        const anchors = tenths.map((tenth) =>
          anchor(tenth * 10, upstream ? tenth * 10 : 20_000 - tenth * 10),
        );
        const runs = [aRun("run", { looks: upstream ? "upstream" : "downstream" })];
        for (const { residual } of anchorResiduals({ runs, anchors })) expect(residual).toBe(0);
      },
    ),
  );
});
