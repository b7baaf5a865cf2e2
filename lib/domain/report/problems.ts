import { holidayCaution } from "../calendar/holiday-caution.ts";
import type { LineFile } from "../facts/line-file.ts";
import type { Run } from "../facts/run.ts";
import type { Problem } from "../findings/report.ts";
import { formatFeet } from "../length/station.ts";
import {
  type TreeProblem,
  type TreeProblemReason,
  type TreeRow,
  treeProblems,
} from "../line/tree.ts";
import type { AxisGap } from "../record/axis.ts";
import { anchorWords } from "../run/anchor-words.ts";
import { type AnchorProblem, anchorProblems } from "../run/convert.ts";
import type { TieInPlace } from "../run/sighting.ts";
import type { EntryPlace } from "../tiein/standing.ts";
import { recordName } from "../tiein/standing-words-en.ts";

interface ProblemFacts {
  readonly rows: readonly TreeRow[];
  readonly places: ReadonlyMap<string, TieInPlace>;
  readonly entryPlaces: ReadonlyMap<string, EntryPlace>;
  /** Entries that their record has twice, with the one that they repeat. */
  readonly doubled: ReadonlyMap<string, string>;
}

/**
 * Everything in the file that contradicts itself, as sentences that say where to look. Nothing is
 * mended by guessing, and nothing here stops the rest of the file from being worked out.
 */
export function problemsIn(file: LineFile, facts: ProblemFacts): Problem[] {
  return [
    ...treeProblems(facts.rows, file.line).map((problem) => treeSentence(problem, file)),
    ...file.runs.flatMap((run) => runProblems(file, run.id)),
    ...file.observations.flatMap((_, index) => observationProblems(file, index)),
    ...spreadProblems(file, facts.places),
    ...setStationProblems(file, facts.places),
    ...crossingProblems(file),
    ...pairingProblems(file),
    ...entryProblems(file, facts.entryPlaces),
    ...doubledProblems(file, facts.doubled),
    ...pointProblems(file),
    ...holidayProblems(file),
  ];
}

/** Rules that count by a state's days on an authority that has the nation's only. */
function holidayProblems({ authority }: LineFile): Problem[] {
  if (authority === null) return [];
  const cautions = authority.clockRules.map((rule) => holidayCaution(rule, authority.holidays));
  const at = cautions.findIndex((caution) => caution !== "");
  if (at === -1) return [];
  const sentence = `${authority.name}: ${cautions[at]}`;
  return [
    { path: `authority.clockRules.${at}.citation`, reason: "only-federal-holidays", sentence },
  ];
}

function doubledProblems(file: LineFile, doubled: ReadonlyMap<string, string>): Problem[] {
  return file.entries.flatMap((entry, index) => {
    if (!doubled.has(entry.id)) return [];
    const record = file.records.find(({ id }) => id === entry.recordId);
    const where = entry.distance === null ? "" : ` at ${formatFeet(entry.distance)}`;
    const sentence = `${entry.label || "An entry"}${where} is written twice on ${record ? recordName(record) : "its record"}; it is taken as one. Remove the second, or say what tells the two apart.`;
    return [{ path: `entries.${index}`, reason: "written-twice", sentence }];
  });
}

const TREE_WORDS: Record<TreeProblemReason, (name: string, limit: string) => string> = {
  "blank-id": () => "A tie-in has no id, so nothing can refer to it.",
  "duplicate-id": (name) => `${name} is in the file twice under one id; only the first counts.`,
  "missing-parent": (name) => `${name} joins a branch that is not in the file.`,
  cycle: (name) => `${name} joins a branch that in the end joins ${name} itself.`,
  "not-a-length": (name) => `The station of ${name} is not a length in feet.`,
  "below-main": (name) => `${name} lies below the main connection.`,
  "below-parent": (name, limit) =>
    `${name} lies below ${limit}, where the branch that it joins begins.`,
  "beyond-upper-end": (name, limit) => `${name} lies beyond the upper end of the line at ${limit}.`,
};

