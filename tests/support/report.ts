import type { Hold, HoldCause, HoldStop } from "#lib/domain/facts/hold.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { SplitOutcome } from "#lib/domain/findings/outcome.ts";
import type { ReachFinding } from "#lib/domain/findings/reach-finding.ts";
import type { EntryFinding, Report, TieInFinding } from "#lib/domain/findings/report.ts";
import { NO_CAPACITY } from "./capacity.ts";
import { aTieIn } from "./file.ts";

/** Computed answers with the usual values, for tests of what is said about them. */
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

/** A tie-in whose standing a person has accepted and that belongs to somebody. */
export function aFinding(id: string, overrides: Partial<TieInFinding> = {}): TieInFinding {
  return {
    tieIn: aTieIn(id),
    station: 1_000,
    uncertainty: 100,
    side: "left",
    compass: null,
    sightings: [],
    standing: "on-record-and-seen",
    decided: true,
    sentence: "",
    sentenceEs: "",
    entryId: null,
    propertyId: "property",
    level: 5,
    levelReason: "",
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
    recordStation: 1_000,
    station: 1_000,
    compass: null,
    standing: "on-record-and-seen",
    decided: true,
    sentence: "",
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
    mender: overrides.holder ?? "owners",
    menders: { clearing: "owners", repair: "owners", replacement: "owners" },
    answerable: [],
    reason: "",
    citation: "",
    cost: 0,
    authorityCost: 0,
    crossedBy: [],
    ...overrides,
  };
}

export function aHold(
  cause: HoldCause,
  subjectLabel: string,
  stops: readonly HoldStop[],
  overrides: Partial<Hold> = {},
): Hold {
  return {
    key: `${cause}:${subjectLabel}`,
    cause,
    subjectId: subjectLabel,
    subjectLabel,
    stops,
    stretch: null,
    sentence: "",
    closes: "",
    waiver: null,
    ...overrides,
  };
}

/** What a split version's rule gives now: the version's own amounts, unless said otherwise. */
export function anOutcome(
  file: Pick<LineFile, "splits">,
  overrides: Partial<SplitOutcome> = {},
): SplitOutcome {
  const version = file.splits[0];
  if (version === undefined) throw new Error("An outcome needs a split version");
  return {
    choice: version,
    title: "",
    sentence: "",
    refusal: null,
    total: version.total,
    shares: version.shares.map((share) => ({ ...share, label: "", exact: "", steps: [] })),
    standAlone: null,
    oddCents: "",
    basis: version.basis,
    ...overrides,
  };
}
