import type { Alignment, ProposedPairing } from "../file/report.ts";
import { type Cft, formatFeet } from "../line/station.ts";
import { sidesAgree } from "../run/sighting.ts";
import {
  type AlignResult,
  align,
  type Fit,
  type FitScore,
  fitted,
  judgeFit,
  type MayPair,
  PLAIN,
} from "./align.ts";
import { alignmentSentence } from "./alignment-sentence.ts";
import { assign, type Couple } from "./assign.ts";
import { type Connection, connectionsOf, type FittedMark } from "./connections.ts";
import {
  LIKELY_LIMIT,
  likenessReasons,
  mismatch,
  pairTolerance,
  type RecordMark,
  type SeenMark,
} from "./likeness.ts";
import type { Band, Pairing } from "./pairing.ts";

/** Everything to be compared: only what has a station, and only what may be a sanitary branch. */
interface ReconcileInput {
  readonly entries: readonly RecordMark[];
  readonly tieIns: readonly SeenMark[];
  readonly pairings: readonly Pairing[];
  /** What to call each record in a sentence, by its id. */
  readonly recordNames: ReadonlyMap<string, string>;
}

export interface Reconciliation {
  /** Null where there is nothing to compare. */
  readonly alignment: Alignment | null;
  /** Each entry's station once its record's shift and scale are allowed for. */
  readonly stations: ReadonlyMap<string, Cft>;
  readonly proposals: readonly ProposedPairing[];
  /** Tie-ins left over that another fit, nearly as good, would give to an entry; with that entry. */
  readonly doubtful: ReadonlyMap<string, string>;
}

/**
 * In units of one tolerance: staying alone costs more than the worst likely pair, two likely pairs
 * cost more than one same pair and one that stays alone.
 */
const COST = { alone: 5, likely: 3.2, clear: 0.7 };

/** Without a property that both name, nothing farther off than this is put to a person. */
const CONFLICT_LIMIT: Cft = 1_000;

/**
 * Reconciles record entries with tie-ins: one shift and scale for all records, or a record's own
 * where that explains two entries more; then the best one-to-one assignment. What a person
 * accepted is fixed first; what a person refused is not proposed again.
 */
export function reconcile(given: ReconcileInput): Reconciliation {
  const input = inOrder(given);
  const { entries, tieIns } = input;
  if (entries.length === 0 || tieIns.length === 0)
    return {
      alignment: null,
      stations: new Map(entries.map((entry) => [entry.entryId, entry.station])),
      proposals: [],
      doubtful: new Map(),
    };
  const mayPair = mayPairUnder(input);
  const overall = align(entries, tieIns, mayPair);
  const own = ownFits(input, overall, mayPair);
  const fittedEntries = entries.map((entry) => ({
    ...entry,
    fittedStation: fitted(entry.station, own.get(entry.recordId) ?? overall.best),
  }));
  const proposals = proposalsFor(fittedEntries, input, overall.rivals);
  const alignment = alignmentOf(input, {
    overall,
    own,
    mayPair,
    mirrored: mirroredCount(input, proposals),
    rival: overall.rivals.find((fit) => pairsOtherwise(fit, { input, proposals, mayPair })) ?? null,
  });
  return {
    alignment,
    stations: new Map(fittedEntries.map((entry) => [entry.entryId, entry.fittedStation])),
    proposals,
    doubtful: doubtfulUnder(overall.rivals, { input, proposals, mayPair }),
  };
}

/** By station, then by id, so that nothing hangs on the order of the rows. */
function inOrder(given: ReconcileInput): ReconcileInput {
  const byId = (a: string, b: string) => (a < b ? -1 : 1);
  return {
    ...given,
    entries: given.entries.toSorted((a, b) => a.station - b.station || byId(a.entryId, b.entryId)),
    tieIns: given.tieIns.toSorted((a, b) => a.station - b.station || byId(a.tieInId, b.tieInId)),
  };
}

