import type { HoldStop, RaisedHold } from "../facts/hold.ts";
import type { LineFile } from "../facts/line-file.ts";
import type { Observation, Run } from "../facts/run.ts";
import type { Report, RunCoverage, StationedObservation } from "../findings/report.ts";
import { type Cft, formatFeet } from "../length/station.ts";
import {
  commonStretch,
  joinedStretches,
  type Stretch,
  sayWhere,
  touches,
  withoutStretches,
} from "../length/stretch.ts";
import { sayList } from "../say/say-list.ts";
import { scopeToCome } from "../sharing/scope-in-force.ts";
import { deedsOfAll } from "../split/work-deeds.ts";
import { around } from "../stops/stopped-by.ts";

type CrossingFile = Pick<LineFile, "runs" | "observations" | "scope" | "options" | "changeOrders">;
type CrossingFacts = Pick<Report, "tieIns" | "stations" | "runCoverage" | "extent">;

/**
 * Holds on whatever may meet a gas line that was bored through the pipe: where the camera saw
 * something cross; and where nobody can say that nothing does, though it is to be cut, lined or
 * burst, roots or a blockage fill it, or the run itself could not tell.
 */
export function crossingCauses(file: CrossingFile, facts: CrossingFacts): RaisedHold[] {
  return [...seenCauses(file, facts), ...openCauses(file, facts)];
}

function seenCauses(file: CrossingFile, { stations, runCoverage }: CrossingFacts): RaisedHold[] {
  const seen = file.observations.filter((each) => each.kind === "crossing");
  const told = new Set(seen.map((each) => each.runId));
  const closes =
    "The utility’s confirmation of what crosses and that it is safe, noted with a named person’s waiver";
  return [
    ...seen.map((each) => {
      const at = stations.find(({ observationId }) => observationId === each.id);
      const stretch = placeOf(at);
      const where = stretch === null ? "at no known station" : `at ${formatFeet(at?.station ?? 0)}`;
      return {
        cause: "crossing-seen" as const,
        subjectId: each.id,
        subjectLabel: `crossing ${where}`,
        sentence: `The camera saw something cross the pipe ${where}: it may be a gas line, so nothing is cut, lined or dug there until it is identified.`,
        closes,
        stretch,
      };
    }),
    ...file.runs
      .filter((run) => run.crossingSeen === "yes" && !told.has(run.id))
      .map((run) => ({
        cause: "crossing-seen" as const,
        subjectId: run.id,
        subjectLabel: run.name || "a run",
        sentence: `${run.name || "A run"} saw something cross the pipe: it may be a gas line, so nothing is cut, lined or dug until it is identified and located.`,
        closes,
        stretch: wholeOf(runCoverage.find(({ runId }) => runId === run.id)),
      })),
  ];
}

function placeOf(seen: StationedObservation | undefined): Stretch | null {
  const near = around(seen?.station ?? null, seen?.uncertainty ?? null);
  const far = around(seen?.toStation ?? null, seen?.uncertainty ?? null);
  if (near === null || far === null) return near;
  return { from: Math.min(near.from, far.from), to: Math.max(near.to, far.to) };
}

function wholeOf(coverage: RunCoverage | undefined): Stretch | null {
  const ends = (coverage?.spans ?? []).flatMap(({ from, to }) => [from, to]);
  return ends.length === 0 ? null : { from: Math.min(...ends), to: Math.max(...ends) };
}

/** Shorter than this a stretch is within what counters are off by; not held for being unfilmed. */
const LEAST: Cft = 100;

interface Open {
  readonly subjectId: string;
  readonly subjectLabel: string;
  readonly stretch: Stretch | null;
  readonly stops: readonly HoldStop[];
}

const CUTS = ["clearing", "lining", "bursting"] as const satisfies readonly HoldStop[];

function openCauses(file: CrossingFile, facts: CrossingFacts): RaisedHold[] {
  const looks = looksOf(file, facts);
  const worked = workPlaces(file, facts, looks);
  const held = worked.flatMap(({ stretch }) => (stretch === null ? [] : [stretch]));
  const hidden = [...hiddenPlaces(looks), ...cannotTellPlaces(looks)].flatMap((open) =>
    open.stretch === null
      ? [open]
      : withoutStretches(open.stretch, held).map((stretch) => ({ ...open, stretch })),
  );
  return [...worked, ...hidden].map((open) => openCause(open, looks));
}

interface Looks {
  /** Where a run saw the pipe and said that nothing crosses it. */
  readonly clear: readonly Stretch[];
  /** What roots and blockages hide. */
  readonly hidden: readonly { readonly stretch: Stretch; readonly seen: Observation }[];
  readonly coverage: readonly { readonly run: Run; readonly spans: RunCoverage["spans"] }[];
}

function looksOf(file: CrossingFile, { runCoverage, stations }: CrossingFacts): Looks {
  const coverage = file.runs.map((run) => ({
    run,
    spans: runCoverage.find(({ runId }) => runId === run.id)?.spans ?? [],
  }));
  const clear = coverage
    .filter(({ run }) => run.crossingSeen === "no")
    .flatMap(({ spans }) => spans.filter(({ state }) => state === "seen"));
  const found = new Map(stations.map((each) => [each.observationId, each]));
  const hidden = file.observations.filter(hides).flatMap((seen) => {
    const stretch = placeOf(found.get(seen.id));
    const since = clearSince(
      coverage,
      file.runs.find(({ id }) => id === seen.runId),
    );
    return stretch === null
      ? []
      : withoutStretches(stretch, since).map((part) => ({ stretch: part, seen }));
  });
  return { clear: joinedStretches(clear), hidden, coverage };
}

