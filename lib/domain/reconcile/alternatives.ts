import type { Alternative } from "../file/report.ts";
import { formatFeet } from "../line/station.ts";
import type { Fit } from "./align.ts";
import { percentWords } from "./alignment-sentence.ts";
import type { Decisions } from "./decisions.ts";
import type { RecordMark, SeenMark } from "./likeness.ts";
import { pairTolerance } from "./likeness.ts";
import { mayPropose, type Placed, type Placing } from "./place.ts";
import type { Way } from "./ways.ts";

/** More than this many ways side by side help nobody to choose. */
const MOST = 4;

/** So many changes are told one by one. */
const MOST_TOLD = 3;

type Pairs = Alternative["pairs"];

interface Told {
  readonly entries: readonly RecordMark[];
  readonly tieIns: readonly SeenMark[];
  readonly decisions: Decisions;
  /** What is proposed, laid out. */
  readonly chosen: Placing;
  readonly fit: Fit;
  readonly ways: readonly Way[];
  readonly entryName: (entryId: string) => string;
  readonly manyRecords: boolean;
}

/**
 * Other ways to pair record and camera that the numbers allow: another shift or scale whose score is
 * no more than 1.75 pairs behind the best, or another choice of pairs under the same one that costs
 * less than 0.7 of a tolerance more. Each differs from the others and from what is proposed in its
 * pairs; four at most, other fits first.
 */
export function alternativesTo(told: Told): Alternative[] {
  const { decisions, chosen } = told;
  const now = pairsOf([...chosen.fixed, ...chosen.near], decisions);
  const seen = new Set([keyOf(now)]);
  const found: Alternative[] = [];
  for (const { fit, placed } of told.ways) {
    const pairs = pairsOf(placed, decisions);
    const key = keyOf(pairs);
    if (seen.has(key)) continue;
    seen.add(key);
    found.push(alternative({ fit, pairs, now }, told));
    if (found.length === MOST) break;
  }
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
  told: Told,
): Alternative {
  const tolerances = new Map(
    told.tieIns.map((tieIn) => [tieIn.tieInId, pairTolerance(tieIn.station, tieIn.uncertainty)]),
  );
  const explained = pairs.filter(
    ({ tieInId, distance }) => Math.abs(distance) <= (tolerances.get(tieInId) ?? 0),
  ).length;
  const same = fit.shift === told.fit.shift && fit.scale === told.fit.scale;
  const start = same ? "With the same zero" : fitStart(fit, told.manyRecords);
  const agree = `${explained} of ${told.entries.length} ${told.entries.length === 1 ? "entry" : "entries"} ${explained === 1 ? "agrees" : "agree"}`;
  return {
    key: `w${short(`${fit.shift}/${fit.scale} ${keyOf(pairs)}`)}`,
    shift: fit.shift,
    scale: fit.scale,
    explained,
    pairs,
    sentence: `${start}, ${agree}${changeWords(pairs, now, told)}.`,
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
function changeWords(pairs: Pairs, now: Pairs, all: Told): string {
  const changes = all.tieIns.flatMap((tieIn) => {
    const would = entriesAt(pairs, tieIn.tieInId, all);
    const is = entriesAt(now, tieIn.tieInId, all);
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

function entriesAt(pairs: Pairs, tieInId: string, told: Told): string {
  return pairs
    .filter((pair) => pair.tieInId === tieInId)
    .map((pair) => told.entryName(pair.entryId))
    .join(" and ");
}

/** A short name for a text that stays the same while the text does (FNV-1a, 32 bits, from memory). */
function short(text: string): string {
  let hash = 0x811c9dc5;
  for (let at = 0; at < text.length; at += 1)
    hash = Math.imul(hash ^ text.charCodeAt(at), 0x01000193) >>> 0;
  return hash.toString(36);
}
