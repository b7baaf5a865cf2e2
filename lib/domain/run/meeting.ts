import type { LineFile } from "../facts/line-file.ts";
import { MATERIAL_WORDS } from "../facts/line-words.ts";
import type { Run } from "../facts/run.ts";
import type { StationedObservation } from "../findings/report.ts";
import { type Cft, formatFeet, plainFeet } from "../length/station.ts";
import { commonStretch, type Stretch } from "../length/stretch.ts";
import { sayList } from "../say/say-list.ts";
import { counterTolerance } from "./convert.ts";
import { looksOf } from "./coverage.ts";
import { convertersOf } from "./observe.ts";

type MeetingFile = Pick<LineFile, "runs" | "anchors" | "gaps" | "observations" | "tieIns">;

/** Two runs that saw the same stretch, with footage from opposite ends. */
export interface Meeting {
  readonly runIds: readonly [string, string];
  /** What both of them saw. */
  readonly stretch: Stretch;
  /** Tie-ins that both saw, with how far the second one puts each farther up. */
  readonly common: readonly { readonly tieInId: string; readonly difference: Cft }[];
  /** Tie-ins within the stretch that only one of them saw. */
  readonly onlyFirst: readonly string[];
  readonly onlySecond: readonly string[];
  /** How much longer the line is by the one than by the other: the middle of the differences; null: nothing in common. */
  readonly disagreement: Cft | null;
  /** What is so, and what to look at; one sentence for each. */
  readonly sentences: readonly string[];
  /** False where something does not agree. */
  readonly agrees: boolean;
}

/**
 * Every pair of runs whose footage comes from opposite ends and that saw a stretch in common: do they
 * see the same tie-ins and materials there, and how far do their lengths disagree. Runs that are
 * relative only meet nowhere.
 */
export function meetingsOf(
  file: MeetingFile,
  stations: readonly StationedObservation[],
): Meeting[] {
  const ways = convertersOf(file);
  const runs = file.runs.flatMap((run) => {
    const converter = ways.get(run.id)?.converter;
    if (converter === undefined) return [];
    const seen = looksOf(file, run, converter).filter(({ state }) => state === "seen");
    return seen.length === 0 ? [] : [{ run, way: converter.way, seen }];
  });
  return runs.flatMap((one, at) =>
    runs.slice(at + 1).flatMap((other) => {
      if (one.way === other.way) return [];
      const shared = one.seen.flatMap((a) => other.seen.flatMap((b) => commonStretch(a, b) ?? []));
      const [first] = shared;
      if (first === undefined) return [];
      const stretch = {
        from: Math.min(...shared.map(({ from }) => from)),
        to: Math.max(...shared.map(({ to }) => to)),
      };
      return [meeting(file, stations, { one: one.run, other: other.run, shared, stretch })];
    }),
  );
}

interface Pair {
  readonly one: Run;
  readonly other: Run;
  readonly shared: readonly Stretch[];
  readonly stretch: Stretch;
}

function meeting(
  file: MeetingFile,
  stations: readonly StationedObservation[],
  pair: Pair,
): Meeting {
  const [first, second] = [pair.one, pair.other].map((run) => seenBy(file, stations, run));
  const mine = first ?? new Map<string, Cft>();
  const theirs = second ?? new Map<string, Cft>();
  const common = [...mine].flatMap(([tieInId, station]) => {
    const other = theirs.get(tieInId);
    return other === undefined ? [] : [{ tieInId, difference: other - station }];
  });
  const only = (own: ReadonlyMap<string, Cft>, others: ReadonlyMap<string, Cft>) =>
    [...own].filter(([id, station]) => !others.has(id) && isWell(station, pair)).map(([id]) => id);
  const disagreement = middleOf(common.map(({ difference }) => difference));
  const facts = {
    common,
    onlyFirst: only(mine, theirs),
    onlySecond: only(theirs, mine),
    disagreement,
  };
  const wrong = [
    ...lengthWords(facts, pair),
    ...onlyWords(file, facts, pair),
    ...materialWords(file, stations, pair),
  ];
  const { from, to } = pair.stretch;
  const opening = `${nameOf(pair.one)} and ${nameOf(pair.other)} both saw ${plainFeet(from)} to ${formatFeet(to)}, from opposite ends.`;
  const agreed =
    common.length === 0
      ? "They have no tie-in in common, so nothing shows whether their lengths match."
      : `They agree: ${sayTieIns(
          file,
          common.map(({ tieInId }) => tieInId),
        )} ${common.length === 1 ? "lies" : "lie"} within ${formatFeet(Math.max(...common.map(({ difference }) => Math.abs(difference))))} by both.`;
  return {
    runIds: [pair.one.id, pair.other.id],
    stretch: pair.stretch,
    ...facts,
    agrees: wrong.length === 0,
    sentences: [opening, ...(wrong.length === 0 ? [agreed] : wrong)],
  };
}

