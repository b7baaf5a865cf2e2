import { expect, test } from "vitest";
import type { LinePoint } from "#lib/domain/line/line.ts";
import { depthCaution } from "#lib/domain/split/depth-cautions.ts";

function pointAt(station: number, depth: number | null): LinePoint {
  return { id: `p${station}`, kind: "cleanout", station, depth, note: "" };
}

test("depthCaution() goes by the deepest point and names it", () => {
  const { sentence, needs } = depthCaution({ points: [pointAt(600, 720), pointAt(1200, 300)] });
  expect(sentence).toMatch(/^The pipe lies 7.2 ft deep at 6.0 ft/);
  expect(needs.map((need) => need.key)).toEqual(["way-out", "air-test", "protection"]);
});

test("depthCaution() says that the depth is unknown where no point has one", () => {
  for (const points of [[], [pointAt(600, null)]]) {
    const { sentence, needs } = depthCaution({ points });
    expect(sentence).toMatch(/^No depth is noted/);
    expect(needs).toEqual([]);
  }
});
