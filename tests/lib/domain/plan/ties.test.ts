import fc from "fast-check";
import { expect, test } from "vitest";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { tieFindings } from "#lib/domain/plan/ties.ts";
import { cornersOver, triangleOf } from "#lib/domain/plan/triangle.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { aFile, aPoint, aTieIn } from "../../../support/file.ts";
import { aBend, aFixedPoint, aTie } from "../../../support/plan.ts";

/** T1 at 40 ft on a line that runs east; A 30 ft north of the main, B 80 ft east of A. */
function found(overrides: Parameters<typeof aFile>[0] = {}) {
  const file: LineFile = aFile({
    line: { bearing: 90 },
    tieIns: [aTieIn("T1", { station: 4_000 })],
    fixedPoints: [
      aFixedPoint("A", { name: "the hydrant", east: 0, north: 3_000 }),
      aFixedPoint("B", { name: "the corner of the house", east: 8_000, north: 3_000 }),
    ],
    ...overrides,
  });
  const [finding] = tieFindings(file, reportOn(file, "2026-11-25").tieIns);
  if (finding === undefined) throw new Error("no tie");
  return finding;
}

const right = { fromDistance: 5_000, otherDistance: 5_000, side: "right" } as const;

test("a tie on the right of its fixed points lands where bearing and footage say", () => {
  const finding = found({ ties: [aTie("t", right)] });
  expect(finding.state).toBe("closes");
  expect(finding.spot).toEqual({ east: 4_000, north: 0 });
  expect(finding.off).toBe(0);
  expect(finding.words).toBe("50.0 ft from the hydrant and 50.0 ft from the corner of the house");
  expect(finding.sentence).toBe(
    "The triangle closes over 80.0 ft of the plan. It is 0.0 ft from where bearing and footage put it.",
  );
});

test("with the side not said, the line says it; the wrong side is named with the way to go", () => {
  expect(found({ ties: [aTie("t", { ...right, side: "unknown" })] }).spot).toEqual({
    east: 4_000,
    north: 0,
  });
  const wrong = found({ ties: [aTie("t", { ...right, side: "left" })] });
  expect(wrong.off).toBe(6_000);
  expect(wrong.sentence).toContain("It is 60.0 ft north of where bearing and footage put it");
});

test("without a bearing and a side it stays open on which side it lies", () => {
  const finding = found({
    line: { bearing: null },
    ties: [aTie("t", { ...right, side: "unknown" })],
  });
  expect(finding.spot).toBeNull();
  expect(finding.sentence).toContain("Say on which side of the two fixed points it lies.");
});

test.each([
  [
    "short",
    3_000,
    4_000,
    "70.0",
    "30.0 ft and 40.0 ft together are 10.0 ft too short for the 80.0 ft between the hydrant and the corner of the house. Tape again.",
  ],
  [
    "long",
    1_000,
    9_900,
    "",
    "10.0 ft and 99.0 ft differ by 9.0 ft more than the 80.0 ft between the hydrant and the corner of the house. Tape again.",
  ],
] as const)(
  "a triangle that is too %s does not close, and says by how much",
  (state, fromDistance, otherDistance, _, words) => {
    const finding = found({ ties: [aTie("t", { fromDistance, otherDistance })] });
    expect(finding.state).toBe(state);
    expect(finding.spot).toBeNull();
    expect(finding.sentence).toBe(`The triangle does not close: ${words}`);
  },
);

test("a tape between the fixed points checks them without a plan", () => {
  const fixedPoints = [aFixedPoint("A"), aFixedPoint("B")];
  expect(found({ fixedPoints, ties: [aTie("t")] }).state).toBe("unchecked");
  expect(found({ fixedPoints, ties: [aTie("t", { apart: 5_000 })] }).state).toBe("closes");
  expect(found({ fixedPoints, ties: [aTie("t", { apart: 8_000 })] }).state).toBe("short");
});

test("a tape that contradicts the plan is said", () => {
  const finding = found({ ties: [aTie("t", { ...right, apart: 8_600 })] });
  expect(finding.sentence).toContain("On the plan the two fixed points are 80.0 ft apart");
});

test("tapes that meet at a flat angle are called loose", () => {
  const finding = found({ ties: [aTie("t", { fromDistance: 4_050, otherDistance: 4_050 })] });
  expect(finding.sentence).toContain("meet at a flat angle");
});

test("one fixed point twice is no triangle", () => {
  expect(found({ ties: [aTie("t", { otherId: "A", apart: 0 })] }).state).toBe("same-place");
});

test("ties hold points and stations as well, and bends count", () => {
  const file = {
    points: [aPoint("co", { station: 600 })],
    bends: [aBend("b", 1_000, { degrees: 90 })],
  };
  const point = found({ ...file, ties: [aTie("t", { tieInId: null, pointId: "co" })] });
  expect([point.subject, point.station]).toEqual(["cleanout at 6.0 ft", 600]);
  const main = found({
    ties: [
      aTie("t", {
        tieInId: null,
        station: 0,
        fromDistance: 3_000,
        otherDistance: 8_544,
        side: "unknown",
      }),
    ],
  });
  expect(main.subject).toBe("main connection");
  expect(main.off).toBeLessThan(10);
});

test("a place that is taped from two points is found again, on its side", () => {
  const near = fc.integer({ min: -9_000, max: 9_000 });
  fc.assert(
    fc.property(fc.tuple(near, near), fc.tuple(near, near), fc.tuple(near, near), (a, b, p) => {
      const [one, other, at] = [a, b, p].map(([east, north]) => ({ east, north }));
      if (!one || !other || !at) return;
      const apart = Math.hypot(other.east - one.east, other.north - one.north);
      fc.pre(apart > 100);
      const first = Math.hypot(at.east - one.east, at.north - one.north);
      const second = Math.hypot(at.east - other.east, at.north - other.north);
      const triangle = triangleOf(first, second, apart);
      if (triangle.state !== "closes") throw new Error(triangle.state);
      const turn =
        (other.east - one.east) * (at.north - one.north) -
        (other.north - one.north) * (at.east - one.east);
      const corners = cornersOver(triangle, [one, other]);
      const corner = turn >= 0 ? corners.left : corners.right;
      expect(Math.hypot(corner.east - at.east, corner.north - at.north)).toBeLessThan(1);
    }),
  );
});
