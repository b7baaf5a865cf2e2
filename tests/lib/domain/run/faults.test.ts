import fc from "fast-check";
import { expect, test } from "vitest";
import type { StationedObservation } from "#lib/domain/findings/report.ts";
import { faultsSeen } from "#lib/domain/run/faults.ts";
import { anObservation } from "#tests/support/file.ts";

const seen = fc.record({
  runId: fc.constantFrom("a", "b", "c"),
  fault: fc.constantFrom("crack" as const, "roots" as const, null),
  station: fc.option(fc.integer({ min: 0, max: 3_000 })),
  length: fc.option(fc.integer({ min: -400, max: 400 })),
  uncertainty: fc.option(fc.integer({ min: 0, max: 300 })),
});

type Seen = typeof seen extends fc.Arbitrary<infer T> ? T : never;

interface Place {
  observationId: string;
  fault: string | null;
  from: number | null;
  to: number | null;
  off: number;
  waterDepth: null;
  runs: string[];
}

/** What the function promises, said the slow way: each with the first of all that it may be. */
function slowly(all: readonly Seen[]): Omit<Place, "runs">[] {
  const places: Place[] = [];
  const sorted = all
    .map((one, at): Place => {
      const other = one.station === null || one.length === null ? null : one.station + one.length;
      const ends = [one.station, other].filter((end) => end !== null).sort((a, b) => a - b);
      const [from = null, to = null] = ends;
      const off = one.uncertainty ?? 0;
      const place = { observationId: `o${at}`, fault: one.fault, from, to, off, waterDepth: null };
      return { ...place, runs: [one.runId] };
    })
    .toSorted((a, b) => (a.from ?? Number.MAX_SAFE_INTEGER) - (b.from ?? Number.MAX_SAFE_INTEGER));
  for (const one of sorted) {
    const same = places.find((each) => !each.runs.includes(one.runs[0] ?? "") && meets(each, one));
    if (same === undefined) {
      places.push(one);
      continue;
    }
    same.runs.push(...one.runs);
    if (same.to === null && one.to === null) continue;
    const ends = [same.from, same.to, one.from, one.to].filter((end) => end !== null);
    same.from = Math.min(...ends);
    same.to = Math.max(...ends);
    same.off = Math.max(same.off, one.off);
  }
  return places.map(({ runs: _runs, ...place }) => place);
}

function meets(one: Place, other: Place): boolean {
  if (one.fault !== other.fault || one.from === null || other.from === null) return false;
  const slack = one.off + other.off;
  return other.from <= (one.to ?? one.from) + slack && one.from <= (other.to ?? other.from) + slack;
}

test("faultsSeen() puts together what runs saw of a kind, whatever lies between", () => {
  fc.assert(
    fc.property(fc.array(seen, { maxLength: 40 }), (all) => {
      const observations = all.map((one, at) =>
        anObservation(`o${at}`, { kind: "fault", fault: one.fault, runId: one.runId }),
      );
      const stations = all.map(
        (one, at) =>
          ({
            observationId: `o${at}`,
            runId: one.runId,
            station: one.station,
            toStation:
              one.station === null || one.length === null ? null : one.station + one.length,
            uncertainty: one.uncertainty,
          }) as unknown as StationedObservation,
      );
      expect(faultsSeen({ observations }, { stations })).toEqual(slowly(all));
    }),
    { numRuns: 300 },
  );
});