function treeSentence({ reason, row, field, limit }: TreeProblem, file: LineFile): Problem {
  const name = file.tieIns[row]?.label || `Tie-in ${row + 1}`;
  const sentence = TREE_WORDS[reason](name, limit === null ? "" : formatFeet(limit));
  return { path: `tieIns.${row}.${field}`, reason, sentence };
}

function runProblems(file: LineFile, runId: string): Problem[] {
  const at = file.runs.findIndex((run) => run.id === runId);
  const run = file.runs[at];
  if (!run) return [];
  const name = run.name || `run ${at + 1}`;
  const anchors = anchorProblems(run, file.anchors).map((problem) =>
    anchorSentence(problem, { file, run, name }),
  );
  const gaps = file.gaps.flatMap((gap, index) => {
    if (gap.runId !== runId || isBetween(gap.toCounter, gap.fromCounter)) return [];
    const sentence = `A gap of ${name} ends before it begins.`;
    return [{ path: `gaps.${index}.toCounter`, reason: "ends-before-it-begins", sentence }];
  });
  if (run.toCounter === null || isBetween(run.toCounter, run.fromCounter))
    return [...anchors, ...gaps];
  const sentence = `${name} ends at a lower counter reading than it begins at.`;
  const ends = { path: `runs.${at}.toCounter`, reason: "ends-before-it-begins", sentence };
  return [...anchors, ...gaps, ends];
}

function isBetween(end: number, start: number): boolean {
  return end >= start;
}

function anchorSentence(
  problem: AnchorProblem,
  { file, run, name }: { file: LineFile; run: Run; name: string },
): Problem {
  const at = file.anchors.findIndex((anchor) => anchor.id === problem.anchorId);
  const sentence = anchorWords(problem, { anchors: file.anchors, run, name });
  return { path: `anchors.${at}.station`, reason: problem.reason, sentence };
}

function observationProblems(file: LineFile, index: number): Problem[] {
  const seen = file.observations[index];
  if (!seen) return [];
  const found: Problem[] = [];
  if (!file.runs.some((run) => run.id === seen.runId))
    found.push({
      path: `observations.${index}.runId`,
      reason: "missing-run",
      sentence: `Observation ${index + 1} belongs to no run in the file.`,
    });
  if (seen.tieInId !== null && !file.tieIns.some((tieIn) => tieIn.id === seen.tieInId))
    found.push({
      path: `observations.${index}.tieInId`,
      reason: "missing-tie-in",
      sentence: `Observation ${index + 1} is a sighting of a tie-in that is not in the file.`,
    });
  if (!Number.isSafeInteger(seen.counter))
    found.push({
      path: `observations.${index}.counter`,
      reason: "not-a-length",
      sentence: `The counter reading of observation ${index + 1} is not a length in feet.`,
    });
  return found;
}

/** A person's station that a sighting contradicts by more than it is uncertain by. */
function setStationProblems(file: LineFile, places: ReadonlyMap<string, TieInPlace>): Problem[] {
  return file.tieIns.flatMap((tieIn, index) => {
    const { station } = tieIn;
    const off = (places.get(tieIn.id)?.sightings ?? []).find(
      (seen) =>
        station !== null &&
        seen.station !== null &&
        Math.abs(seen.station - station) > (seen.uncertainty ?? 0),
    );
    if (!off || station === null || off.station === null) return [];
    const run = file.runs.find((each) => each.id === off.runId)?.name || "A run";
    const name = tieIn.label || `Tie-in ${index + 1}`;
    const sentence = `${name} is set at ${formatFeet(station)}, but ${run} saw it at ${formatFeet(off.station)}, give or take ${formatFeet(off.uncertainty ?? 0)}.`;
    return [{ path: `tieIns.${index}.station`, reason: "set-apart", sentence }];
  });
}

