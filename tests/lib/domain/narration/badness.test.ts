import { expect, test } from "vitest";
import { draftLog } from "#lib/domain/narration/log/draft-log.ts";

function told(text: string) {
  const [row] = draftLog(text, {
    looks: "downstream",
    measuredFrom: null,
    mainCounter: null,
  }).drafts;
  return row && { degree: row.degree, reduction: row.reduction, waterDepth: row.waterDepth };
}

test.each([
  ["Ten feet, roots in the joint here, nothing too terrible.", "slight", null],
  ["Ten feet, light roots.", "slight", null],
  ["At ten feet roots. Moderate.", "medium", null],
  [
    "Twenty feet, more roots, and these are heavy, blocking sixty percent of your pipe.",
    "severe",
    60,
  ],
  ["Ten feet, that's a bad root joint, I'd call it severe.", "severe", null],
  ["Ten feet, grease, 40% open.", null, 60],
  ["Ten feet, the pipe is squashed, reduced by three quarters.", null, 75],
  ["Ten feet, roots, about a third of the pipe.", null, 33],
  ["Ten feet, roots, half blocked.", null, 50],
  ["A los diez pies hay raíces, veinte por ciento.", null, 20],
  ["Ten feet, open joint, about half an inch.", null, null],
  ["Ten feet, wye on the left, heavy flow.", null, null],
])("degree and share of the bore: %s", (text, degree, reduction) => {
  expect(told(text)).toMatchObject({ degree, reduction });
});

test("a depth of water goes with the water or the belly that holds it", () => {
  expect(told("Forty feet, belly, water 1.5 inches deep.")).toMatchObject({ waterDepth: 1.5 });
  expect(told("Forty to fifty feet, she holds water, two inches maybe.")).toMatchObject({
    waterDepth: 2,
  });
});

test("a thing told twice keeps the worse word", () => {
  expect(told("Ten feet, roots, light. Those roots are heavy actually.")).toMatchObject({
    degree: "severe",
  });
});
