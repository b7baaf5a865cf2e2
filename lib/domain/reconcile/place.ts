import type { Cft } from "../length/station.ts";
import { sidesAgree } from "../run/sighting.ts";
import { assign, type Chosen, type Couple, otherChoices } from "./assign.ts";
import { type Connection, connectionsOf, type FittedMark } from "./connections.ts";
import type { Decisions } from "./decisions.ts";
import { type Fit, fitted, sideAs } from "./fit.ts";
import {
  LIKELY_LIMIT,
  mismatch,
  pairTolerance,
  type RecordMark,
  type SeenMark,
} from "./likeness.ts";

/** A connection on record and the tie-in that it is taken for. */
export interface Placed {
  readonly connection: Connection;
  readonly tieIn: SeenMark;
  readonly nearTie: boolean;
}

/** Everything placed under one fit, and what is needed to place it otherwise. */
export interface Placing {
  /** As people accepted. */
  readonly fixed: readonly Placed[];
  /** Up to 5 ft apart. */
  readonly near: readonly Placed[];
  /** Farther apart: somebody would have to explain it. */
  readonly far: readonly Placed[];
  readonly rounds: { readonly near: Round; readonly far: Round };
}

/** What was there to be placed, and which couples were allowed. */
interface Round {
  readonly open: readonly Connection[];
  readonly free: readonly SeenMark[];
  readonly couples: readonly Couple[];
}

/**
 * In units of one tolerance: staying alone costs more than the worst likely pair, two likely pairs
 * cost more than one same pair and one that stays alone. Less than `clear` more is nearly as good.
 */
const COST = { alone: 5, likely: 3.2, clear: 0.7 };

/** Without a property that both name, nothing farther off than this is put to a person. */
const CONFLICT_LIMIT: Cft = 1_000;

/** Entries with their stations under a fit: their record's own, or the one for all. */
export function fitEntries(
  entries: readonly RecordMark[],
  { overall, own }: { overall: Fit; own: ReadonlyMap<string, Fit> },
): FittedMark[] {
  return entries.map((entry) => {
    const fit = own.get(entry.recordId) ?? overall;
    const { side, station } = entry;
    return {
      ...entry,
      side: sideAs(side, fit),
      drawnSide: side,
      fittedStation: fitted(station, fit),
    };
  });
}

/** The best one-to-one placing of record connections on tie-ins; what people accepted is fixed. */
export function place(
  entries: readonly FittedMark[],
  tieIns: readonly SeenMark[],
  { accepted, refused }: Decisions,
): Placing {
  const connections = connectionsOf(entries, accepted);
  const byId = new Map(tieIns.map((tieIn) => [tieIn.tieInId, tieIn]));
  const fixed = connections.flatMap((connection) => {
    const tieIn = byId.get(connection.acceptedId ?? "");
    return tieIn ? [{ connection, tieIn, nearTie: false }] : [];
  });
  const taken = new Set(accepted.values());
  const open = connections.filter((connection) => connection.acceptedId === null);
  const free = tieIns.filter((tieIn) => !taken.has(tieIn.tieInId));
  const first = { open, free, couples: couplesOf({ open, free, costOf: nearCost, refused }) };
  const near = placedBy(assign(first.couples, COST), first);
  const rest = {
    open: open.filter((connection) => near.every((each) => each.connection !== connection)),
    free: free.filter((tieIn) => near.every((each) => each.tieIn !== tieIn)),
  };
  const second = { ...rest, couples: couplesOf({ ...rest, costOf: farCost, refused }) };
  const far = placedBy(assign(second.couples, COST), second);
  return { fixed, near, far, rounds: { near: first, far: second } };
}

/**
 * Placings under the same fit that cost hardly more: less than 0.7 of a tolerance. Best first; of
 * the pairs up to 5 ft apart with what is fixed, or of those farther apart alone.
 */
export function otherPlacings({ fixed, rounds }: Placing, which: "near" | "far"): Placed[][] {
  const round = rounds[which];
  const others = otherChoices(round.couples, COST).map((chosen) => placedBy(chosen, round));
  return which === "near" ? others.map((placed) => [...fixed, ...placed]) : others;
}

type CostOf = (entry: FittedMark, tieIn: SeenMark, refused: ReadonlySet<string>) => number | null;

function couplesOf({
  open,
  free,
  costOf,
  refused,
}: Omit<Round, "couples"> & { costOf: CostOf; refused: ReadonlySet<string> }): Couple[] {
  const couples: Couple[] = [];
  open.forEach((connection, left) => {
    free.forEach((tieIn, right) => {
      const costs = connection.entries.flatMap((entry) => costOf(entry, tieIn, refused) ?? []);
      if (costs.length > 0) couples.push({ left, right, cost: Math.min(...costs) });
    });
  });
  return couples;
}

function placedBy(chosen: readonly Chosen[], { open, free }: Omit<Round, "couples">): Placed[] {
  return chosen.flatMap(({ left, right, nearTie }) => {
    const connection = open[left];
    const tieIn = free[right];
    return connection && tieIn ? [{ connection, tieIn, nearTie }] : [];
  });
}

/**
 * Cost of a pair up to 5 ft apart; null where it is farther off or too unlike. On opposite sides and
 * beyond the tolerance it costs hardly less than staying alone: to be asked, where nothing else fits.
 */
function nearCost(entry: FittedMark, tieIn: SeenMark, refused: ReadonlySet<string>): number | null {
  if (!mayPropose(entry, tieIn, refused)) return null;
  const off = Math.abs(tieIn.station - entry.fittedStation);
  const tolerance = pairTolerance(tieIn, entry);
  const limit = Math.max(LIKELY_LIMIT, tolerance);
  if (off > limit) return null;
  const away =
    off <= tolerance
      ? (off / tolerance) ** 2
      : COST.likely + (off - tolerance) / Math.max(limit - tolerance, 1);
  const cost = away + Math.max(-0.5, mismatch(entry, tieIn) ?? 0);
  if (cost < COST.alone) return Math.max(0, cost);
  return sidesAgree(entry.side, tieIn.side) ? null : COST.alone - 0.01;
}

/** Cost of a pair that a person would have to explain; null where nothing speaks for it. */
function farCost(entry: FittedMark, tieIn: SeenMark, refused: ReadonlySet<string>): number | null {
  if (!mayPropose(entry, tieIn, refused)) return null;
  const off = Math.abs(tieIn.station - entry.fittedStation);
  const sameOwner = entry.propertyId !== null && entry.propertyId === tieIn.propertyId;
  if (!sameOwner && (off > CONFLICT_LIMIT || !sidesAgree(entry.side, tieIn.side))) return null;
  return Math.min((off / CONFLICT_LIMIT) * 4 - (sameOwner ? 4 : 0) + 4, COST.alone - 0.01);
}

/** Nobody refused the two, and neither is known to be another property's. */
export function mayPropose(
  entry: FittedMark,
  tieIn: SeenMark,
  refused: ReadonlySet<string>,
): boolean {
  return !refused.has(`${entry.entryId} ${tieIn.tieInId}`) && mismatch(entry, tieIn) !== null;
}
