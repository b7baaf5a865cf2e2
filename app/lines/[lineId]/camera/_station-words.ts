import type { Side } from "#lib/domain/line/line.ts";
import { plainFeet } from "#lib/domain/line/station.ts";
import { converterFor, sideOf } from "#lib/domain/run/convert.ts";
import type { Anchor, Run } from "#lib/domain/run/run.ts";

/** A reading as typed: not all of it has to be there yet. */
interface Reading {
  readonly counter?: unknown;
  readonly clock?: unknown;
}

/**
 * Where a reading lies on the line, in the words of a cell: `74.5 ± 1.0 ft, left`; `relative only`
 * where its run has no anchor; empty while the counter is not typed.
 */
export function stationWords(
  { counter, clock }: Reading,
  { run, anchors }: { readonly run: Run; readonly anchors: readonly Anchor[] },
): string {
  if (typeof counter !== "number") return "";
  const { toStation, isAgainst } = converterFor(run, anchors);
  const seen = sideOf(typeof clock === "number" ? clock : null, run.looks);
  const side = sideWords(isAgainst ? "unknown" : seen);
  const found = toStation(counter);
  if (found === null) return `relative only${side}`;
  return `${plainFeet(found.station)} ± ${plainFeet(found.uncertainty)} ft${side}`;
}

function sideWords(side: Side): string {
  return side === "unknown" ? "" : `, ${side}`;
}
