import type { LineFile } from "../facts/line-file.ts";
import type { Gap, Run } from "../facts/run.ts";
import type { CoverageSpan } from "../findings/report.ts";
import type { Cft } from "../length/station.ts";
import { type Converter, counterTolerance } from "./convert.ts";
import { convertersOf } from "./observe.ts";

type CoverageFacts = Pick<LineFile, "runs" | "anchors" | "gaps" | "observations">;

interface Span {
  readonly from: Cft;
  readonly to: Cft;
}

interface Looked extends Span {
  readonly state: CoverageSpan["state"];
}

/** What counts where several runs passed: seen once is seen; else the plainest reason why not. */
const STRENGTH: readonly CoverageSpan["state"][] = [
  "seen",
  "under-water",
  "blocked",
  "not-in-view",
  "not-recorded",
  "not-inspected",
];

/**
 * What the runs saw of the trunk from the main connection to `extent`, without gaps or overlaps.
 * Relative-only runs looked nowhere that can be named. Hundredths of a foot.
 */
export function coverageOf(file: CoverageFacts, extent: Cft): CoverageSpan[] {
  const looks = [...convertersOf(file).values()].flatMap(({ run, converter }) =>
    looksOf(file, run, converter),
  );
  const cuts = new Set([0, extent]);
  for (const look of looks) {
    for (const end of [look.from, look.to]) if (end > 0 && end < extent) cuts.add(end);
  }
  const ends = [...cuts].sort((a, b) => a - b);
  const spans = ends.slice(1).map((to, index) => {
    const from = ends[index] ?? 0;
    return { from, to, state: stateOf(looks, { from, to }) };
  });
  return joined(spans);
}

/** Farthest station up the trunk that any run reached; 0 where none can tell. */
export function farthestLook(file: CoverageFacts): Cft {
  const looks = [...convertersOf(file).values()].flatMap(({ run, converter }) =>
    looksOf(file, run, converter),
  );
  return looks.reduce((far, look) => Math.max(far, look.to), 0);
}

/**
 * The stretches that nobody saw and that are worth another look. Where a run ended short of an end of
 * the trunk by no more than its counter may be off, it may as well have reached it.
 */
export function unseenStretches(coverage: readonly CoverageSpan[]): CoverageSpan[] {
  const last = coverage.length - 1;
  return coverage.filter(({ from, to, state }, at) => {
    const isEnd = at === 0 || at === last;
    const beside = at === 0 ? coverage[1] : coverage[last - 1];
    const isShort = to - from <= counterTolerance(to) && beside?.state === "seen";
    return state !== "seen" && !(state === "not-inspected" && isEnd && isShort);
  });
}

/** The worst that coverage says of a stretch: null where all of it was seen. */
export function unseenPart(
  coverage: readonly CoverageSpan[],
  { from, to }: Span,
): CoverageSpan | null {
  const part = coverage.find((span) => span.state !== "seen" && span.from < to && span.to > from);
  return part ?? null;
}

/** What one run saw and could not see of the trunk; nothing where it is relative only. */
export function looksOf(file: CoverageFacts, run: Run, converter: Converter): Looked[] {
  const end = endOf(file, run);
  const passed = end === null ? null : spanOf(converter, run.fromCounter, end);
  if (!passed) return [];
  const gaps = file.gaps
    .filter((gap) => gap.runId === run.id)
    .flatMap((gap) => gapSpan(converter, gap));
  return [...without(passed, gaps), ...gaps];
}

/** The counter where looking ended: as noted, or the farthest thing noted in the run. */
export function endOf(file: CoverageFacts, run: Run): Cft | null {
  if (run.toCounter !== null) return run.toCounter;
  const counters = [
    ...file.observations
      .filter((seen) => seen.runId === run.id)
      .map((seen) => Math.max(seen.counter, seen.toCounter ?? seen.counter)),
    ...file.anchors.filter((anchor) => anchor.runId === run.id).map((anchor) => anchor.counter),
  ];
  return counters.length > 0 ? Math.max(...counters) : null;
}

function gapSpan(converter: Converter, gap: Gap): Looked[] {
  const span = spanOf(converter, gap.fromCounter, gap.toCounter);
  return span ? [{ ...span, state: gap.cause }] : [];
}

function spanOf(converter: Converter, a: Cft, b: Cft): Span | null {
  const one = converter.toStation(a);
  const other = converter.toStation(b);
  if (!one || !other) return null;
  return {
    from: Math.min(one.station, other.station),
    to: Math.max(one.station, other.station),
  };
}

function without(passed: Span, gaps: readonly Span[]): Looked[] {
  const seen: Looked[] = [];
  let from = passed.from;
  for (const gap of [...gaps].sort((a, b) => a.from - b.from)) {
    if (gap.from > from) seen.push({ from, to: Math.min(gap.from, passed.to), state: "seen" });
    from = Math.max(from, gap.to);
  }
  if (from < passed.to) seen.push({ from, to: passed.to, state: "seen" });
  return seen.filter((span) => span.to > span.from);
}

function stateOf(looks: readonly Looked[], span: Span): CoverageSpan["state"] {
  const states = new Set(
    looks.filter((look) => look.from <= span.from && look.to >= span.to).map((look) => look.state),
  );
  return STRENGTH.find((state) => states.has(state)) ?? "not-inspected";
}

function joined(spans: readonly CoverageSpan[]): CoverageSpan[] {
  const out: CoverageSpan[] = [];
  for (const span of spans) {
    const last = out.at(-1);
    if (last && last.state === span.state) out[out.length - 1] = { ...last, to: span.to };
    else out.push(span);
  }
  return out;
}
