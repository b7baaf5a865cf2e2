import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { SplitOutcome } from "#lib/domain/findings/outcome.ts";
import type { Report } from "#lib/domain/findings/report.ts";
import type { Cft } from "#lib/domain/length/station.ts";

/** Hundredths of a foot as feet; null stays: relative only, or not known. */
function feet(length: Cft): number;
function feet(length: Cft | null): number | null;
function feet(length: Cft | null): number | null {
  return length === null ? null : length / 100;
}

/**
 * Every computed answer on a line as plain JSON for other programs: lengths in feet, money in whole
 * US cents, rows by their ids with the names that people know them by.
 */
export function reportJson(file: LineFile, report: Report): object {
  const names = namesOf(file);
  return {
    line: { id: file.line.id, name: file.line.name, town: file.line.town },
    today: report.today,
    units: { length: "feet", money: "US cents" },
    extent: feet(report.extent),
    problems: report.problems,
    stations: stationsJson(file, report),
    tieIns: tieInsJson(report, names),
    entries: entriesJson(report, names),
    alignment: report.alignment && alignmentJson(report.alignment),
    alternatives: report.alternatives.map((way) => ({
      ...fitJson(way),
      pairs: way.pairs.map((pair) => ({ ...pair, distance: feet(pair.distance) })),
    })),
    residuals: report.residuals.map((each) => ({ ...each, residual: feet(each.residual) })),
    runCoverage: report.runCoverage.map((each) => ({
      ...each,
      from: feet(each.from),
      to: feet(each.to),
      spans: each.spans.map(spanJson),
    })),
    pairings: pairingsJson(file, report, names),
    coverage: report.coverage.map(spanJson),
    reaches: reachesJson(report, names),
    ties: report.ties.map(tieJson),
    holds: report.holds,
    splits: report.splits.map((outcome) => splitJson(outcome, names)),
    clocks: report.clocks,
  };
}

/** A shift in feet and a scale as a factor, with whatever else is told of them. */
function fitJson<T extends { readonly shift: Cft; readonly scale: number }>(told: T): T {
  return { ...told, shift: feet(told.shift), scale: 1 + told.scale / 1_000_000 };
}

function alignmentJson(alignment: NonNullable<Report["alignment"]>): object {
  const { decision, proposed, own } = alignment;
  return {
    ...fitJson(alignment),
    decision: decision && fitJson(decision),
    proposed: fitJson(proposed),
    own: own.map((each) => ({
      ...fitJson(each),
      decision: each.decision && fitJson(each.decision),
    })),
  };
}

function tieJson({ station, off, spot, ...tie }: Report["ties"][number]): object {
  const place = spot && { east: feet(spot.east), north: feet(spot.north) };
  return { ...tie, station: feet(station), off: feet(off), spot: place };
}

function spanJson({ from, to, state }: Report["coverage"][number]): object {
  return { from: feet(from), to: feet(to), state };
}

interface Names {
  readonly property: (id: string) => { id: string; address: string };
  readonly tieIn: (id: string) => string;
  readonly entry: (id: string) => string;
}

function namesOf(file: LineFile): Names {
  const properties = new Map(file.properties.map(({ id, address }) => [id, address]));
  const tieIns = new Map(file.tieIns.map(({ id, label }) => [id, label]));
  const entries = new Map(file.entries.map(({ id, label }) => [id, label]));
  return {
    property: (id) => {
      const { street = "", unit = "" } = properties.get(id) ?? {};
      return { id, address: `${street} ${unit}`.trim() };
    },
    tieIn: (id) => tieIns.get(id) ?? id,
    entry: (id) => entries.get(id) ?? id,
  };
}

function orNull<T>(id: string | null, name: (id: string) => T): T | null {
  return id === null ? null : name(id);
}

function stationsJson(file: LineFile, report: Report): object[] {
  const seen = new Map(file.observations.map((each) => [each.id, each]));
  return report.stations.map(
    ({ observationId, runId, station, toStation, uncertainty, ...found }) => {
      const observation = seen.get(observationId);
      return {
        observationId,
        runId,
        kind: observation?.kind ?? null,
        counter: feet(observation?.counter ?? null),
        station: feet(station),
        toStation: feet(toStation),
        uncertainty: feet(uncertainty),
        side: found.side,
        unsureSide: found.unsureSide,
        tieInId: observation?.tieInId ?? null,
      };
    },
  );
}

