import type { MayPair } from "./field.ts";
import { type Fit, fitted, readingOf, sideAs } from "./fit.ts";
import { mismatch, pairTolerance, type RecordMark, type SeenMark } from "./likeness.ts";

/** What would have to be otherwise for something left over to have a counterpart after all. */
export type DoubtWhy =
  | "zero"
  | "mirrored"
  | "meters"
  | "other-end"
  | "meters-from-other-end"
  /** Too little of the record agrees for anything to be ruled out. */
  | "not-established";

/** Why nothing firm can be said of a tie-in or an entry left over, and what it may be. */
export interface Doubt {
  readonly why: DoubtWhy;
  /** The entry that the tie-in may be, or the tie-in that the entry may be. */
  readonly otherId: string | null;
}

/** Another fit, for all records or for one, that explains nearly as much or more. */
interface OtherFit {
  readonly fit: Fit;
  readonly recordId: string | null;
}

/** A whole other way to pair that explains at least as much as what is proposed. */
interface OtherPairs extends OtherFit {
  readonly pairs: readonly { readonly entryId: string; readonly tieInId: string }[];
}

export interface Doubts {
  readonly tieIns: ReadonlyMap<string, Doubt>;
  readonly entries: ReadonlyMap<string, Doubt>;
}

interface Found {
  readonly entries: readonly RecordMark[];
  readonly tieIns: readonly SeenMark[];
  readonly mayPair: MayPair;
  /** The fit in use, which a doubt is told against. */
  readonly fitOf: (recordId: string) => Fit;
  /** What is paired now, in conflict left out. */
  readonly paired: { readonly entries: ReadonlySet<string>; readonly tieIns: ReadonlySet<string> };
  readonly fits: readonly OtherFit[];
  readonly ways: readonly OtherPairs[];
  /** False where too little of the record agrees to say where it lies. */
  readonly established: boolean;
}

/**
 * Tie-ins and entries left over of which nothing firm can be said: another fit lays them on
 * something, or a way to pair that explains as much does, or nothing is established at all.
 */
export function doubtsOf(found: Found): Doubts {
  const tieIns = new Map<string, Doubt>();
  const entries = new Map<string, Doubt>();
  const note = ({ fit, recordId }: OtherFit, entry: RecordMark, tieInId: string) => {
    if (recordId !== null && recordId !== entry.recordId) return;
    const why = whyOf(fit, found.fitOf(entry.recordId));
    const { paired } = found;
    if (!paired.tieIns.has(tieInId) && !tieIns.has(tieInId))
      tieIns.set(tieInId, { why, otherId: entry.entryId });
    if (!entry.explained && !paired.entries.has(entry.entryId) && !entries.has(entry.entryId))
      entries.set(entry.entryId, { why, otherId: tieInId });
  };
  for (const other of found.fits)
    for (const entry of found.entries)
      for (const tieIn of found.tieIns.filter((each) => fits(found, other.fit, entry, each)))
        note(other, entry, tieIn.tieInId);
  const byId = new Map(found.entries.map((entry) => [entry.entryId, [entry]]));
  for (const way of found.ways)
    for (const { entryId, tieInId } of way.pairs)
      for (const entry of byId.get(entryId) ?? []) note(way, entry, tieInId);
  if (!found.established) leaveOpen(found, { tieIns, entries });
  return { tieIns, entries };
}

function leaveOpen(
  { tieIns, entries, paired }: Found,
  doubts: { tieIns: Map<string, Doubt>; entries: Map<string, Doubt> },
): void {
  const open: Doubt = { why: "not-established", otherId: null };
  for (const { tieInId } of tieIns)
    if (!paired.tieIns.has(tieInId) && !doubts.tieIns.has(tieInId))
      doubts.tieIns.set(tieInId, open);
  for (const { entryId, explained } of entries)
    if (!explained && !paired.entries.has(entryId) && !doubts.entries.has(entryId))
      doubts.entries.set(entryId, open);
}

/** What another fit takes otherwise than the one in use. */
export function whyOf(fit: Fit, used: Fit): Exclude<DoubtWhy, "not-established"> {
  const { meters, reversed } = readingOf(fit);
  const now = readingOf(used);
  if (meters !== now.meters && reversed !== now.reversed) return "meters-from-other-end";
  if (meters !== now.meters) return "meters";
  if (reversed !== now.reversed) return "other-end";
  return fit.mirrored === used.mirrored ? "zero" : "mirrored";
}

function fits({ mayPair }: Found, fit: Fit, entry: RecordMark, tieIn: SeenMark): boolean {
  if (!mayPair(entry.entryId, tieIn.tieInId)) return false;
  const unlike = mismatch({ ...entry, side: sideAs(entry.side, fit) }, tieIn);
  if (unlike === null || unlike >= 2) return false;
  const tolerance = pairTolerance(tieIn, entry);
  return Math.abs(tieIn.station - fitted(entry.station, fit)) <= tolerance;
}