function spreadProblems(file: LineFile, places: ReadonlyMap<string, TieInPlace>): Problem[] {
  return file.tieIns.flatMap((tieIn, index) => {
    const spread = places.get(tieIn.id)?.spread ?? 0;
    if (spread <= 0) return [];
    const name = tieIn.label || `Tie-in ${index + 1}`;
    const sentence = `Sightings of ${name} lie ${formatFeet(spread)} farther apart than their runs are uncertain by: one may be another tie-in, or an anchor may be wrong.`;
    return [{ path: `tieIns.${index}.station`, reason: "sightings-apart", sentence }];
  });
}

function pairingProblems(file: LineFile): Problem[] {
  const taken = new Map<string, string>();
  return file.pairings.flatMap((pairing, index) => {
    const entry = file.entries.find((each) => each.id === pairing.entryId);
    const tieIn = file.tieIns.find((each) => each.id === pairing.tieInId);
    const path = `pairings.${index}`;
    if (!entry || !tieIn) {
      const sentence = "A pairing names an entry or a tie-in that is not in the file.";
      return [{ path, reason: "pairing-of-nothing", sentence }];
    }
    if (pairing.state !== "accepted") return [];
    const name = entry.label || "An entry";
    const other = taken.get(entry.id);
    taken.set(entry.id, tieIn.id);
    if (other !== undefined && other !== tieIn.id)
      return [
        {
          path,
          reason: "paired-twice",
          sentence: `${name} is accepted as two tie-ins; one has to be withdrawn.`,
        },
      ];
    if (entry.propertyId === null || tieIn.propertyId === null) return [];
    if (entry.propertyId === tieIn.propertyId) return [];
    return [
      {
        path,
        reason: "two-owners",
        sentence: `${name} and ${tieIn.label} are accepted as one, but the record and what was settled name two properties.`,
      },
    ];
  });
}

const AXIS_WORDS: Partial<Record<AxisGap, string>> = {
  "no-record": "belongs to no record in the file",
  "beyond-length": "lies beyond the length of the line on its record",
  "below-main": "has a distance below the main connection",
  "not-a-length": "has a distance that is not a length in feet",
};

function entryProblems(file: LineFile, places: ReadonlyMap<string, EntryPlace>): Problem[] {
  const { upperEnd } = file.line;
  return file.entries.flatMap((entry, index) => {
    const place = places.get(entry.id);
    const name = entry.label || `Entry ${index + 1}`;
    const path = `entries.${index}.distance`;
    const words = place?.gap ? AXIS_WORDS[place.gap] : undefined;
    if (place?.gap && words) return [{ path, reason: place.gap, sentence: `${name} ${words}.` }];
    const station = place?.station ?? null;
    if (station === null || upperEnd === null || station <= upperEnd + 500) return [];
    const sentence = `${name} lies at ${formatFeet(station)}, beyond the upper end of the line at ${formatFeet(upperEnd)}.`;
    return [{ path, reason: "beyond-upper-end", sentence }];
  });
}

function crossingProblems(file: LineFile): Problem[] {
  return file.crossings.flatMap((crossing, index) => {
    if (crossing.to >= crossing.from) return [];
    const sentence = `The crossing from ${formatFeet(crossing.from)} ends before it begins.`;
    return [{ path: `crossings.${index}.to`, reason: "ends-before-it-begins", sentence }];
  });
}

function pointProblems(file: LineFile): Problem[] {
  const { upperEnd } = file.line;
  return file.points.flatMap((point, index) => {
    const path = `points.${index}.station`;
    const what = `The ${point.kind.replaceAll("-", " ")}`;
    if (point.station < 0)
      return [{ path, reason: "below-main", sentence: `${what} lies below the main connection.` }];
    if (upperEnd === null || point.station <= upperEnd) return [];
    const sentence = `${what} at ${formatFeet(point.station)} lies beyond the upper end of the line at ${formatFeet(upperEnd)}.`;
    return [{ path, reason: "beyond-upper-end", sentence }];
  });
}
