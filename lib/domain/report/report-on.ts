import { capacityOn } from "../capacity/capacity-on.ts";
import { clocksOf } from "../clocks/clocks.ts";
import type { TieIn } from "../facts/line.ts";
import type { LineFile } from "../facts/line-file.ts";
import type {
  EntryFinding,
  Problem,
  Report,
  StationedObservation,
  TieInFinding,
} from "../findings/report.ts";
import { holdsOn } from "../holds/holds.ts";
import type { Cft } from "../length/station.ts";
import { soundTree, type TreeRow } from "../line/tree.ts";
import { type Course, compassAt, courseOf } from "../plan/course.ts";
import { tieFindings } from "../plan/ties.ts";
import type { RecordMark, SeenMark } from "../reconcile/likeness.ts";
import { reconcileOnce } from "../reconcile/once.ts";
import type { Reconciliation } from "../reconcile/reconcile.ts";
import { type OnAxis, recordStation } from "../record/axis.ts";
import { doubledEntries } from "../record/doubled.ts";
import { reachFindings } from "../responsibility/reach.ts";
import { coverageOf, farthestLook } from "../run/coverage.ts";
import { stationObservations } from "../run/observe.ts";
import { anchorResiduals } from "../run/residual.ts";
import { runCoverageOf } from "../run/run-coverage.ts";
import { placeTieIn, sightingsOf, type TieInPlace } from "../run/sighting.ts";
import { propertyLabel } from "../sharing/sharers.ts";
import { splitOutcomes } from "../split/outcomes.ts";
import {
  contradicts,
  type Evidence,
  evidenceFor,
  evidenceLevel,
  shownBy,
} from "../tiein/evidence.ts";
import { type Links, linksOf } from "../tiein/links.ts";
import { documentingRuling } from "../tiein/ruling-in-force.ts";
import {
  type EntryPlace,
  entryStanding,
  maybeSanitary,
  type StandingFacts,
  tieInStanding,
} from "../tiein/standing.ts";
import { recordName } from "../tiein/standing-words-en.ts";
import type { Day } from "../time/day.ts";
import { problemsIn } from "./problems.ts";

/**
 * Every computed answer on one line: stations, standings, evidence, coverage, responsibility,
 * holds, splits and clocks. The same file and day give the same report. What contradicts itself
 * in the file is named under `problems`; the rest is worked out without it.
 */
export function reportOn(file: LineFile, today: Day): Report {
  const facts = standingFactsOf(file);
  const { course } = facts;
  const tieIns = file.tieIns.map((tieIn) => tieInFinding(tieIn, { file, facts, course }));
  const entries = file.entries.map((entry): EntryFinding => {
    const place = facts.entryPlaces.get(entry.id);
    return {
      entryId: entry.id,
      recordStation: place?.recordStation ?? null,
      station: place?.station ?? null,
      compass: compassAt(course, place?.station ?? place?.recordStation ?? null, entry.side),
      ...entryStanding(entry, facts),
      tieInId: facts.links.byEntry.get(facts.doubled.get(entry.id) ?? entry.id)?.tieInId ?? null,
    };
  });
  const { stations, alignment, proposals, coverage, extent } = facts;
  const ties = tieFindings(file, tieIns);
  const sound = soundPart(file, tieIns);
  const reaches = reachFindings(sound.file, { tieIns: sound.tieIns, extent });
  const found = { tieIns: sound.tieIns, reaches, extent };
  const runCoverage = runCoverageOf(file);
  const holds = holdsOn(file, {
    ...{ today, tieIns, entries, proposals, reaches, stations, runCoverage, extent },
  });
  return {
    today,
    problems: [
      ...problemsIn(file, { ...facts, rows: treeRows(file, facts.places) }),
      ...testProblems(file, facts, tieIns),
      ...tieProblems(ties),
    ],
    stations,
    tieIns,
    entries,
    alignment,
    proposals,
    alternatives: facts.alternatives,
    residuals: anchorResiduals(file),
    runCoverage,
    coverage,
    reaches,
    capacity: capacityOn(sound.file, { tieIns: sound.tieIns, reaches, stations }),
    ties,
    holds,
    splits: splitOutcomes(sound.file, found),
    clocks: clocksOf(file, today),
    extent,
  };
}

interface Facts
  extends StandingFacts,
    Pick<Reconciliation, "alignment" | "proposals" | "alternatives"> {
  readonly file: LineFile;
  readonly stations: readonly StationedObservation[];
  readonly places: ReadonlyMap<string, TieInPlace>;
  readonly entryPlaces: ReadonlyMap<string, EntryPlace>;
  readonly links: Links;
  readonly extent: Cft;
}