/** Records that need a fit of their own: it explains at least two of their entries more. */
function ownFits(
  { entries, tieIns }: ReconcileInput,
  overall: AlignResult,
  mayPair: MayPair,
): Map<string, Fit> {
  const recordIds = new Set(entries.map((entry) => entry.recordId));
  if (recordIds.size < 2) return new Map();
  return new Map(
    [...recordIds].flatMap((recordId) => {
      const marks = entries.filter((entry) => entry.recordId === recordId);
      const own = align(marks, tieIns, mayPair).best;
      const shared = judgeFit(marks, tieIns, { fit: overall.best, mayPair });
      return own.explained >= shared.explained + 2 ? [[recordId, own] as const] : [];
    }),
  );
}

function alignmentOf(
  { entries, tieIns, recordNames }: ReconcileInput,
  found: {
    overall: AlignResult;
    own: ReadonlyMap<string, Fit>;
    mayPair: MayPair;
    mirrored: { readonly sides: number; readonly of: number };
    rival: FitScore | null;
  },
): Alignment {
  const { overall, own, mayPair, mirrored } = found;
  const records = [...new Set(entries.map((entry) => entry.recordId))];
  const explainedUnder = (fitOf: (recordId: string) => Fit) =>
    records.reduce((sum, recordId) => {
      const marks = entries.filter((entry) => entry.recordId === recordId);
      return sum + judgeFit(marks, tieIns, { fit: fitOf(recordId), mayPair }).explained;
    }, 0);
  const explained = explainedUnder((recordId) => own.get(recordId) ?? overall.best);
  const common = { explained, of: entries.length };
  const sentence = alignmentSentence({
    ...common,
    fit: overall.best,
    plain: explainedUnder(() => PLAIN),
    rival: found.rival,
    mirrored,
    own: [...own].map(([recordId, fit]) => ({ name: recordNames.get(recordId) ?? "", fit })),
    names: records.map((recordId) => recordNames.get(recordId) ?? ""),
  });
  return { shift: overall.best.shift, scale: overall.best.scale, ...common, sentence };
}

/** How many pairs lie within the tolerance, and how many of those on opposite sides. */
function mirroredCount(
  { entries, tieIns, pairings }: ReconcileInput,
  proposals: readonly ProposedPairing[],
): { sides: number; of: number } {
  const entrySide = new Map(entries.map((entry) => [entry.entryId, entry.side]));
  const tieInSide = new Map(tieIns.map((tieIn) => [tieIn.tieInId, tieIn.side]));
  const near = proposals.filter(({ distance, tolerance }) => Math.abs(distance) <= tolerance);
  const accepted = pairings.filter((pairing) => pairing.state === "accepted");
  const opposite = [...near, ...accepted].filter(
    ({ entryId, tieInId }) =>
      !sidesAgree(entrySide.get(entryId) ?? "unknown", tieInSide.get(tieInId) ?? "unknown"),
  );
  return { sides: opposite.length, of: near.length + accepted.length };
}

/**
 * Refused pairs may not pair again; accepted ones pair with each other, and no other entry of the
 * same record with either.
 */
function mayPairUnder({ entries, pairings }: ReconcileInput): MayPair {
  const { accepted, refused } = decisions(pairings);
  const recordOf = new Map(entries.map((entry) => [entry.entryId, entry.recordId]));
  const taken = new Set(
    [...accepted].map(([entryId, tieInId]) => `${recordOf.get(entryId)} ${tieInId}`),
  );
  return (entryId, tieInId) => {
    const own = accepted.get(entryId);
    if (own !== undefined) return own === tieInId;
    const isTaken = taken.has(`${recordOf.get(entryId)} ${tieInId}`);
    return !isTaken && !refused.has(`${entryId} ${tieInId}`);
  };
}

function decisions(pairings: readonly Pairing[]): {
  accepted: Map<string, string>;
  refused: Set<string>;
} {
  const accepted = new Map<string, string>();
  const refused = new Set<string>();
  for (const { state, entryId, tieInId } of pairings) {
    if (state === "accepted") accepted.set(entryId, tieInId);
    else refused.add(`${entryId} ${tieInId}`);
  }
  return { accepted, refused };
}

interface Placed {
  readonly connection: Connection;
  readonly tieIn: SeenMark;
  readonly nearTie: boolean;
}

