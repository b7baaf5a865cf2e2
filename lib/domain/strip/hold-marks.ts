import type { Hold } from "../facts/hold.ts";
import type { Report } from "../findings/report.ts";
import type { Cft } from "../length/station.ts";
import { STOP_WORDS } from "../stops/stop-words.ts";
import type { StripMark, StripSpot } from "./drawing.ts";

/** A hold on one tie-in stops work a foot to each side of it, or as far as its place is uncertain. */
const LEAST: Cft = 100;

/** A hold as a bracket over the place that it stops. One that has no station is not among them. */
export function holdMarks(report: Report, spots: readonly StripSpot[]): StripMark[] {
  return report.holds.flatMap((hold) => {
    const place = placeOf(hold, report, spots);
    if (place === null) return [];
    const open = hold.waiver === null;
    const stops = hold.stops.map((stop) => STOP_WORDS[stop]).join(", ");
    return [
      {
        id: hold.key,
        kind: "hold" as const,
        station: place.from,
        toStation: place.to,
        whisker: 0,
        side: "unknown" as const,
        label: `${open ? "hold" : "waived"}: ${hold.subjectLabel}`,
        detail: "",
        loud: open,
        sentence: open
          ? `Hold on ${hold.subjectLabel}. It stops ${stops}. ${hold.sentence}`
          : `Hold on ${hold.subjectLabel}, waived by ${hold.waiver.by}. ${hold.sentence}`,
      },
    ];
  });
}

/** Where a hold's row leads: to its bracket, and to the mark of what it is about. */
export function holdSpots(report: Report, marks: readonly StripMark[]): StripSpot[] {
  return marks.map(({ id, station, toStation, sentence }) => ({
    id,
    from: station,
    to: toStation ?? station,
    markId: report.holds.find((hold) => hold.key === id)?.subjectId ?? null,
    sentence,
  }));
}

function placeOf(
  hold: Hold,
  report: Report,
  spots: readonly StripSpot[],
): { from: Cft; to: Cft } | null {
  const tieIn = report.tieIns.find((one) => one.tieIn.id === hold.subjectId);
  if (tieIn !== undefined) return around(tieIn.station, tieIn.uncertainty);
  const entry = report.entries.find((one) => one.entryId === hold.subjectId);
  if (entry !== undefined) return around(entry.recordStation ?? entry.station, null);
  const spot = spots.find((one) => one.id === hold.subjectId);
  if (spot !== undefined) return { from: spot.from, to: spot.to };
  const run = report.runCoverage.find((one) => one.runId === hold.subjectId);
  if (run !== undefined) return between(run.from, run.to);
  return hold.stretch;
}

function around(station: Cft | null, uncertainty: Cft | null): { from: Cft; to: Cft } | null {
  if (station === null) return null;
  const half = Math.max(uncertainty ?? 0, LEAST);
  return { from: station - half, to: station + half };
}

function between(one: Cft | null, other: Cft | null): { from: Cft; to: Cft } | null {
  if (one === null || other === null) return null;
  return { from: Math.min(one, other), to: Math.max(one, other) };
}