function standingFactsOf(file: LineFile): Facts {
  const stations = stationObservations(file);
  const sightings = sightingsOf(file, stations);
  const places = new Map(
    file.tieIns.map((tieIn) => [tieIn.id, placeTieIn(tieIn, sightings.get(tieIn.id) ?? [])]),
  );
  const axis = axisOf(file);
  const pairings = knownPairings(file);
  const accepted = new Set(
    pairings.filter(({ state }) => state === "accepted").map(({ entryId }) => entryId),
  );
  const doubled = doubledEntries(file.entries, (entryId) => accepted.has(entryId));
  const { alignment, proposals, alternatives, ...found } = reconcileOnce({
    entries: recordMarks(file, axis).filter(({ entryId }) => !doubled.has(entryId)),
    tieIns: seenMarks(file, places),
    pairings,
    alignments: file.alignments,
    recordNames: new Map(file.records.map((record) => [record.id, recordName(record)])),
    entryNames: new Map(file.entries.map((entry) => [entry.id, entry.label])),
    fromUpperEnd: new Set(
      file.records.filter((each) => each.measuredFrom === "upper-end").map(({ id }) => id),
    ),
    seen: coverageOf(file, farthestLook(file)).filter(({ state }) => state === "seen"),
  });
  const entryPlaces = new Map(
    file.entries.map((entry) => {
      const { station = null, gap = null } = axis.get(entry.id) ?? {};
      const fittedAt = found.stations.get(doubled.get(entry.id) ?? entry.id) ?? station;
      return [entry.id, { recordStation: station, station: fittedAt, gap }];
    }),
  );
  const extent = extentOf(file, { places, entryPlaces, stations });
  return {
    file,
    stations,
    places,
    entryPlaces,
    links: linksOf(pairings, proposals),
    doubtful: found.doubtful,
    doubtfulEntries: found.doubtfulEntries,
    nearTies: found.nearTies,
    nearTieEntries: found.nearTieEntries,
    doubled,
    alignment,
    proposals,
    alternatives,
    coverage: coverageOf(file, extent),
    course: courseOf(file),
    extent,
  };
}

function axisOf(file: LineFile): Map<string, OnAxis> {
  const records = new Map(file.records.map((record) => [record.id, record]));
  return new Map(
    file.entries.map((entry) => [
      entry.id,
      recordStation(entry, records.get(entry.recordId) ?? null, file.line.upperEnd),
    ]),
  );
}

function recordMarks(file: LineFile, axis: ReadonlyMap<string, OnAxis>): RecordMark[] {
  return file.entries.flatMap((entry) => {
    const station = axis.get(entry.id)?.station ?? null;
    if (station === null) return [];
    const { id: entryId, recordId, side, diameter, material, fitting, propertyId } = entry;
    const explained = entry.explanation !== "";
    return [
      {
        ...{ entryId, recordId, station, explained, side, diameter, material, fitting, propertyId },
        uncertainty: entry.uncertainty ?? 0,
      },
    ];
  });
}

function seenMarks(file: LineFile, places: ReadonlyMap<string, TieInPlace>): SeenMark[] {
  return file.tieIns.filter(maybeSanitary).flatMap((tieIn) => {
    const place = places.get(tieIn.id);
    if (!place || place.station === null) return [];
    const { id: tieInId, label, diameter, material, fitting, propertyId } = tieIn;
    const { station, uncertainty, side } = place;
    return [
      {
        tieInId,
        label,
        station,
        uncertainty: uncertainty ?? 0,
        side,
        diameter,
        material,
        fitting,
        propertyId,
      },
    ];
  });
}

/** Pairings of entries and tie-ins that are in the file; the others are problems. */
function knownPairings(file: LineFile): LineFile["pairings"] {
  const entries = new Set(file.entries.map((entry) => entry.id));
  const tieIns = new Set(file.tieIns.map((tieIn) => tieIn.id));
  return file.pairings.filter(
    (pairing) => entries.has(pairing.entryId) && tieIns.has(pairing.tieInId),
  );
}

/** The trunk's end, or the farthest thing on it while nobody knows where it ends. */
function extentOf(
  file: LineFile,
  { places, entryPlaces, stations }: Pick<Facts, "places" | "entryPlaces" | "stations">,
): Cft {
  const onTrunk = file.tieIns
    .filter((tieIn) => tieIn.parentId === null)
    .flatMap((tieIn) => places.get(tieIn.id)?.station ?? []);
  const { upperEnd } = file.line;
  if (upperEnd !== null && upperEnd > 0) return Math.max(upperEnd, ...lengths(onTrunk));
  const other = [
    ...file.points.map((point) => point.station),
    ...[...entryPlaces.values()].flatMap(({ station }) => station ?? []),
    ...stations.flatMap(({ station, toStation }) => [station ?? 0, toStation ?? 0]),
    farthestLook(file),
  ];
  return Math.max(0, ...lengths(onTrunk), ...lengths(other));
}

function lengths(stations: readonly Cft[]): Cft[] {
  return stations.filter((station) => Number.isSafeInteger(station));
}