function proposalsFor(
  entries: readonly FittedMark[],
  { tieIns, pairings }: ReconcileInput,
  rivals: readonly Fit[],
): ProposedPairing[] {
  const { accepted, refused } = decisions(pairings);
  const connections = connectionsOf(entries, accepted);
  const byId = new Map(tieIns.map((tieIn) => [tieIn.tieInId, tieIn]));
  const fixed = connections.flatMap((connection) => {
    const tieIn = byId.get(connection.acceptedId ?? "");
    return tieIn ? [{ connection, tieIn, nearTie: false }] : [];
  });
  const taken = new Set(accepted.values());
  const open = connections.filter((connection) => connection.acceptedId === null);
  const free = tieIns.filter((tieIn) => !taken.has(tieIn.tieInId));
  const near = choose(open, free, { costOf: (entry, tieIn) => nearCost(entry, tieIn, refused) });
  const far = choose(
    open.filter((connection) => near.every((each) => each.connection !== connection)),
    free.filter((tieIn) => near.every((each) => each.tieIn !== tieIn)),
    { costOf: (entry, tieIn) => farCost(entry, tieIn, refused) },
  );
  return [...fixed, ...near, ...far].flatMap((placed) =>
    placed.connection.entries
      .filter((entry) => !accepted.has(entry.entryId))
      .filter((entry) => mayPropose(entry, placed.tieIn, refused))
      .map((entry) => proposal(entry, placed, rivalOf(entry, placed, { rivals, free, refused }))),
  );
}

function choose(
  connections: readonly Connection[],
  tieIns: readonly SeenMark[],
  { costOf }: { costOf: (entry: FittedMark, tieIn: SeenMark) => number | null },
): Placed[] {
  const couples: Couple[] = [];
  connections.forEach((connection, left) => {
    tieIns.forEach((tieIn, right) => {
      const costs = connection.entries.flatMap((entry) => costOf(entry, tieIn) ?? []);
      if (costs.length > 0) couples.push({ left, right, cost: Math.min(...costs) });
    });
  });
  return assign(couples, COST).flatMap(({ left, right, nearTie }) => {
    const connection = connections[left];
    const tieIn = tieIns[right];
    return connection && tieIn ? [{ connection, tieIn, nearTie }] : [];
  });
}

/** Cost of a pair up to 5 ft apart; null where it is farther off or too unlike. */
function nearCost(entry: FittedMark, tieIn: SeenMark, refused: ReadonlySet<string>): number | null {
  if (!mayPropose(entry, tieIn, refused)) return null;
  const off = Math.abs(tieIn.station - entry.fittedStation);
  const tolerance = pairTolerance(tieIn.station, tieIn.uncertainty);
  const limit = Math.max(LIKELY_LIMIT, tolerance);
  if (off > limit) return null;
  const away =
    off <= tolerance
      ? (off / tolerance) ** 2
      : COST.likely + (off - tolerance) / Math.max(limit - tolerance, 1);
  const cost = away + Math.max(-0.5, mismatch(entry, tieIn) ?? 0);
  return cost < COST.alone ? Math.max(0, cost) : null;
}

/** Cost of a pair that a person would have to explain; null where nothing speaks for it. */
function farCost(entry: FittedMark, tieIn: SeenMark, refused: ReadonlySet<string>): number | null {
  if (!mayPropose(entry, tieIn, refused)) return null;
  const off = Math.abs(tieIn.station - entry.fittedStation);
  const sameOwner = entry.propertyId !== null && entry.propertyId === tieIn.propertyId;
  if (!sameOwner && (off > CONFLICT_LIMIT || !sidesAgree(entry.side, tieIn.side))) return null;
  return Math.min((off / CONFLICT_LIMIT) * 4 - (sameOwner ? 4 : 0) + 4, COST.alone - 0.01);
}

function mayPropose(entry: FittedMark, tieIn: SeenMark, refused: ReadonlySet<string>): boolean {
  return !refused.has(`${entry.entryId} ${tieIn.tieInId}`) && mismatch(entry, tieIn) !== null;
}

