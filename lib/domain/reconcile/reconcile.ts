import type { Alignment, Alternative, ProposedPairing } from "../file/report.ts";
import type { Cft } from "../line/station.ts";
import { type AlignResult, align, type Fit, judgeFit, type MayPair } from "./align.ts";
import { alignmentOf } from "./alignment.ts";
import {
  type AlignmentDecision,
  acceptedAlignment,
  refusedAlignments,
} from "./alignment-decision.ts";
import { alternativesTo } from "./alternatives.ts";
import { type Decisions, decisionsOf, mayPairUnder } from "./decisions.ts";
import {
  fitEntries,
  mayPropose,
  otherPlacings,
  type Placed,
  type Placing,
  place,
} from "./place.ts";
import { proposal } from "./propose.ts";
import type { ReconcileInput } from "./reconcile-input.ts";
import { doubtfulUnder, pairsOtherwise, type Rival, rivalOf } from "./rivals.ts";
import { type Way, waysByOtherFits, waysUnder } from "./ways.ts";

export interface Reconciliation {
  /** Null where there is nothing to compare. */
  readonly alignment: Alignment | null;
  /** Each entry's station once its record's shift and scale are allowed for. */
  readonly stations: ReadonlyMap<string, Cft>;
  readonly proposals: readonly ProposedPairing[];
  readonly alternatives: readonly Alternative[];
  /** Tie-ins left over that another fit, nearly as good, would give to an entry; with that entry. */
  readonly doubtful: ReadonlyMap<string, string>;
  /** Tie-ins left over that an entry might as well be under the same fit; with that entry. */
  readonly nearTies: ReadonlyMap<string, string>;
}

/**
 * Reconciles record entries with tie-ins: one shift and scale for all records, or a record's own
 * where that explains two entries more; then the best one-to-one assignment. What a person
 * accepted, of shift and scale or of a pair, is fixed first; what a person refused is not proposed
 * again. An accepted shift has no rivals: what another would explain is an alternative, no doubt.
 */
export function reconcile(given: ReconcileInput): Reconciliation {
  const input = inOrder(given);
  const { entries, tieIns } = input;
  if (entries.length === 0 || tieIns.length === 0)
    return {
      alignment: null,
      stations: new Map(entries.map((entry) => [entry.entryId, entry.station])),
      proposals: [],
      alternatives: [],
      doubtful: new Map(),
      nearTies: new Map(),
    };
  const decisions = decisionsOf(input.pairings);
  const mayPair = mayPairUnder(entries, decisions);
  const fits = fitsOf(input, mayPair);
  const fittedEntries = fitEntries(entries, fits);
  const placing = place(fittedEntries, tieIns, decisions);
  const { rivals, overall, own } = fits;
  const under = waysUnder(overall, placing);
  const told = fits.decision === null ? rivals : [fits.search.best, ...fits.search.rivals];
  const byOtherFit = waysByOtherFits(told, { entries, tieIns, decisions, own });
  const entryName = (entryId: string) => input.entryNames.get(entryId) || "an entry";
  const proposals = proposalsFrom(placing, {
    decisions,
    entryName,
    under,
    byOtherFit: fits.decision === null ? byOtherFit : [],
  });
  const found = { entries, tieIns, accepted: decisions.accepted, proposals, mayPair };
  return {
    alignment: alignmentOf(input, {
      ...fits,
      mayPair,
      proposals,
      rival: fits.rivals.find((fit) => pairsOtherwise(fit, found)) ?? null,
    }),
    stations: new Map(fittedEntries.map((entry) => [entry.entryId, entry.fittedStation])),
    proposals,
    alternatives: alternativesTo({
      entries,
      tieIns,
      decisions,
      chosen: placing,
      fit: overall,
      ways: [...byOtherFit, ...under],
      entryName,
      manyRecords: new Set(entries.map((entry) => entry.recordId)).size > 1,
    }),
    doubtful: doubtfulUnder(fits.rivals, found),
    nearTies: nearTiesIn(placing, under),
  };
}

