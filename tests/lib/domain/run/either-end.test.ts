import fc from "fast-check";
import { expect, test } from "vitest";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { Direction, FootageFrom } from "#lib/domain/facts/run.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import {
  aFile,
  anAnchor,
  anEntry,
  anObservation,
  aRecord,
  aRun,
  aTieIn,
} from "#tests/support/file.ts";

/** A line as it is: tie-ins by station and by the clock as one looks upstream; a faulty stretch. */
interface Truth {
  readonly length: number;
  readonly tieIns: readonly { readonly station: number; readonly clock: number }[];
  readonly fault: { readonly from: number; readonly to: number };
}

interface Told {
  readonly looks: Direction;
  readonly measuredFrom: FootageFrom;
  /** Known points besides the run's own zero. */
  readonly anchored: "main" | "top" | "both";
}

/** The line as a run tells it: where it went in, how it looked, what its footage is measured from. */
function toldAs(
  { length, tieIns, fault }: Truth,
  { looks, measuredFrom, anchored }: Told,
): LineFile {
  const rises = measuredFrom === "main" || looks === "upstream";
  const counter = (station: number) => (rises ? station : length - station);
  const clock = (hour: number) => (looks === "upstream" ? hour : 12 - hour || 12);
  const [from, to] = [counter(fault.from), counter(fault.to)].sort((a, b) => a - b);
  const known = { main: [0], top: [length], both: [0, length] }[anchored];
  return aFile({
    line: { id: "line", upperEnd: length },
    records: [aRecord("card")],
    entries: tieIns.map(({ station, clock: hour }, at) =>
      anEntry(`e${at}`, { recordId: "card", distance: station, side: hour < 6 ? "right" : "left" }),
    ),
    tieIns: tieIns.map((_, at) => aTieIn(`T${at}`, { side: "unknown" })),
    runs: [aRun("run", { looks, measuredFrom, toCounter: length })],
    anchors: known.map((station) => anAnchor("run", { counter: counter(station), station })),
    observations: [
      ...tieIns.map(({ station, clock: hour }, at) =>
        anObservation(`o${at}`, {
          counter: counter(station),
          clock: clock(hour),
          tieInId: `T${at}`,
        }),
      ),
      anObservation("f", { kind: "fault", fault: "roots", counter: from ?? 0, toCounter: to ?? 0 }),
    ],
  });
}

const TRUTH = fc
  .record({
    length: fc.integer({ min: 600, max: 2_000 }),
    tieIns: fc.uniqueArray(
      fc.record({ at: fc.integer({ min: 1, max: 99 }), clock: fc.constantFrom(2, 3, 4, 8, 9, 10) }),
      { minLength: 1, maxLength: 6, selector: ({ at }) => at },
    ),
    fault: fc.tuple(fc.integer({ min: 0, max: 49 }), fc.integer({ min: 50, max: 100 })),
  })
  .map(({ length: tenths, tieIns, fault }): Truth => {
    const length = tenths * 10;
    const at = (percent: number) => Math.round((tenths * percent) / 100) * 10;
    return {
      length,
      tieIns: tieIns.map(({ at: percent, clock }) => ({ station: at(percent), clock })),
      fault: { from: at(fault[0]), to: at(fault[1]) },
    };
  });

const TOLD: fc.Arbitrary<Told> = fc.record({
  looks: fc.constantFrom("upstream" as const, "downstream" as const),
  measuredFrom: fc.constantFrom("access" as const, "main" as const),
  anchored: fc.constantFrom("main" as const, "top" as const, "both" as const),
});

test("a line told from either end, however it looked and was measured, is the same line", () => {
  fc.assert(
    fc.property(TRUTH, TOLD, TOLD, (truth, one, other) => {
      const [first, second] = [one, other].map((told) =>
        reportOn(toldAs(truth, told), "2026-11-25"),
      );
      const answers = [first, second].map((report) => ({
        problems: report?.problems,
        places: report?.tieIns.map(({ station, side, standing, entryId }) => ({
          station,
          side,
          standing,
          entryId,
        })),
        pairs: report?.proposals.map(({ entryId, tieInId, band }) => ({ entryId, tieInId, band })),
        coverage: report?.coverage,
      }));
      expect(answers[0]).toEqual(answers[1]);
      expect(first?.tieIns.map(({ station }) => station)).toEqual(
        truth.tieIns.map(({ station }) => station),
      );
      expect(first?.tieIns.map(({ side }) => side)).toEqual(
        truth.tieIns.map(({ clock }) => (clock < 6 ? "right" : "left")),
      );
      const fault = first?.stations.find(({ observationId }) => observationId === "f");
      const ends = [fault?.station, fault?.toStation].sort((a, b) => (a ?? 0) - (b ?? 0));
      expect(ends).toEqual([truth.fault.from, truth.fault.to]);
    }),
    { numRuns: 300 },
  );
});
