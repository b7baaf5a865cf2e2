import type { Alignment, Alternative, ProposedPairing } from "../findings/report.ts";
import type { Cft } from "../length/station.ts";
import { sidesAgree } from "../run/sighting.ts";
import { alignmentOf } from "./alignment.ts";
import { alternativesTo, type OfferedWay } from "./alternatives.ts";
import { decisionsOf, mayPairUnder } from "./decisions.ts";
import { type Doubt, type Doubts, doubtsOf } from "./doubt.ts";
import type { MayPair } from "./field.ts";
import { type Fits, fitsOf } from "./fits.ts";
import { pairTolerance, type RecordMark } from "./likeness.ts";
import { fitEntries, type Placed, type Placing, place } from "./place.ts";
import { type Proposing, proposalsFrom } from "./propose.ts";
import type { ReconcileInput } from "./reconcile-input.ts";
import { type Way, waysByOtherFits, waysByReadings, waysUnder } from "./ways.ts";

export interface Reconciliation {
  /** Null where there is nothing to compare. */
  readonly alignment: Alignment | null;
  /** Each entry's station once its record's shift and scale are allowed for. */
  readonly stations: ReadonlyMap<string, Cft>;
  readonly proposals: readonly ProposedPairing[];
  readonly alternatives: readonly Alternative[];
  /** What is left over and may have a counterpart after all, by the id of the tie-in. */
  readonly doubtful: ReadonlyMap<string, Doubt>;
  /** The same of entries: their place on the line is not sure. */
  readonly doubtfulEntries: ReadonlyMap<string, Doubt>;
  /** Tie-ins left over that an entry might as well be under the same fit; with that entry. */
  readonly nearTies: ReadonlyMap<string, string>;
  /** Entries left over that a tie-in might as well be under the same fit; with that tie-in. */
  readonly nearTieEntries: ReadonlyMap<string, string>;
}

/**
 * Reconciles record entries with tie-ins: one shift and scale for all records, or a record's own
 * where that explains two entries more; then the best one-to-one assignment. What a person
 * accepted, of shift and scale or of a pair, is fixed first; what a person refused is not proposed
 * again. An accepted shift has no rivals: what another would explain is an alternative, no doubt.
 * Nor is a record in meters, or measured from the other end, ever more than an alternative.
 */
export function reconcile(given: ReconcileInput): Reconciliation {
  const input = inOrder(given);
  const { entries, tieIns, looked } = input;
  if (entries.length === 0 || tieIns.length === 0) return nothingToCompare(input);
  const decisions = decisionsOf(input.pairings);
  const mayPair = mayPairUnder(entries, decisions);
  const fits = fitsOf(input, { entries, tieIns, mayPair, looked });
  const fittedEntries = fitEntries(entries, fits);
  const chosen = place(fittedEntries, tieIns, decisions);
  const ways = waysOf(fits, { input, decisions, chosen });
  const entryName = (entryId: string) => input.entryNames.get(entryId) || "an entry";
  const isOpen = ({ recordId }: Way) =>
    recordId === null ? fits.decision === null : !fits.isDecided(recordId);
  const byOtherFit = [...ways.leading, ...ways.weak].filter(isOpen);
  const stations = new Map(fittedEntries.map((entry) => [entry.entryId, entry.fittedStation]));
  const inView = entries.filter(
    ({ entryId, explained }) =>
      isPlaced(chosen, entryId) || (!explained && looked(stations.get(entryId) ?? 0)),
  ).length;
  const gone = entries.filter(
    ({ entryId, explained }) => explained && !isPlaced(chosen, entryId),
  ).length;
  const explained = agreeing([...chosen.fixed, ...chosen.near]);
  const established =
    fits.decision !== null || isEstablished({ entries, chosen, explained, inView });
  const proposing: Proposing = {
    decisions,
    entryName,
    under: ways.under,
    farUnder: waysUnder(fits.overall, chosen, "far"),
    byOtherFit,
    fitOf: fits.fitOf,
    established,
  };
  const proposals = proposalsFrom(chosen, proposing);
  const offered = alternativesTo({
    input,
    decisions,
    chosen,
    fits,
    ways: [...ways.leading, ...ways.under, ...ways.weak],
  });
  const doubting = { fits, mayPair, chosen, offered, explained, established, isOpen };
  const doubts = doubtsIn(input, doubting);
  return {
    alignment: alignmentOf(input, {
      fits,
      mayPair,
      proposals,
      inView,
      gone,
      rival: fits.decision === null ? rivalIn(offered, fits) : null,
    }),
    stations,
    proposals,
    alternatives: offered.map(({ alternative }) => alternative),
    doubtful: doubts.tieIns,
    doubtfulEntries: doubts.entries,
    ...nearTiesIn(chosen, ways.under),
  };
}

/** The best other fit for all records that pairs otherwise. */
function rivalIn(offered: readonly OfferedWay[], { overall }: Fits): OfferedWay | null {
  return offered.find(({ way }) => way.recordId === null && way.fit !== overall) ?? null;
}

function nothingToCompare({ entries }: ReconcileInput): Reconciliation {
  return {
    alignment: null,
    stations: new Map(entries.map((entry) => [entry.entryId, entry.station])),
    proposals: [],
    alternatives: [],
    doubtful: new Map(),
    doubtfulEntries: new Map(),
    nearTies: new Map(),
    nearTieEntries: new Map(),
  };
}

