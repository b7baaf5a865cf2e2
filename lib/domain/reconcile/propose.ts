import type { ProposedPairing } from "../file/report.ts";
import { formatFeet } from "../line/station.ts";
import { sidesAgree } from "../run/sighting.ts";
import type { FittedMark } from "./connections.ts";
import { bandOf, likenessReasons, pairTolerance, type SeenMark } from "./likeness.ts";
import { type Rival, rivalReasons } from "./rivals.ts";

/** One pair as it is put to a person, with what speaks for and against it. */
export function proposal(
  entry: FittedMark,
  tieIn: SeenMark,
  { rival, entryName }: { rival: Rival; entryName: (entryId: string) => string },
): ProposedPairing {
  const distance = tieIn.station - entry.fittedStation;
  const rawDistance = tieIn.station - entry.station;
  const tolerance = pairTolerance(tieIn.station, tieIn.uncertainty);
  const band = bandOf(Math.abs(distance), tolerance, sidesAgree(entry.side, tieIn.side));
  return {
    entryId: entry.entryId,
    tieInId: tieIn.tieInId,
    distance,
    rawDistance,
    tolerance,
    band,
    reasons: [
      distanceReason({ distance, rawDistance, tolerance, band }),
      ...likenessReasons(entry, tieIn),
      ...rivalReasons(rival, entryName),
    ],
    nearTie: rival !== null,
  };
}

function distanceReason(
  pair: Pick<ProposedPairing, "distance" | "rawDistance" | "tolerance" | "band">,
): string {
  const { distance, rawDistance, tolerance } = pair;
  const apart = formatFeet(Math.abs(distance));
  const allowed =
    distance === rawDistance
      ? ""
      : ` once the record's zero and scale are allowed for (${formatFeet(Math.abs(rawDistance))} as written)`;
  const within = Math.abs(distance) <= tolerance;
  return `${apart} apart${allowed}; ${within ? "within" : "beyond"} the ${formatFeet(tolerance)} that readings may differ by.`;
}
