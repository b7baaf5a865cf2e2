import { reconcile } from "#lib/domain/reconcile/reconcile.ts";
import type { ReconcileInput } from "#lib/domain/reconcile/reconcile-input.ts";
import { goal } from "./goals.ts";
import { numbers } from "./truth.ts";

const SIZE = 40;
const TIMES = 9;

/** Forty entries against forty tie-ins whose card begins elsewhere: searched for its shift, and paired. */
export function printPairing(): void {
  const input = shifted(SIZE);
  const [first, second] = [shifted(SIZE / 4), input].map((given) => median(() => reconcile(given)));
  const [few = 0, many = 0] = [first, second];
  console.log(
    `\nPairing ${SIZE} × ${SIZE} with shift search ${many.toFixed(1)} ms, ${SIZE / 4} × ${SIZE / 4} ${few.toFixed(1)} ms`,
  );
  goal(`pairing ${SIZE} × ${SIZE} with shift search`, many, {
    ...{ most: 16, unit: "ms" },
    yardstick: `${few.toFixed(1)} ms for a quarter of the rows`,
  });
}

function shifted(size: number): ReconcileInput {
  const next = numbers(20_261_128);
  const stations = Array.from(
    { length: size },
    (_, at) => 600 + at * 420 + Math.round(next() * 200),
  );
  const sides = stations.map(() => (next() < 0.5 ? ("left" as const) : ("right" as const)));
  const seen = {
    diameter: null,
    material: "unknown",
    fitting: "unknown",
    propertyId: null,
  } as const;
  const of = (at: number) => sides[at] ?? "left";
  return {
    entries: stations.map((station, at) => ({
      ...{ entryId: `e${at}`, recordId: "card", station: station + 270, explained: false },
      ...{ side: of(at), uncertainty: 0, ...seen },
    })),
    tieIns: stations.map((station, at) => ({
      ...{ tieInId: `t${at}`, label: `T${at}`, station, uncertainty: 25, side: of(at), ...seen },
    })),
    ...{ pairings: [], alignments: [], fromUpperEnd: new Set(), looked: () => true },
    recordNames: new Map([["card", "Side sewer card"]]),
    entryNames: new Map(stations.map((_, at) => [`e${at}`, `Entry ${at}`])),
  };
}

function median(job: () => unknown): number {
  job();
  const took = Array.from({ length: TIMES }, () => {
    const start = performance.now();
    job();
    return performance.now() - start;
  }).sort((one, other) => one - other);
  return took[Math.floor(TIMES / 2)] ?? 0;
}
