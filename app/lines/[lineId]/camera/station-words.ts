import type { Side } from "#lib/domain/facts/line.ts";
import type { Anchor, Observation, Run } from "#lib/domain/facts/run.ts";
import { plainFeet } from "#lib/domain/length/station.ts";
import { converterFor, sidesOf } from "#lib/domain/run/convert.ts";
import { readingOff } from "#lib/domain/run/reading-off.ts";

/** A reading as typed: not all of it has to be there yet. */
interface Reading {
  readonly counter?: unknown;
  readonly clock?: unknown;
  readonly reading?: unknown;
  readonly uncertainty?: unknown;
}

/**
 * Where a reading lies on the line, in the words of a cell: `74.5 ± 1.0 ft, left`; `no station`
 * where its run has no anchor; empty while the counter is not typed.
 */
export function stationWords(
  row: Reading,
  {
    run,
    anchors,
    log,
  }: {
    readonly run: Run;
    readonly anchors: readonly Anchor[];
    /** What the run saw, as saved. */
    readonly log: readonly Observation[];
  },
): string {
  const { counter, clock } = row;
  if (typeof counter !== "number") return "";
  const converter = converterFor(run, anchors);
  const { side, unsureSide } = sidesOf(typeof clock === "number" ? clock : null, run, converter);
  const sides = `${sideWords(side)}${sideWords(unsureSide)}${unsureSide === "unknown" ? "" : " (unsure: the head turns)"}`;
  const found = converter.toStation(counter);
  if (found === null) return `no station${sides}`;
  const off = readingOff(typedReading(row, { counter, runId: run.id }), log);
  const uncertainty = Math.max(found.uncertainty, off);
  return `${plainFeet(found.station)} ± ${plainFeet(uncertainty)} ft${sides}`;
}

function typedReading(
  { reading, uncertainty }: Reading,
  { counter, runId }: { readonly counter: number; readonly runId: string },
) {
  return {
    counter,
    runId,
    reading: reading === "between" ? ("between" as const) : ("read" as const),
    uncertainty: typeof uncertainty === "number" ? uncertainty : null,
  };
}

function sideWords(side: Side): string {
  return side === "unknown" ? "" : `, ${side}`;
}