function tieInsJson(report: Report, names: Names): object[] {
  return report.tieIns.map((finding) => ({
    id: finding.tieIn.id,
    label: finding.tieIn.label,
    parentId: finding.tieIn.parentId,
    station: feet(finding.station),
    uncertainty: feet(finding.uncertainty),
    side: finding.side,
    compass: finding.compass,
    standing: finding.standing,
    decided: finding.decided,
    sentence: finding.sentence,
    sentenceEs: finding.sentenceEs,
    entryId: finding.entryId,
    entry: orNull(finding.entryId, names.entry),
    property: orNull(finding.propertyId, names.property),
    evidenceLevel: finding.level,
    evidence: finding.levelReason,
    live: finding.live,
    sightings: finding.sightings.map(({ observationId }) => observationId),
  }));
}

function entriesJson(report: Report, names: Names): object[] {
  return report.entries.map((finding) => ({
    id: finding.entryId,
    label: names.entry(finding.entryId),
    recordStation: feet(finding.recordStation),
    station: feet(finding.station),
    standing: finding.standing,
    decided: finding.decided,
    sentence: finding.sentence,
    sentenceEs: finding.sentenceEs,
    tieInId: finding.tieInId,
    tieIn: orNull(finding.tieInId, names.tieIn),
  }));
}

function pairingsJson(file: LineFile, report: Report, names: Names): object[] {
  const labels = ({ entryId, tieInId }: { entryId: string; tieInId: string }) => ({
    entryId,
    entry: names.entry(entryId),
    tieInId,
    tieIn: names.tieIn(tieInId),
  });
  const decided = file.pairings.map((pairing) => ({
    ...labels(pairing),
    state: pairing.state,
    distance: feet(pairing.distance),
    reasons: [pairing.reason],
    decidedBy: pairing.decidedBy,
    decidedOn: pairing.decidedOn,
  }));
  const proposed = report.proposals.map((proposal) => ({
    ...labels(proposal),
    state: "proposed",
    distance: feet(proposal.distance),
    rawDistance: feet(proposal.rawDistance),
    tolerance: feet(proposal.tolerance),
    band: proposal.band,
    reasons: proposal.reasons,
    nearTie: proposal.nearTie,
  }));
  return [...decided, ...proposed];
}

function reachesJson(report: Report, names: Names): object[] {
  return report.reaches.map((reach) => ({
    from: feet(reach.from),
    to: feet(reach.to),
    material: reach.material,
    diameter: reach.diameter,
    servedBy: reach.servedBy.map(names.property),
    unknownTieIns: reach.unknownTieIns.map((id) => ({ id, label: names.tieIn(id) })),
    holder: reach.holder,
    mender: reach.mender,
    menders: reach.menders,
    answerable: reach.answerable.map(names.property),
    reason: reach.reason,
    citation: reach.citation,
    cost: reach.cost,
    crossedBy: reach.crossedBy.map(names.property),
  }));
}

function splitJson(outcome: SplitOutcome, names: Names): object {
  const { choice } = outcome;
  return {
    rule: choice.rule,
    title: outcome.title,
    sentence: outcome.sentence,
    choice: {
      faultStation: feet(choice.faultStation),
      payer: orNull(choice.payerId, names.property),
      unknownShares: choice.unknownShares,
    },
    refusal: outcome.refusal,
    total: outcome.total,
    shares: outcome.shares.map((share) => ({
      propertyId: share.propertyId,
      tieInId: share.tieInId,
      label: share.label,
      amount: share.amount,
      recoverable: share.recoverable,
      exact: share.exact,
      steps: share.steps.map(({ itemId, words, exact }) => ({ itemId, words, exact })),
    })),
    standAlone: outcome.standAlone,
    oddCents: outcome.oddCents,
  };
}
