import type { ProposedPairing } from "../findings/report.ts";
import { formatFeet } from "../length/station.ts";
import { sidesAgree } from "../run/sighting.ts";
import type { FittedMark } from "./connections.ts";
import type { Decisions } from "./decisions.ts";
import { bandOf, likenessReasons, pairTolerance, type SeenMark } from "./likeness.ts";
import { mayPropose, type Placed, type Placing } from "./place.ts";
import { type Rival, rivalOf, rivalReasons, type Ways } from "./rivals.ts";
import type { Way } from "./ways.ts";

/** What a proposal is held against, and how things are called. */
export interface Proposing extends Ways {
  readonly decisions: Decisions;
  /** False where too little of the record agrees to be sure of any pair. */
  readonly established: boolean;
  /** Other choices among the pairs that lie more than 5 ft apart. */
  readonly farUnder: readonly Way[];
  readonly entryName: (entryId: string) => string;
}

/**
 * What was placed and no person has decided, pair by pair, each with what rivals it. An entry of which
 * somebody said what became of it is looked for nowhere else.
 */
export function proposalsFrom(
  { fixed, near, far }: Placing,
  proposing: Proposing,
): ProposedPairing[] {
  const { accepted, refused } = proposing.decisions;
  const farther = { ...proposing, under: proposing.farUnder };
  const rivals = new Map<Placed, Rival>([
    ...[...fixed, ...near].map((placed) => [placed, rivalOf(placed, proposing)] as const),
    ...far.map((placed) => [placed, meantOnly(rivalOf(placed, farther))] as const),
  ]);
  return [...rivals].flatMap(([placed, rival]) =>
    placed.connection.entries
      .filter((entry) => !accepted.has(entry.entryId))
      .filter((entry) => mayPropose(entry, placed.tieIn, refused))
      .map((entry) => ({
        entry,
        pair: proposal(entry, placed.tieIn, { rival, ...proposing }),
      }))
      .filter(({ entry, pair }) => !entry.explained || pair.band !== "conflict")
      .map(({ pair }) => pair),
  );
}

/** That neither has a counterpart needs no word where the pair itself has to be explained. */
function meantOnly(rival: Rival): Rival {
  return rival?.meant === "none" ? null : rival;
}

const TOO_LITTLE =
  "Too little else of the record matches the camera to be sure: needs human review.";

/** One pair as it is put to a person, with what speaks for and against it. */
function proposal(
  entry: FittedMark,
  tieIn: SeenMark,
  {
    rival,
    entryName,
    established,
  }: Pick<Proposing, "entryName" | "established"> & { readonly rival: Rival },
): ProposedPairing {
  const distance = tieIn.station - entry.fittedStation;
  const rawDistance = tieIn.station - entry.station;
  const tolerance = pairTolerance(tieIn, entry);
  const near = bandOf(Math.abs(distance), tolerance, sidesAgree(entry.drawnSide, tieIn.side));
  const isByChance = near === "same" && !established;
  const band = isByChance ? "likely" : near;
  return {
    entryId: entry.entryId,
    tieInId: tieIn.tieInId,
    distance,
    rawDistance,
    tolerance,
    band,
    reasons: [
      distanceReason({ distance, rawDistance, tolerance, band }),
      ...likenessReasons({ ...entry, side: entry.drawnSide }, tieIn),
      ...rivalReasons(rival, entryName),
      ...(isByChance ? [TOO_LITTLE] : []),
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
      : ` after correcting the record's zero and scale (${formatFeet(Math.abs(rawDistance))} as recorded)`;
  const within = Math.abs(distance) <= tolerance;
  return `${apart} difference${allowed}; ${within ? "within" : "beyond"} the ${formatFeet(tolerance)} tolerance.`;
}
