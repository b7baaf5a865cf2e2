import type { Hold } from "#lib/domain/facts/hold.ts";
import type { TieIn } from "#lib/domain/facts/line.ts";
import type { Share, SplitOutcome } from "#lib/domain/findings/outcome.ts";
import type { ReachFinding } from "#lib/domain/findings/reach-finding.ts";
import type {
  CoverageSpan,
  EntryFinding,
  Report,
  StationedObservation,
  TieInFinding,
} from "#lib/domain/findings/report.ts";
import { NO_CAPACITY } from "./capacity.ts";

/** Computed answers written by hand, for tests of what is made from them. */
export function aReport(overrides: Partial<Report> = {}): Report {
  return {
    today: "2026-11-25",
    problems: [],
    stations: [],
    tieIns: [],
    entries: [],
    alignment: null,
    proposals: [],
    alternatives: [],
    residuals: [],
    runCoverage: [],
    coverage: [],
    reaches: [],
    capacity: NO_CAPACITY,
    ties: [],
    holds: [],
    splits: [],
    clocks: [],
    extent: 10_000,
    ...overrides,
  };
}

/** A live tie-in on record and seen, unless said otherwise. */
export function aFinding(tieIn: TieIn, overrides: Partial<TieInFinding> = {}): TieInFinding {
  return {
    tieIn,
    station: tieIn.station,
    uncertainty: 100,
    side: tieIn.side,
    compass: null,
    sightings: [],
    standing: "on-record-and-seen",
    decided: true,
    sentence: "On record and seen.",
    sentenceEs: "",
    entryId: null,
    propertyId: tieIn.propertyId,
    level: 2,
    levelReason: "On the permit record.",
    live: true,
    ...overrides,
  };
}

export function anEntryFinding(
  entryId: string,
  overrides: Partial<EntryFinding> = {},
): EntryFinding {
  return {
    entryId,
    recordStation: null,
    station: null,
    compass: null,
    standing: "on-record-and-seen",
    decided: true,
    sentence: "On record and seen.",
    sentenceEs: "",
    tieInId: null,
    ...overrides,
  };
}

export function aReach(
  from: number,
  to: number,
  overrides: Partial<ReachFinding> = {},
): ReachFinding {
  return {
    from,
    to,
    material: "vitrified-clay",
    diameter: 6,
    servedBy: [],
    unknownTieIns: [],
    holder: "owners",
    mender: "owners",
    menders: { clearing: "owners", repair: "owners", replacement: "owners" },
    answerable: [],
    reason: "Owners answer for the pipe to the main.",
    citation: "QMC 13.08.010",
    cost: 0,
    authorityCost: 0,
    crossedBy: [],
    ...overrides,
  };
}

export function aStationed(
  observationId: string,
  overrides: Partial<StationedObservation> = {},
): StationedObservation {
  return {
    observationId,
    runId: "run",
    station: null,
    toStation: null,
    uncertainty: 100,
    side: "left",
    unsureSide: "unknown",
    ...overrides,
  };
}

export function aSpan(from: number, to: number, state: CoverageSpan["state"]): CoverageSpan {
  return { from, to, state };
}

export function aHold(key: string, overrides: Partial<Hold> = {}): Hold {
  return {
    key,
    cause: "tie-in-owner-unknown",
    subjectId: "T3",
    subjectLabel: "T3",
    stops: ["capping", "lining", "final-split", "demand"],
    stretch: null,
    sentence: "Nobody knows whose tie-in T3 is.",
    closes: "Test the candidate addresses.",
    waiver: null,
    ...overrides,
  };
}

export function aShare(propertyId: string | null, overrides: Partial<Share> = {}): Share {
  return {
    propertyId,
    tieInId: null,
    label: propertyId ?? "unknown",
    amount: 0,
    recoverable: 0,
    exact: "0/1",
    steps: [],
    ...overrides,
  };
}

export function anOutcome(overrides: Partial<SplitOutcome> = {}): SplitOutcome {
  return {
    choice: {
      rule: "portion-used",
      faultStation: null,
      payerId: null,
      unknownShares: "carried",
    },
    title: "By portion used",
    sentence: "Each foot among those whose flow passes it.",
    refusal: null,
    total: 0,
    shares: [],
    standAlone: null,
    oddCents: "No cent was left over.",
    basis: "basis-1",
    ...overrides,
  };
}