interface AllWays {
  /** By other fits, and by readings that explain more entries. */
  readonly leading: readonly Way[];
  readonly under: readonly Way[];
  /** By readings that explain as many. */
  readonly weak: readonly Way[];
}

function waysOf(
  fits: Fits,
  {
    input: { entries, tieIns },
    decisions,
    chosen,
  }: {
    readonly input: ReconcileInput;
    readonly decisions: ReturnType<typeof decisionsOf>;
    readonly chosen: Placing;
  },
): AllWays {
  const { overall, own, decision, search } = fits;
  const laid = { entries, tieIns, decisions, overall, own };
  const rivals = decision === null ? search.rivals : [search.best, ...search.rivals];
  const read = waysByReadings(fits.readings, laid);
  const strong = read.filter(({ explainsMore }) => explainsMore);
  const [first, ...rest] = waysByOtherFits(rivals, laid);
  const isFirst = (rivals[0]?.agreeing ?? 0) >= (fits.readings[0]?.fit.agreeing ?? 0);
  const before = first && isFirst ? [first] : [];
  const after = first && !isFirst ? [first] : [];
  return {
    leading: [...before, ...strong, ...after, ...rest],
    under: waysUnder(overall, chosen),
    weak: read.filter(({ explainsMore }) => !explainsMore),
  };
}

interface Doubting {
  readonly fits: Fits;
  readonly mayPair: MayPair;
  readonly chosen: Placing;
  readonly offered: readonly OfferedWay[];
  /** Entries that agree. */
  readonly explained: number;
  readonly established: boolean;
  /** No person has decided on what this way would change. */
  readonly isOpen: (way: Way) => boolean;
}

function doubtsIn(
  { entries, tieIns }: ReconcileInput,
  { fits, mayPair, chosen, offered, explained, established, isOpen }: Doubting,
): Doubts {
  const placed = [...chosen.fixed, ...chosen.near];
  const rivals = fits.decision === null ? fits.search.rivals : [];
  const readings = fits.readings.filter(({ recordId }) => !fits.isDecided(recordId));
  return doubtsOf({
    entries,
    tieIns,
    mayPair,
    fitOf: fits.fitOf,
    paired: {
      tieIns: new Set(placed.map(({ tieIn }) => tieIn.tieInId)),
      entries: new Set(placed.flatMap(({ connection }) => connection.entries.map(idOf))),
    },
    fits: [...rivals.map((fit) => ({ fit, recordId: null })), ...readings],
    ways: offered
      .filter(({ way, alternative }) => isOpen(way) && alternative.explained >= explained)
      .map(({ way, alternative }) => ({ ...way, pairs: alternative.pairs })),
    established,
  });
}

/** At least half of what a run should have seen agrees, or nothing is left that wants an answer. */
function isEstablished({
  entries,
  chosen,
  explained,
  inView,
}: {
  readonly entries: readonly RecordMark[];
  readonly chosen: Placing;
  readonly explained: number;
  readonly inView: number;
}): boolean {
  const placed = [...chosen.fixed, ...chosen.near];
  const answered = new Set(placed.flatMap(({ connection }) => connection.entries.map(idOf)));
  const isOpen = (entry: RecordMark) => !entry.explained && !answered.has(entry.entryId);
  if (explained === 0) return !entries.some(isOpen) && placed.length === 0;
  return explained * 2 >= inView;
}

/** Entries that a person accepted for a tie-in, or that lie within the tolerance on its side. */
function agreeing(placed: readonly Placed[]): number {
  return placed.reduce((sum, { connection, tieIn }) => {
    const near = connection.entries.filter(
      (entry) =>
        connection.acceptedId !== null ||
        (Math.abs(tieIn.station - entry.fittedStation) <= pairTolerance(tieIn, entry) &&
          sidesAgree(entry.side, tieIn.side)),
    );
    return sum + near.length;
  }, 0);
}

function isPlaced({ fixed, near }: Placing, entryId: string): boolean {
  return [...fixed, ...near].some(({ connection }) =>
    connection.entries.some((entry) => entry.entryId === entryId),
  );
}

function idOf({ entryId }: { readonly entryId: string }): string {
  return entryId;
}

/** Tie-ins and entries that only another choice of pairs, hardly worse, gives a counterpart. */
function nearTiesIn(
  { fixed, near }: Placing,
  under: readonly Way[],
): Pick<Reconciliation, "nearTies" | "nearTieEntries"> {
  const placed = [...fixed, ...near];
  const tieIns = new Set(placed.map(({ tieIn }) => tieIn.tieInId));
  const entries = new Set(placed.flatMap(({ connection }) => connection.entries.map(idOf)));
  const nearTies = new Map<string, string>();
  const nearTieEntries = new Map<string, string>();
  for (const { connection, tieIn } of under.flatMap((way) => way.placed)) {
    const [first] = connection.entries;
    if (first && !tieIns.has(tieIn.tieInId)) nearTies.set(tieIn.tieInId, first.entryId);
    for (const { entryId } of connection.entries)
      if (!entries.has(entryId)) nearTieEntries.set(entryId, tieIn.tieInId);
  }
  return { nearTies, nearTieEntries };
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