/** Tie-ins without a pairing for which another fit, nearly as good, finds an entry. */
function doubtfulUnder(
  rivals: readonly Fit[],
  found: { input: ReconcileInput; proposals: readonly ProposedPairing[]; mayPair: MayPair },
): Map<string, string> {
  const { input, proposals, mayPair } = found;
  const paired = new Set([
    ...proposals.filter((each) => each.band !== "conflict").map((each) => each.tieInId),
    ...decisions(input.pairings).accepted.values(),
  ]);
  return new Map(
    input.tieIns
      .filter((tieIn) => !paired.has(tieIn.tieInId))
      .flatMap((tieIn) => {
        const entry = input.entries.find(
          (each) => mayPair(each.entryId, tieIn.tieInId) && fitsAny(rivals, each, tieIn),
        );
        return entry ? [[tieIn.tieInId, entry.entryId] as const] : [];
      }),
  );
}

/** True where a fit would give any entry another tie-in, or any tie-in left over an entry. */
function pairsOtherwise(
  fit: Fit,
  found: { input: ReconcileInput; proposals: readonly ProposedPairing[]; mayPair: MayPair },
): boolean {
  if (doubtfulUnder([fit], found).size > 0) return true;
  const { entries, tieIns } = found.input;
  return found.proposals.some((pair) => {
    const entry = entries.find((each) => each.entryId === pair.entryId);
    return tieIns.some(
      (tieIn) =>
        entry !== undefined && tieIn.tieInId !== pair.tieInId && fitsAny([fit], entry, tieIn),
    );
  });
}

function fitsAny(fits: readonly Fit[], entry: RecordMark, tieIn: SeenMark): boolean {
  const unlike = mismatch(entry, tieIn);
  if (unlike === null || unlike >= 2) return false;
  const tolerance = pairTolerance(tieIn.station, tieIn.uncertainty);
  return fits.some((fit) => Math.abs(tieIn.station - fitted(entry.station, fit)) <= tolerance);
}

/** What else might be meant; null where the choice stands clear. */
type Rival = { readonly tieIn: SeenMark | null; readonly byOtherFit: boolean } | null;

/** The tie-in that would do nearly as well: by another fit, or by the same one. */
function rivalOf(
  entry: FittedMark,
  placed: Placed,
  among: {
    rivals: readonly Fit[];
    free: readonly SeenMark[];
    refused: ReadonlySet<string>;
  },
): Rival {
  const others = among.free.filter((tieIn) => tieIn !== placed.tieIn);
  const byOtherFit = others.find((tieIn) => fitsAny(among.rivals, entry, tieIn));
  if (placed.nearTie) {
    const costs = others.flatMap((tieIn) => {
      const cost = nearCost(entry, tieIn, among.refused);
      return cost === null ? [] : [{ tieIn, cost }];
    });
    const next = costs.toSorted((a, b) => a.cost - b.cost)[0]?.tieIn ?? null;
    return { tieIn: next, byOtherFit: false };
  }
  return byOtherFit ? { tieIn: byOtherFit, byOtherFit: true } : null;
}

function rivalReasons(rival: Rival): string[] {
  if (!rival) return [];
  if (!rival.tieIn) return ["Another entry would do nearly as well: a person has to look."];
  const { label, station } = rival.tieIn;
  const what = `${label || "Another tie-in"} at ${formatFeet(station)}`;
  return rival.byOtherFit
    ? [`${what} would be meant if the record has another zero: a person has to look.`]
    : [`${what} would do nearly as well: a person has to look.`];
}

function proposal(entry: FittedMark, placed: Placed, rival: Rival): ProposedPairing {
  const { tieIn } = placed;
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
      ...rivalReasons(rival),
    ],
    nearTie: rival !== null,
  };
}

/** Within the tolerance and not on the other side: same. Up to 5 ft: likely. Beyond: conflict. */
export function bandOf(off: Cft, tolerance: Cft, sameSide: boolean): Band {
  if (off <= tolerance && sameSide) return "same";
  return off <= Math.max(LIKELY_LIMIT, tolerance) ? "likely" : "conflict";
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
