import type { AlignmentDecision } from "#lib/domain/facts/alignment-decision.ts";
import type { Pairing } from "#lib/domain/facts/pairing.ts";
import type { RecordMark, SeenMark } from "#lib/domain/reconcile/likeness.ts";
import { type Reconciliation, reconcile } from "#lib/domain/reconcile/reconcile.ts";

/** What is compared, with the usual traits filled in: all alike, so that only place tells them apart. */
const TRAITS = {
  side: "left",
  diameter: 4,
  material: "vitrified-clay",
  fitting: "wye",
  propertyId: null,
} as const;

export function anEntryMark(
  entryId: string,
  station: number,
  rest: Partial<RecordMark> = {},
): RecordMark {
  return {
    ...TRAITS,
    ...{ entryId, recordId: "card", station, uncertainty: 0, explained: false },
    ...rest,
  };
}

export function aSeenMark(
  tieInId: string,
  station: number,
  rest: Partial<SeenMark> = {},
): SeenMark {
  return { ...TRAITS, tieInId, label: tieInId, station, uncertainty: 100, ...rest };
}

export function anAlignment(
  shift: number,
  overrides: Partial<AlignmentDecision> = {},
): AlignmentDecision {
  return {
    id: `align-${shift}`,
    recordId: null,
    shift,
    scale: 0,
    state: "accepted",
    reason: "Measured on the ground",
    decidedBy: "Dana Okafor",
    decidedOn: "2026-11-20",
    ...overrides,
  };
}

/** Entries called by their ids, on records called `Card 1184` and `Permit 94-0377`. */
export function reconciled(
  entries: readonly RecordMark[],
  tieIns: readonly SeenMark[],
  said: {
    readonly pairings?: readonly Pairing[];
    readonly alignments?: readonly AlignmentDecision[];
  } = {},
): Reconciliation {
  return reconcile({
    entries,
    tieIns,
    pairings: said.pairings ?? [],
    alignments: said.alignments ?? [],
    recordNames: new Map([
      ["card", "Card 1184"],
      ["permit", "Permit 94-0377"],
    ]),
    entryNames: new Map(entries.map(({ entryId }) => [entryId, entryId])),
    fromUpperEnd: new Set(),
    looked: () => true,
  });
}
