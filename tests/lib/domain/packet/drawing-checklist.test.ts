import { expect, test } from "vitest";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { drawingWants } from "#lib/domain/packet/drawing-checklist.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { aFile, anAuthority, anObservation, aPoint, aRun } from "#tests/support/file.ts";

const CLEANOUTS = {
  id: "c",
  item: "cleanouts",
  title: "Cleanouts",
  authorityId: "authority",
  citation: "",
  asOf: "2026-01-01",
} as const;

/** A camera was pulled back from the main to a cleanout, where an authority wants cleanouts drawn. */
function wants(rest: Omit<Partial<LineFile>, "line"> = {}): readonly string[] {
  const file = aFile({
    authority: anAuthority({ drawingItems: [CLEANOUTS] }),
    runs: [aRun("r", { looks: "downstream", measuredFrom: "main" })],
    observations: [anObservation("o", { runId: "r", kind: "cleanout", counter: 9_400 })],
    ...rest,
  });
  return drawingWants({ file, report: reportOn(file, "2026-11-25") });
}

test("a cleanout that the camera saw is named where none stands among the landmarks", () => {
  expect(wants().join(" ")).toContain(
    "No cleanout is entered, but the camera saw one at 94.0 ft: enter it as a landmark.",
  );
  expect(wants({ observations: [] }).join(" ")).toContain("If there is none, say so.");
  expect(wants({ points: [aPoint("p", { station: 9_400 })] })).toEqual([]);
});