/** Tie-ins that only another choice of pairs, hardly worse, gives an entry. */
function nearTiesIn(placing: Placing, under: readonly Way[]): Map<string, string> {
  const placed = new Set([...placing.fixed, ...placing.near].map(({ tieIn }) => tieIn.tieInId));
  const open = under.flatMap((way) => way.placed);
  return new Map(
    open.flatMap(({ connection, tieIn }) => {
      const [entry] = connection.entries;
      return entry && !placed.has(tieIn.tieInId) ? [[tieIn.tieInId, entry.entryId] as const] : [];
    }),
  );
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

/** The fits that the proposals rest on, a person's or the search's. */
interface Fits {
  readonly search: AlignResult;
  readonly decision: AlignmentDecision | null;
  readonly overall: Fit;
  readonly own: ReadonlyMap<string, Fit>;
  /** None once a person has decided. */
  readonly rivals: AlignResult["rivals"];
}

function fitsOf(input: ReconcileInput, mayPair: MayPair): Fits {
  const { entries, tieIns, alignments } = input;
  const search = align(entries, tieIns, { mayPair, refused: refusedAlignments(alignments, null) });
  const decision = acceptedAlignment(alignments, null);
  const overall: Fit = decision ?? search.best;
  return {
    search,
    decision,
    overall: { shift: overall.shift, scale: overall.scale },
    own: ownFits(input, { overall, mayPair, isSettled: decision !== null }),
    rivals: decision === null ? search.rivals : [],
  };
}

/**
 * Records with a fit of their own: a person accepted it, or it explains at least two of their
 * entries more and no person accepted one for all records.
 */
function ownFits(
  { entries, tieIns, alignments }: ReconcileInput,
  { overall, mayPair, isSettled }: { overall: Fit; mayPair: MayPair; isSettled: boolean },
): Map<string, Fit> {
  const recordIds = [...new Set(entries.map((entry) => entry.recordId))];
  const own = new Map<string, Fit>();
  for (const recordId of recordIds) {
    const accepted = acceptedAlignment(alignments, recordId);
    if (accepted) own.set(recordId, { shift: accepted.shift, scale: accepted.scale });
    if (accepted || isSettled || recordIds.length < 2) continue;
    const marks = entries.filter((entry) => entry.recordId === recordId);
    const refused = refusedAlignments(alignments, recordId);
    const { best } = align(marks, tieIns, { mayPair, refused });
    const shared = judgeFit(marks, tieIns, { fit: overall, mayPair });
    if (best.explained >= shared.explained + 2) own.set(recordId, best);
  }
  return own;
}

function proposalsFrom(
  placing: Placing,
  said: {
    readonly decisions: Decisions;
    readonly under: readonly Way[];
    readonly byOtherFit: readonly Way[];
    readonly entryName: (entryId: string) => string;
  },
): ProposedPairing[] {
  const { accepted, refused } = said.decisions;
  const { fixed, near, far } = placing;
  const byOtherFit = said.byOtherFit.map(({ placed }) => placed);
  const ways = { under: said.under.map(({ placed }) => placed), byOtherFit };
  const farWays = { under: otherPlacings(placing, "far"), byOtherFit };
  const rivals = new Map<Placed, Rival>([
    ...[...fixed, ...near].map((placed) => [placed, rivalOf(placed, ways)] as const),
    ...far.map((placed) => [placed, meantOnly(rivalOf(placed, farWays))] as const),
  ]);
  return [...rivals].flatMap(([placed, rival]) =>
    placed.connection.entries
      .filter((entry) => !accepted.has(entry.entryId))
      .filter((entry) => mayPropose(entry, placed.tieIn, refused))
      .map((entry) => proposal(entry, placed.tieIn, { rival, entryName: said.entryName })),
  );
}

/** That neither has a counterpart needs no word where the pair itself has to be explained. */
function meantOnly(rival: Rival): Rival {
  return rival?.meant === "none" ? null : rival;
}