/** What runs of a later day saw free, and said that nothing crosses it. */
function clearSince(coverage: Looks["coverage"], run: Run | undefined): Stretch[] {
  return coverage
    .filter((later) => later.run.crossingSeen === "no" && later.run.ranOn > (run?.ranOn ?? ""))
    .flatMap(({ spans }) => spans.filter(({ state }) => state === "seen"));
}

function hides({ kind, fault }: Observation): boolean {
  return kind === "blockage" || (kind === "fault" && (fault === "roots" || fault === "collapsed"));
}

/** What is to be cut, lined or burst, as far as nobody saw that nothing crosses there. */
function workPlaces(file: CrossingFile, facts: CrossingFacts, looks: Looks): Open[] {
  const line = { from: 0, to: facts.extent };
  return deedsOfAll(scopeToCome(file), { ...file, tieIns: facts.tieIns })
    .filter(({ stop }) => (CUTS as readonly HoldStop[]).includes(stop))
    .flatMap(({ item, stop, stretch }) =>
      notRuledOut(stretch ?? line, looks).map((part) => ({
        subjectId: `${item.id}:${stop}:${part.from}-${part.to}`,
        subjectLabel: `“${item.title}” ${sayWhere(part)}`,
        stretch: part,
        stops: CUTS,
      })),
    );
}

function notRuledOut(stretch: Stretch, { clear, hidden }: Looks): Stretch[] {
  const unfilmed = withoutStretches(stretch, clear).filter(
    ({ from, to }) => to - from >= LEAST || stretch.to - stretch.from < LEAST,
  );
  const covered = hidden.flatMap((each) => commonStretch(each.stretch, stretch) ?? []);
  return joinedStretches([...unfilmed, ...covered]);
}

/** Roots and blockages are what a crew cuts first, priced or not. */
function hiddenPlaces({ hidden }: Looks): Open[] {
  return hidden.map(({ seen, stretch }) => ({
    subjectId: `${seen.id}:${stretch.from}-${stretch.to}`,
    subjectLabel: `${hiderWord(seen)} ${sayWhere(stretch)}`,
    stretch,
    stops: ["clearing"],
  }));
}

function hiderWord({ kind, fault }: Observation): string {
  if (kind === "blockage") return "blockage";
  return fault === "roots" ? "roots" : "collapse";
}

/** What a run that could not tell saw of the pipe, and no other run did that could. */
function cannotTellPlaces({ clear, coverage }: Looks): Open[] {
  return coverage
    .filter(({ run }) => run.crossingSeen === "cannot-tell")
    .flatMap(({ run, spans }): Open[] => {
      const subjectLabel = run.name || "a run";
      if (spans.length === 0)
        return [{ subjectId: run.id, subjectLabel, stretch: null, stops: CUTS }];
      return joinedStretches(spans)
        .flatMap((span) => withoutStretches(span, clear))
        .filter(({ from, to }) => to - from >= LEAST)
        .map((stretch) => ({
          subjectId: `${run.id}:${stretch.from}-${stretch.to}`,
          subjectLabel: `${subjectLabel} ${sayWhere(stretch)}`,
          stretch,
          stops: CUTS,
        }));
    });
}

function openCause(open: Open, looks: Looks): RaisedHold {
  return {
    cause: "crossing-not-ruled-out",
    subjectId: open.subjectId,
    subjectLabel: open.subjectLabel,
    sentence: `Whether something crosses the pipe ${sayWhere(open.stretch)}, such as a gas line bored through it, is not known: ${sayList(reasons(open.stretch, looks))}.`,
    closes:
      "View both sides with a camera and call the gas company before anything is cut, noted with a named person’s waiver; or a later run that films it clear with nothing crossing",
    stretch: open.stretch,
    stops: open.stops,
  };
}

const STATE_REASONS: Readonly<Record<string, string>> = {
  "under-water": "it was under water",
  blocked: "the camera was blocked",
  "not-in-view": "it was out of view",
  "not-recorded": "it was not recorded",
};

/** Why nobody can say, each reason once. */
function reasons(stretch: Stretch | null, { clear, hidden, coverage }: Looks): string[] {
  if (stretch === null) return ["no run tied to the line looked for it"];
  const inside = coverage.flatMap(({ run, spans }) =>
    spans.filter((span) => commonStretch(span, stretch) !== null).map((span) => ({ run, span })),
  );
  const states = inside.flatMap(({ span }) => STATE_REASONS[span.state] ?? []);
  const cannotTell = inside.some(
    ({ run, span }) => span.state === "seen" && run.crossingSeen === "cannot-tell",
  );
  const hiding = hidden.filter((each) => touches(each.stretch, stretch));
  const roots = hiding.filter(({ seen }) => seen.fault === "roots");
  const others = hiding.filter(({ seen }) => seen.fault !== "roots");
  const unfilmed =
    withoutStretches(stretch, [...clear, ...inside.map(({ span }) => span)]).length > 0;
  return [
    ...new Set([
      ...(roots.length > 0 ? [`roots hide ${partOf(stretch, roots)}`] : []),
      ...(others.length > 0 ? [`a blockage hides ${partOf(stretch, others)}`] : []),
      ...states,
      ...(cannotTell ? ["the run could not tell"] : []),
      ...(unfilmed ? ["no run tied to the line filmed it"] : []),
    ]),
  ];
}

/** `it`, or `part of it` where what hides it is shorter. */
function partOf(stretch: Stretch, hiding: readonly { readonly stretch: Stretch }[]): string {
  const open = withoutStretches(
    stretch,
    hiding.map((each) => each.stretch),
  );
  return open.length === 0 ? "it" : "part of it";
}