/** Where a run saw each tie-in; the first sighting of each. */
function seenBy(
  file: MeetingFile,
  stations: readonly StationedObservation[],
  run: Run,
): Map<string, Cft> {
  const placed = new Map(stations.map((each) => [each.observationId, each.station]));
  const seen = new Map<string, Cft>();
  for (const { id, runId, kind, tieInId } of file.observations) {
    const station = placed.get(id) ?? null;
    if (runId !== run.id || kind !== "tie-in" || tieInId === null || station === null) continue;
    if (!seen.has(tieInId)) seen.set(tieInId, station);
  }
  return seen;
}

/** Far enough inside of what both saw that the other run should have seen it too. */
function isWell(station: Cft, { shared }: Pair): boolean {
  const off = counterTolerance(station);
  return shared.some(({ from, to }) => station - off >= from && station + off <= to);
}

function middleOf(values: readonly number[]): Cft | null {
  const sorted = values.toSorted((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)] ?? null;
}

type Facts = Pick<Meeting, "common" | "onlyFirst" | "onlySecond" | "disagreement">;

function lengthWords({ common, disagreement }: Facts, { one, other, stretch }: Pair): string[] {
  if (disagreement === null || Math.abs(disagreement) <= counterTolerance(stretch.to)) return [];
  const way = disagreement > 0 ? "farther up" : "farther down";
  const what =
    common.length === 1 ? "their one common tie-in" : `their ${common.length} common tie-ins`;
  return [
    `Their lengths disagree: ${nameOf(other)} puts ${what} ${formatFeet(Math.abs(disagreement))} ${way} than ${nameOf(one)}. Check both zeros, and tie both runs to one point that both passed.`,
  ];
}

function onlyWords(file: MeetingFile, { onlyFirst, onlySecond }: Facts, pair: Pair): string[] {
  const said = (ids: readonly string[], saw: Run, missed: Run) =>
    ids.length === 0
      ? []
      : [
          `${sayTieIns(file, ids)} ${ids.length === 1 ? "was" : "were"} seen by ${nameOf(saw)} and not by ${nameOf(missed)}, which saw the pipe there: check its video.`,
        ];
  return [...said(onlyFirst, pair.one, pair.other), ...said(onlySecond, pair.other, pair.one)];
}

/** Materials that the two noted within a foot or two of one another, and that are not the same. */
function materialWords(
  file: MeetingFile,
  stations: readonly StationedObservation[],
  { one, other, stretch }: Pair,
): string[] {
  const placed = new Map(stations.map((each) => [each.observationId, each.station]));
  const changes = (run: Run) =>
    file.observations.flatMap(({ id, runId, kind, material }) => {
      const station = placed.get(id) ?? null;
      const isIn = station !== null && station >= stretch.from && station <= stretch.to;
      return runId === run.id && kind === "material" && isIn ? [{ station, material }] : [];
    });
  const theirs = changes(other);
  return changes(one).flatMap(({ station, material }) => {
    const near = theirs.find(
      (each) => Math.abs(each.station - station) <= 2 * counterTolerance(station),
    );
    if (near === undefined || near.material === material) return [];
    return [
      `At ${formatFeet(station)} ${nameOf(one)} noted ${MATERIAL_WORDS[material]} going up, and ${nameOf(other)} ${MATERIAL_WORDS[near.material]}: check both videos.`,
    ];
  });
}

function sayTieIns({ tieIns }: MeetingFile, ids: readonly string[]): string {
  return sayList(ids.map((id) => tieIns.find((each) => each.id === id)?.label ?? "a tie-in"));
}

function nameOf({ name }: Run): string {
  return name.trim() || "a run";
}
