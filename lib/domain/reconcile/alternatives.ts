import type { Alternative } from "../findings/report.ts";
import { formatFeet } from "../length/station.ts";
import { percentWords } from "./alignment-sentence.ts";
import type { Decisions } from "./decisions.ts";
import { whyOf } from "./doubt.ts";
import type { Fit, Move } from "./fit.ts";
import type { Fits } from "./fits.ts";
import { pairTolerance } from "./likeness.ts";
import { mayPropose, type Placed, type Placing } from "./place.ts";
import type { ReconcileInput } from "./reconcile-input.ts";
import type { Way } from "./ways.ts";

/** More than this many ways side by side help nobody to choose. */
const MOST = 4;

/** So many changes are told one by one. */
const MOST_TOLD = 3;

type Pairs = Alternative["pairs"];

interface Told {
  readonly input: ReconcileInput;
  readonly decisions: Decisions;
  /** What is proposed, laid out. */
  readonly chosen: Placing;
  readonly fits: Pick<Fits, "overall" | "fitOf">;
  readonly ways: readonly Way[];
}

/** An alternative, and the way to pair that it tells. */
export interface OfferedWay {
  readonly way: Way;
  readonly alternative: Alternative;
}

/**
 * Other ways to pair record and camera that the numbers allow: another reading of a record, another
 * shift or scale whose score is no more than 1.75 pairs behind the best or which explains as much, or
 * another choice of pairs under the same one that costs less than 0.7 of a tolerance more. Each
 * differs from the others and from what is proposed in its pairs; four at most, as they are given.
 */
export function alternativesTo(told: Told): OfferedWay[] {
  const { decisions, chosen } = told;
  const now = pairsOf([...chosen.fixed, ...chosen.near], decisions);
  const seen = new Set([keyOf(now)]);
  const found: OfferedWay[] = [];
  for (const way of told.ways) {
    const pairs = pairsOf(way.placed, decisions);
    const key = keyOf(pairs);
    if (seen.has(key)) continue;
    seen.add(key);
    found.push({ way, alternative: alternative(way, { pairs, now }, told) });
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
  { fit, recordId }: Way,
  { pairs, now }: { pairs: Pairs; now: Pairs },
  told: Told,
): Alternative {
  const { entries, tieIns } = told.input;
  const explained = pairs.filter(({ entryId, tieInId, distance }) => {
    const entry = entries.find((each) => each.entryId === entryId);
    const tieIn = tieIns.find((each) => each.tieInId === tieInId);
    return entry && tieIn && Math.abs(distance) <= pairTolerance(tieIn, entry);
  }).length;
  const { shift, scale } = fit;
  const of = entries.length;
  const agree = `${explained} of ${of} ${of === 1 ? "entry" : "entries"} ${explained === 1 ? "matches" : "match"}`;
  return {
    key: `w${short(`${recordId ?? ""}${shift}/${scale} ${keyOf(pairs)}`)}`,
    recordId: new Set(entries.map((entry) => entry.recordId)).size > 1 ? recordId : null,
    shift,
    scale,
    explained,
    pairs,
    sentence: `${startWords({ fit, recordId }, told)}, ${agree}${changeWords(pairs, now, told)}.`,
  };
}

/** What is taken otherwise, to begin a sentence with. */
function startWords(
  { fit, recordId }: Pick<Way, "fit" | "recordId">,
  { input, fits }: Told,
): string {
  const { overall } = fits;
  const records = [...new Set(input.entries.map((entry) => entry.recordId))];
  const used = recordId === null ? overall : fits.fitOf(recordId);
  const name = (recordId !== null && records.length > 1 && input.recordNames.get(recordId)) || "";
  if (isSameMove(fit, used) && fit.mirrored === used.mirrored) return "With the same zero";
  const read = readWords({ fit, used, name, upper: input.fromUpperEnd.has(recordId ?? "") });
  return (
    read ?? fitStart(fit, { many: records.length > 1, turned: fit.mirrored !== used.mirrored })
  );
}

/** `If the card is in meters`; null where it is read as it says. */
function readWords({
  fit,
  used,
  name,
  upper,
}: {
  readonly fit: Fit;
  readonly used: Fit;
  readonly name: string;
  readonly upper: boolean;
}): string | null {
  const why = whyOf(fit, used);
  const what = name || "the card";
  const from = `is measured from ${upper ? "the main" : "the house end"}, its zero at ${formatFeet(fit.shift)}`;
  const mirrored =
    fit.mirrored === used.mirrored ? "" : ", with its sides as seen looking downstream";
  if (why === "meters") return `If ${what} is in meters${zeroWords(fit)}${mirrored}`;
  if (why === "other-end") return `If ${what} ${from}${mirrored}`;
  if (why === "meters-from-other-end") return `If ${what} is in meters and ${from}${mirrored}`;
  return null;
}

function zeroWords({ shift }: Move): string {
  if (Math.abs(shift) < 50) return "";
  return ` and its zero ${formatFeet(Math.abs(shift))} farther ${shift > 0 ? "upstream" : "downstream"}`;
}

/** `With the card’s zero 6.1 ft farther up`. */
function fitStart(fit: Fit, { many, turned }: { many: boolean; turned: boolean }): string {
  const whose = many ? "the records’" : "the card’s";
  const other = fit.mirrored ? "as seen looking downstream" : "as drawn";
  const sides = turned ? ` and its sides ${other}` : "";
  return `${movedWords(fit, { whose, what: many ? "the records" : "the card" })}${sides}`;
}

function movedWords(
  { shift, scale }: Move,
  { whose, what }: { whose: string; what: string },
): string {
  if (shift === 0 && scale === 0) return `Taking ${what} as recorded`;
  const zero = `${whose} zero ${formatFeet(Math.abs(shift))} farther ${shift > 0 ? "upstream" : "downstream"}`;
  if (scale === 0) return `With ${zero}`;
  const stretch = `${scale > 0 ? "stretched" : "shortened"} by ${percentWords(scale)}`;
  return shift === 0 ? `With ${what} ${stretch}` : `With ${zero} and its lengths ${stretch}`;
}

function isSameMove(a: Move, b: Move): boolean {
  return a.shift === b.shift && a.scale === b.scale;
}

/** ` and T2 would be House 14`: what it changes, tie-in by tie-in up the line. */
function changeWords(pairs: Pairs, now: Pairs, all: Told): string {
  const changes = all.input.tieIns.flatMap((tieIn) => {
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
    .map((pair) => told.input.entryNames.get(pair.entryId) || "an entry")
    .join(" and ");
}

/** A short name for a text that stays the same while the text does (FNV-1a, 32 bits). */
function short(text: string): string {
  let hash = 0x811c9dc5;
  for (let at = 0; at < text.length; at += 1)
    hash = Math.imul(hash ^ text.charCodeAt(at), 0x01000193) >>> 0;
  return hash.toString(36);
}
