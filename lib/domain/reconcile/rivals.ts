import type { ProposedPairing } from "../file/report.ts";
import { formatFeet } from "../line/station.ts";
import { type Fit, fitted, type MayPair } from "./align.ts";
import type { FittedMark } from "./connections.ts";
import { mismatch, pairTolerance, type RecordMark, type SeenMark } from "./likeness.ts";

/** What else might be meant; null where the choice stands clear. */
export type Rival = { readonly tieIn: SeenMark | null; readonly byOtherFit: boolean } | null;

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

/** The tie-in that would do nearly as well: by another fit, or by the same one. */
export function rivalOf(
  entry: FittedMark,
  placed: { readonly tieIn: SeenMark; readonly nearTie: boolean },
  among: {
    readonly rivals: readonly Fit[];
    readonly free: readonly SeenMark[];
    readonly costOf: (entry: FittedMark, tieIn: SeenMark) => number | null;
  },
): Rival {
  const others = among.free.filter((tieIn) => tieIn !== placed.tieIn);
  if (placed.nearTie) {
    const costs = others.flatMap((tieIn) => {
      const cost = among.costOf(entry, tieIn);
      return cost === null ? [] : [{ tieIn, cost }];
    });
    const next = costs.toSorted((a, b) => a.cost - b.cost)[0]?.tieIn ?? null;
    return { tieIn: next, byOtherFit: false };
  }
  const byOtherFit = others.find((tieIn) => fitsAny(among.rivals, entry, tieIn));
  return byOtherFit ? { tieIn: byOtherFit, byOtherFit: true } : null;
}

export function rivalReasons(rival: Rival): string[] {
  if (!rival) return [];
  if (!rival.tieIn) return ["Another entry would do nearly as well: a person has to look."];
  const { label, station } = rival.tieIn;
  const what = `${label || "Another tie-in"} at ${formatFeet(station)}`;
  return rival.byOtherFit
    ? [`${what} would be meant if the record has another zero: a person has to look.`]
    : [`${what} would do nearly as well: a person has to look.`];
}

function fitsAny(fits: readonly Fit[], entry: RecordMark, tieIn: SeenMark): boolean {
  const unlike = mismatch(entry, tieIn);
  if (unlike === null || unlike >= 2) return false;
  const tolerance = pairTolerance(tieIn.station, tieIn.uncertainty);
  return fits.some((fit) => Math.abs(tieIn.station - fitted(entry.station, fit)) <= tolerance);
}