function tieInFinding(
  tieIn: TieIn,
  { file, facts, course }: { file: LineFile; facts: Facts; course: Course | null },
): TieInFinding {
  const place = facts.places.get(tieIn.id) ?? placeTieIn(tieIn, []);
  const link = facts.links.byTieIn.get(tieIn.id);
  const entry = file.entries.find((each) => each.id === link?.entryId);
  const sure = link?.accepted || (link?.proposal?.band === "same" && !link.proposal.nearTie);
  const propertyId = tieIn.propertyId ?? (sure ? (entry?.propertyId ?? null) : null);
  const found = evidenceOn(tieIn, { file, facts });
  const evidence = evidenceFor(propertyId, found, (id) => nameOf(file, id));
  return {
    tieIn,
    station: place.station,
    uncertainty: place.uncertainty,
    side: place.side,
    // On a branch the sides are the branch’s, whose bearing nobody has entered.
    compass: tieIn.parentId === null ? compassAt(course, place.station, place.side) : null,
    sightings: place.sightings,
    ...tieInStanding(tieIn, facts),
    entryId: link?.entryId ?? null,
    propertyId,
    level: evidence.level,
    levelReason: evidence.reason,
    live: !tieIn.inactive && (tieIn.kind === "building" || tieIn.kind === "unknown"),
  };
}

function evidenceOn(tieIn: TieIn, { file, facts }: { file: LineFile; facts: Facts }): Evidence {
  const link = facts.links.byTieIn.get(tieIn.id);
  const entry = file.entries.find((each) => each.id === link?.entryId);
  return evidenceLevel(tieIn, file.tests, {
    recordPropertyId: entry?.propertyId ?? null,
    acceptedBy: documentingRuling(file.rulings, tieIn.id),
    nearbyPropertyIds: nearbyProperties(file, {
      tieIn,
      station: facts.places.get(tieIn.id)?.station ?? null,
    }),
    nameOf: (propertyId) => nameOf(file, propertyId),
  });
}

/** Ties whose triangle cannot be. */
function tieProblems(ties: Report["ties"]): Problem[] {
  return ties.flatMap(({ state, subject, sentence }, index) =>
    state === "closes" || state === "unchecked"
      ? []
      : [
          {
            path: `ties.${index}.fromDistance`,
            reason: "tie-does-not-close",
            sentence: `Tie of ${subject}: ${sentence}`,
          },
        ],
  );
}

/** Tests that point at another property than the one that a tie-in is taken to be. */
function testProblems(file: LineFile, facts: Facts, tieIns: readonly TieInFinding[]): Problem[] {
  return tieIns.flatMap(({ tieIn, propertyId }, index) => {
    const evidence = evidenceOn(tieIn, { file, facts });
    if (!contradicts(propertyId, evidence)) return [];
    const name = tieIn.label || `Tie-in ${index + 1}`;
    const [taken, shown] = [propertyId ?? "", evidence.propertyId ?? ""].map((id) =>
      nameOf(file, id),
    );
    const sentence = `${name} is taken to be that of ${taken}, but tests point at ${shown}.`;
    return [{ path: `tieIns.${index}.propertyId`, reason: "tests-contradict", sentence }];
  });
}

/**
 * Lots crossed where a tie-in lies, and properties that may be on the line and of which no other
 * tie-in is known or shown to be.
 */
function nearbyProperties(
  file: LineFile,
  { tieIn, station }: { readonly tieIn: TieIn; readonly station: Cft | null },
): string[] {
  const others = file.tieIns.filter((each) => each !== tieIn);
  const settled = new Set([
    tieIn.propertyId,
    ...others.map((each) => each.propertyId ?? shownBy(file.tests, each)),
  ]);
  const candidates = file.properties.filter(
    (property) => property.stake === "candidate" && !settled.has(property.id),
  );
  const crossed = file.crossings.filter(
    ({ from, to }) => station !== null && from <= station && station <= to,
  );
  return [
    ...new Set([
      ...crossed.map((crossing) => crossing.propertyId),
      ...candidates.map((property) => property.id),
    ]),
  ];
}

function nameOf(file: LineFile, propertyId: string): string {
  const property = file.properties.find((each) => each.id === propertyId);
  return property ? propertyLabel(property) : "a property that is not in the file";
}

function treeRows(file: LineFile, places: ReadonlyMap<string, TieInPlace>): TreeRow[] {
  return file.tieIns.map((tieIn) => {
    const place = places.get(tieIn.id);
    return {
      id: tieIn.id,
      parentId: tieIn.parentId,
      station: place?.station ?? null,
      uncertainty: place?.uncertainty ?? null,
    };
  });
}

/** The file and findings without tie-ins that hang on nothing or on themselves. */
function soundPart(
  file: LineFile,
  findings: readonly TieInFinding[],
): { file: LineFile; tieIns: TieInFinding[] } {
  const { nodes } = soundTree(
    findings.map(({ tieIn, station }) => ({ id: tieIn.id, parentId: tieIn.parentId, station })),
  );
  const tieIns = [...nodes.keys()].flatMap(
    (id) => findings.find((finding) => finding.tieIn.id === id) ?? [],
  );
  const inFileOrder = findings.filter((finding) => tieIns.includes(finding));
  return { file: { ...file, tieIns: inFileOrder.map((each) => each.tieIn) }, tieIns: inFileOrder };
}
