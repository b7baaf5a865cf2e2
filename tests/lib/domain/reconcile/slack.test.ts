import fc from "fast-check";
import { expect, test } from "vitest";
import { reportOn } from "#lib/domain/file/report-on.ts";
import { drawStrip } from "#lib/domain/strip/draw.ts";
import {
  aFile,
  anAnchor,
  anEntry,
  anObservation,
  aRecord,
  aRun,
  aTieIn,
} from "#tests/support/file.ts";

/** One run tied at the main alone, and one branch far from that anchor with an entry near it. */
function lineWith({ counter, off }: { readonly counter: number; readonly off: number }) {
  const file = aFile({
    line: { upperEnd: 60_000 },
    records: [aRecord("card")],
    entries: [anEntry("e", { distance: counter + off })],
    runs: [aRun("run", { toCounter: 60_000 })],
    anchors: [anAnchor("run")],
    tieIns: [aTieIn("t")],
    observations: [anObservation("o", { counter, tieInId: "t" })],
  });
  const report = reportOn(file, "2026-11-25");
  return { file, report, tieIn: report.tieIns[0], pair: report.proposals[0] };
}

test("what a station may be off grows from the anchor, to the tie-in, its pairing and the drawing", () => {
  // 0.5 % of 400 ft is 2 ft; the card may be off as much: together 2.8 ft.
  const { file, report, tieIn, pair } = lineWith({ counter: 40_000, off: 250 });
  expect(report.stations[0]?.uncertainty).toBe(200);
  expect(tieIn?.uncertainty).toBe(200);
  expect(pair).toMatchObject({ tolerance: 280, band: "same" });
  expect(tieIn?.sentence).toContain("give or take 2.0 ft");
  const drawn = drawStrip(file, report, "agree").below.find(({ id }) => id === "t");
  expect(drawn?.whisker).toBe(200);
});

test("2.5 ft apart is one branch 400 ft from the anchor, and a question 40 ft from it", () => {
  expect(lineWith({ counter: 40_000, off: 250 }).tieIn?.standing).toBe("on-record-and-seen");
  expect(lineWith({ counter: 4_000, off: 250 }).tieIn?.standing).toBe("on-record-seen-elsewhere");
});

test("a pairing’s tolerance is never less than its tie-in’s uncertainty, and grows with the distance", () => {
  const counter = fc.integer({ min: 0, max: 5_000 }).map((tenths) => tenths * 10);
  fc.assert(
    fc.property(counter, counter, (a, b) => {
      const near = lineWith({ counter: Math.min(a, b), off: 0 });
      const far = lineWith({ counter: Math.max(a, b), off: 0 });
      const [low = 0, high = 0] = [near, far].map(({ pair }) => pair?.tolerance);
      expect(low).toBeLessThanOrEqual(high);
      expect(high).toBeGreaterThanOrEqual(far.tieIn?.uncertainty ?? 0);
    }),
    { numRuns: 30 },
  );
});
