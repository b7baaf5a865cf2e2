import type { Alternative } from "../file/report.ts";
import { formatFeet } from "../line/station.ts";
import type { Fit, FitScore } from "./align.ts";
import { percentWords } from "./alignment-sentence.ts";
import type { Decisions } from "./decisions.ts";
import type { RecordMark, SeenMark } from "./likeness.ts";
import { pairTolerance } from "./likeness.ts";
import {
  fitEntries,
  mayPropose,
  otherPlacings,
  type Placed,
  type Placing,
  place,
} from "./propose.ts";

/** More than this many ways side by side help nobody to choose. */
const MOST = 4;

/** Fits beyond these bring nothing new: they vary the ones before. */
const MOST_FITS = 12;

/** So many changes are told one by one. */
const MOST_TOLD = 3;

type Pairs = Alternative["pairs"];

interface Ways {
  readonly entries: readonly RecordMark[];
  readonly tieIns: readonly SeenMark[];
  readonly decisions: Decisions;
  /** What is proposed, laid out. */
  readonly chosen: Placing;
  readonly fit: Fit;
  readonly own: ReadonlyMap<string, Fit>;
  /** Clearly different fits nearly as good, the best first. */
  readonly rivals: readonly FitScore[];
  readonly entryName: (entryId: string) => string;
  readonly manyRecords: boolean;
}

/**
 * Other ways to pair record and camera that the numbers allow: another shift or scale whose score is
 * no more than 1.75 pairs behind the best, or another choice of pairs under the same one that costs
 * less than 0.7 of a tolerance more. Each differs from the others and from what is proposed in its
 * pairs; four at most, other fits first.
 */
export function alternativesTo(ways: Ways): Alternative[] {
  const { entries, tieIns, decisions, chosen, fit, own } = ways;
  const told = (placed: readonly Placed[]) => pairsOf(placed, decisions);
  const now = told([...chosen.fixed, ...chosen.near]);
  const seen = new Set([keyOf(now)]);
  const found: Alternative[] = [];
  const add = (under: Fit, pairs: Pairs) => {
    const key = keyOf(pairs);
    if (found.length >= MOST || seen.has(key)) return;
    seen.add(key);
    found.push(alternative({ fit: under, pairs, now }, ways));
  };
  for (const rival of ways.rivals.slice(0, MOST_FITS)) {
    const placing = place(fitEntries(entries, { overall: rival, own }), tieIns, decisions);
    add(rival, told([...placing.fixed, ...placing.near]));
  }
  for (const placed of otherPlacings(chosen)) add(fit, told(placed));
  return found;
}

function pairsOf(placed: readonly Placed[], { refused }: Decisions): Pairs {
  return placed
    .flatMap(({ connection, tieIn }) =>
      connection.entries
        .filter((entry) => mayPropose(entry, tieIn, refused))
        .map((entry) => ({
          entryId: entry.entryId,
          tieInId: tieIn.tieInId,
          distance: tieIn.station - entry.fittedStation,
        })),
    )
    .sort((a, b) => (a.entryId < b.entryId ? -1 : 1));
}

function keyOf(pairs: Pairs): string {
  return pairs.map(({ entryId, tieInId }) => `${entryId}=${tieInId}`).join(" ");
}

function alternative(
  { fit, pairs, now }: { fit: Fit; pairs: Pairs; now: Pairs },
  ways: Ways,
): Alternative {
  const tolerances = new Map(
    ways.tieIns.map((tieIn) => [tieIn.tieInId, pairTolerance(tieIn.station, tieIn.uncertainty)]),
  );
  const explained = pairs.filter(
    ({ tieInId, distance }) => Math.abs(distance) <= (tolerances.get(tieInId) ?? 0),
  ).length;
  const same = fit.shift === ways.fit.shift && fit.scale === ways.fit.scale;
  const start = same ? "With the same zero" : fitStart(fit, ways.manyRecords);
  const agree = `${explained} of ${ways.entries.length} ${ways.entries.length === 1 ? "entry" : "entries"} ${explained === 1 ? "agrees" : "agree"}`;
  return {
    key: `w${short(`${fit.shift}/${fit.scale} ${keyOf(pairs)}`)}`,
    shift: fit.shift,
    scale: fit.scale,
    explained,
    pairs,
    sentence: `${start}, ${agree}${changeWords(pairs, now, ways)}.`,
  };
}

/** `With the card’s zero 6.1 ft farther up`. */
function fitStart({ shift, scale }: Fit, many: boolean): string {
  const whose = many ? "the records’" : "the card’s";
  const what = many ? "the records" : "the card";
  if (shift === 0 && scale === 0) return `Taking ${what} as written`;
  const zero = `${whose} zero ${formatFeet(Math.abs(shift))} farther ${shift > 0 ? "up" : "down"}`;
  if (scale === 0) return `With ${zero}`;
  const stretch = `${scale > 0 ? "stretched" : "shortened"} by ${percentWords(scale)}`;
  return shift === 0 ? `With ${what} ${stretch}` : `With ${zero} and its lengths ${stretch}`;
}

/** ` and T2 would be House 14`: what it changes, tie-in by tie-in up the line. */
function changeWords(pairs: Pairs, now: Pairs, ways: Ways): string {
  const changes = ways.tieIns.flatMap((tieIn) => {
    const would = entriesAt(pairs, tieIn.tieInId, ways);
    const is = entriesAt(now, tieIn.tieInId, ways);
    if (would === is) return [];
    const name = tieIn.label || "a tie-in";
    if (would === "") return [`${name} would have no entry`];
    return [is === "" ? `${name} would be ${would}` : `${name} would be ${would}, not ${is}`];
  });
  if (changes.length === 0) return "";
  const told = changes.slice(0, MOST_TOLD);
  const more = changes.length - told.length;
  const last = more > 0 ? `${more} more would change` : (told.pop() ?? "");
  return told.length === 0 ? ` and ${last}` : `; ${told.join("; ")}; and ${last}`;
}

function entriesAt(pairs: Pairs, tieInId: string, ways: Ways): string {
  return pairs
    .filter((pair) => pair.tieInId === tieInId)
    .map((pair) => ways.entryName(pair.entryId))
    .join(" and ");
}

/** A short name for a text that stays the same while the text does (FNV-1a, 32 bits, from memory). */
function short(text: string): string {
  let hash = 0x811c9dc5;
  for (let at = 0; at < text.length; at += 1)
    hash = Math.imul(hash ^ text.charCodeAt(at), 0x01000193) >>> 0;
  return hash.toString(36);
}
