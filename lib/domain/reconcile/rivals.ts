import type { ProposedPairing } from "../file/report.ts";
import { formatFeet } from "../line/station.ts";
import { type Fit, fitted, type MayPair } from "./align.ts";
import { mismatch, pairTolerance, type RecordMark, type SeenMark } from "./likeness.ts";
import type { Placed } from "./place.ts";

/** What else might be meant by a pair; null where the choice stands clear. */
export type Rival = {
  /** Only if the record has another zero. */
  readonly byOtherFit: boolean;
  /** The entry's other tie-in, the tie-in's other entry, or none for either. */
  readonly meant: { readonly tieIn: SeenMark } | { readonly entryId: string } | "none";
} | null;

/** Other whole ways to pair: under the same fit, and under others that are nearly as good. */
export interface Ways {
  readonly under: readonly (readonly Placed[])[];
  readonly byOtherFit: readonly (readonly Placed[])[];
}

interface Found {
  readonly entries: readonly RecordMark[];
  readonly tieIns: readonly SeenMark[];
  readonly accepted: ReadonlyMap<string, string>;
  readonly proposals: readonly ProposedPairing[];
  readonly mayPair: MayPair;
}

/** Tie-ins without a pairing for which another fit, nearly as good, finds an entry. */
export function doubtfulUnder(
  rivals: readonly Fit[],
  { entries, tieIns, accepted, proposals, mayPair }: Found,
): Map<string, string> {
  const paired = new Set([
    ...proposals.filter((each) => each.band !== "conflict").map((each) => each.tieInId),
    ...accepted.values(),
  ]);
  return new Map(
    tieIns
      .filter((tieIn) => !paired.has(tieIn.tieInId))
      .flatMap((tieIn) => {
        const entry = entries.find(
          (each) => mayPair(each.entryId, tieIn.tieInId) && fitsAny(rivals, each, tieIn),
        );
        return entry ? [[tieIn.tieInId, entry.entryId] as const] : [];
      }),
  );
}

/** True where a fit would give any entry another tie-in, or any tie-in left over an entry. */
export function pairsOtherwise(fit: Fit, found: Found): boolean {
  if (doubtfulUnder([fit], found).size > 0) return true;
  return found.proposals.some((pair) => {
    const entry = found.entries.find((each) => each.entryId === pair.entryId);
    return found.tieIns.some(
      (tieIn) =>
        entry !== undefined && tieIn.tieInId !== pair.tieInId && fitsAny([fit], entry, tieIn),
    );
  });
}

/**
 * What else would do nearly as well for a pair, judged by whole ways to pair and not pair by pair:
 * first those under the same fit, then those under another.
 */
export function rivalOf(placed: Placed, { under, byOtherFit }: Ways): Rival {
  const here = placed.nearTie ? meantIn(under, placed) : null;
  if (here) return { byOtherFit: false, meant: here };
  const there = meantIn(byOtherFit, placed);
  if (there) return { byOtherFit: true, meant: there };
  return placed.nearTie ? { byOtherFit: false, meant: "none" } : null;
}

/** The other tie-in that some way gives an entry, or the other entry that it gives a tie-in. */
function meantIn(ways: readonly (readonly Placed[])[], { connection, tieIn }: Placed) {
  const ids = new Set(connection.entries.map(({ entryId }) => entryId));
  for (const way of ways) {
    const own = way.find((each) => each.connection.entries.some(({ entryId }) => ids.has(entryId)));
    if (own && own.tieIn !== tieIn) return { tieIn: own.tieIn };
    const other = way.find((each) => each.tieIn === tieIn)?.connection.entries[0];
    if (other && !ids.has(other.entryId)) return { entryId: other.entryId };
  }
  return null;
}

/** The words for it: a person has to look. */
export function rivalReasons(rival: Rival, entryName: (entryId: string) => string): string[] {
  if (!rival) return [];
  const { meant, byOtherFit } = rival;
  if (meant === "none")
    return ["That neither has a counterpart is nearly as likely: a person has to look."];
  const what =
    "tieIn" in meant
      ? `${meant.tieIn.label || "Another tie-in"} at ${formatFeet(meant.tieIn.station)}`
      : `The record’s ${entryName(meant.entryId)}`;
  return byOtherFit
    ? [`${what} would be meant if the record has another zero: a person has to look.`]
    : [`${what} would do nearly as well: a person has to look.`];
}

function fitsAny(fits: readonly Fit[], entry: RecordMark, tieIn: SeenMark): boolean {
  const unlike = mismatch(entry, tieIn);
  if (unlike === null || unlike >= 2) return false;
  const tolerance = pairTolerance(tieIn.station, tieIn.uncertainty);
  return fits.some((fit) => Math.abs(tieIn.station - fitted(entry.station, fit)) <= tolerance);
}
