import type { Report } from "../findings/report.ts";
import type { Cft } from "../length/station.ts";
import { STOP_WORDS } from "../stops/stop-words.ts";
import type { StripMark, StripSpot } from "./drawing.ts";

/** A hold on one tie-in stops work a foot to each side of it, or as far as its place is uncertain. */
const LEAST: Cft = 100;

/** A hold as a bracket over the place that it stops. One that has no station is not among them. */
export function holdMarks(report: Report, spots: readonly StripSpot[]): StripMark[] {
  const places = placesOf(report, spots);
  return report.holds.flatMap((hold) => {
    const known = places.get(hold.subjectId);
    const place = known === undefined ? hold.stretch : known;
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
  const subjects = new Map(report.holds.map(({ key, subjectId }) => [key, subjectId]));
  return marks.map(({ id, station, toStation }) => ({
    id,
    from: station,
    to: toStation ?? station,
    markId: subjects.get(id) ?? null,
    // Its bracket says it.
    sentence: "",
  }));
}

type Place = { readonly from: Cft; readonly to: Cft } | null;

/** Where each thing lies that a hold may be about: a tie-in, else an entry, a row's spot, a run. */
function placesOf(report: Report, spots: readonly StripSpot[]): ReadonlyMap<string, Place> {
  return new Map<string, Place>([
    ...report.runCoverage.map(({ runId, from, to }) => [runId, between(from, to)] as const),
    ...spots.map(({ id, from, to }) => [id, { from, to }] as const),
    ...report.entries.map(
      ({ entryId, recordStation, station }) =>
        [entryId, around(recordStation ?? station, null)] as const,
    ),
    ...report.tieIns.map(
      ({ tieIn, station, uncertainty }) => [tieIn.id, around(station, uncertainty)] as const,
    ),
  ]);
}

function around(station: Cft | null, uncertainty: Cft | null): Place {
  if (station === null) return null;
  const half = Math.max(uncertainty ?? 0, LEAST);
  return { from: station - half, to: station + half };
}

function between(one: Cft | null, other: Cft | null): Place {
  if (one === null || other === null) return null;
  return { from: Math.min(one, other), to: Math.max(one, other) };
}
