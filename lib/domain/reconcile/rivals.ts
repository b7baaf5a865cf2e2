import { formatFeet } from "../length/station.ts";
import { type DoubtWhy, whyOf } from "./doubt.ts";
import type { Fit } from "./fit.ts";
import type { SeenMark } from "./likeness.ts";
import type { Placed } from "./place.ts";
import type { Way } from "./ways.ts";

/** What else might be meant by a pair; null where the choice stands clear. */
export type Rival = {
  /** What would have to be otherwise; null: nothing. */
  readonly why: Why | null;
  /** The entry's other tie-in, the tie-in's other entry, or none for either. */
  readonly meant: { readonly tieIn: SeenMark } | { readonly entryId: string } | "none";
} | null;

type Why = Exclude<DoubtWhy, "not-established">;

/** What would have to be so, in the words of a condition. */
export const IF_WORDS: Record<Why, string> = {
  zero: "if the record uses another zero",
  mirrored: "if the sides on record are as seen looking downstream",
  meters: "if the record is in meters",
  "other-end": "if the record measures from the other end",
  "meters-from-other-end": "if the record is in meters and measures from the other end",
};

/** Other whole ways to pair: under the same fit, and under others that are nearly as good. */
export interface Ways {
  readonly under: readonly Way[];
  readonly byOtherFit: readonly Way[];
  readonly fitOf: (recordId: string) => Fit;
}

/**
 * What else would do nearly as well for a pair, judged by whole ways to pair and not pair by pair:
 * first those under the same fit, then those under another.
 */
export function rivalOf(placed: Placed, { under, byOtherFit, fitOf }: Ways): Rival {
  if (placed.nearTie)
    for (const way of under) {
      const meant = meantIn(way, placed);
      if (meant) return { why: null, meant };
    }
  const used = fitOf(placed.connection.entries[0]?.recordId ?? "");
  for (const way of byOtherFit) {
    const meant = meantIn(way, placed) ?? (isUnpairedBy(way, placed) ? "none" : null);
    if (meant) return { why: whyOf(way.fit, used), meant };
  }
  return placed.nearTie ? { why: null, meant: "none" } : null;
}

/** The other tie-in that a way gives an entry, or the other entry that it gives a tie-in. */
function meantIn({ placed }: Way, { connection, tieIn }: Placed) {
  const ids = new Set(connection.entries.map(({ entryId }) => entryId));
  const holds = (each: Placed) => each.connection.entries.some(({ entryId }) => ids.has(entryId));
  const own = placed.find(holds);
  if (own && own.tieIn !== tieIn) return { tieIn: own.tieIn };
  const other = placed.find((each) => each.tieIn === tieIn && !holds(each));
  const [entry] = other?.connection.entries ?? [];
  return entry ? { entryId: entry.entryId } : null;
}

/** True where a reading that explains more of the record leaves both without a counterpart. */
function isUnpairedBy({ recordId, explainsMore, placed }: Way, { connection, tieIn }: Placed) {
  const [entry] = connection.entries;
  if (!explainsMore || entry === undefined || entry.recordId !== recordId) return false;
  return placed.every(
    (each) =>
      each.tieIn !== tieIn &&
      each.connection.entries.every(({ entryId }) => entryId !== entry.entryId),
  );
}

/** The words for it: a person has to look. */
export function rivalReasons(rival: Rival, entryName: (entryId: string) => string): string[] {
  if (!rival) return [];
  const { meant, why } = rival;
  if (meant === "none")
    return [
      why === null
        ? "It is nearly as likely that neither has a match: needs human review."
        : `Neither has a match ${IF_WORDS[why]}: needs human review.`,
    ];
  const what =
    "tieIn" in meant
      ? `${meant.tieIn.label || "Another tie-in"} at ${formatFeet(meant.tieIn.station)}`
      : `The record’s ${entryName(meant.entryId)}`;
  return why === null
    ? [`${what} is nearly as good a match: needs human review.`]
    : [`${what} would be the match ${IF_WORDS[why]}: needs human review.`];
}
