import { expect, test } from "vitest";
import { computedText } from "#app/_components/grid/computed.ts";
import { facesOf } from "#app/lines/[lineId]/camera/faces.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { sampleLine } from "../../../support/sample-line.ts";

const { file } = sampleLine();

/** Upstream is due east, so that left is north. */
function facing(bearing: number | null) {
  const turned = { ...file, line: { ...file.line, bearing }, bends: [] };
  return facesOf(turned, reportOn(turned, "2026-11-25").tieIns);
}

test("beside left and right stands what they face, at once as a side is typed", () => {
  const tieIn = file.tieIns.find(({ parentId }) => parentId === null);
  const faces = facing(90);
  if (faces === null || tieIn === undefined) throw new Error("no bearing, or no tie-in");
  const says = (side: string) => computedText(faces, { ...tieIn, side });
  expect(says("left")).toBe("north side");
  expect(says("right")).toBe("south side");
  expect(says("crown")).toBe("");
  expect(computedText(faces, { id: "not-saved-yet", side: "left" })).toBe("");
});

test("a line without a bearing has no such column", () => {
  expect(facing(null)).toBeNull();
});
