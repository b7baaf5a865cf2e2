import fc from "fast-check";
import { expect, test } from "vitest";
import type { Observation } from "#lib/domain/facts/run.ts";
import { scheduleSheet } from "#lib/domain/packet/sheets-line.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { drawStrip } from "#lib/domain/strip/draw.ts";
import {
  aFile,
  anAnchor,
  anEntry,
  anObservation,
  anOffice,
  aRecord,
  aRun,
  aTieIn,
} from "#tests/support/file.ts";

/** One run tied at the main alone, and one branch far from that anchor with an entry near it. */
function lineWith(
  { counter, off }: { readonly counter: number; readonly off: number },
  seen: Partial<Observation> = {},
  others: readonly Observation[] = [],
) {
  const file = aFile({
    line: { upperEnd: 60_000 },
    records: [aRecord("card")],
    entries: [anEntry("e", { distance: counter + off })],
    runs: [aRun("run", { toCounter: 60_000 })],
    anchors: [anAnchor("run")],
    tieIns: [aTieIn("t")],
    observations: [anObservation("o", { counter, tieInId: "t", ...seen }), ...others],
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
  const drawn = drawStrip(file, report, "reconcile").below.find(({ id }) => id === "t");
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

test("what a reading itself may be off goes with it: station, tie-in, pairing, standing, drawing, schedule", () => {
  const unsure = { reading: "between", uncertainty: 400 } as const;
  const { file, report, tieIn, pair } = lineWith({ counter: 4_000, off: 350 }, unsure);
  expect(report.stations[0]?.uncertainty).toBe(400);
  expect(tieIn?.uncertainty).toBe(400);
  expect(pair).toMatchObject({ tolerance: 410, band: "same" });
  expect(tieIn?.standing).toBe("on-record-and-seen");
  expect(tieIn?.sentence).toContain("give or take 4.0 ft");
  expect(tieIn?.sentenceEs).toContain("4.0 pies");
  const drawn = drawStrip(file, report, "reconcile").below.find(({ id }) => id === "t");
  expect(drawn?.whisker).toBe(400);
  const { blocks } = scheduleSheet({ file, report, office: anOffice() });
  expect(JSON.stringify(blocks)).toContain('["t","40.0 ± 4.0"');
  // The same reading, read out: 3.5 ft from the entry is another place.
  expect(lineWith({ counter: 4_000, off: 350 }).tieIn?.standing).toBe("on-record-seen-elsewhere");
});

test("a reading by time that nobody said how far off it is may be off by half of the way between its neighbors", () => {
  const around = [anObservation("a", { counter: 3_400 }), anObservation("b", { counter: 4_600 })];
  const by = { reading: "between" } as const;
  expect(lineWith({ counter: 4_000, off: 0 }, by, around).report.stations[0]?.uncertainty).toBe(
    600,
  );
  expect(lineWith({ counter: 4_000, off: 0 }, by).report.stations[0]?.uncertainty).toBe(100);
  expect(lineWith({ counter: 4_000, off: 0 }, {}, around).report.stations[0]?.uncertainty).toBe(
    100,
  );
});

test("a surer sighting of the same branch narrows what an unsure one says", () => {
  const surer = anObservation("s", { runId: "second", counter: 4_050, tieInId: "t" });
  const { file } = lineWith({ counter: 4_000, off: 0 }, { uncertainty: 500 }, [surer]);
  const both = {
    ...file,
    runs: [...file.runs, aRun("second", { toCounter: 60_000 })],
    anchors: [...file.anchors, anAnchor("second")],
  };
  expect(reportOn(both, "2026-11-25").tieIns[0]).toMatchObject({
    station: 4_050,
    uncertainty: 100,
  });
});

test("a head that turns keeps its clock and decides no side: not of a sighting, a pairing or a standing", () => {
  const sided = (selfLeveling: "yes" | "no" | "unknown") => {
    const { file } = lineWith({ counter: 4_000, off: 20 }, { clock: 3 });
    const entries = file.entries.map((entry) => ({ ...entry, side: "left" as const }));
    const runs = file.runs.map((run) => ({ ...run, selfLeveling }));
    const tieIns = file.tieIns.map((tieIn) => ({ ...tieIn, side: "unknown" as const }));
    return reportOn({ ...file, entries, runs, tieIns }, "2026-11-25");
  };
  const turning = sided("no");
  expect(turning.stations[0]).toMatchObject({ side: "unknown", unsureSide: "right" });
  expect(turning.tieIns[0]).toMatchObject({ side: "unknown", standing: "on-record-and-seen" });
  expect(turning.proposals[0]?.band).toBe("same");
  // Upright, the same clock speaks against the card.
  expect(sided("yes").stations[0]).toMatchObject({ side: "right", unsureSide: "unknown" });
  expect(sided("yes").proposals[0]?.band ?? "none").not.toBe("same");
  expect(sided("unknown")).toEqual(sided("yes"));
});
