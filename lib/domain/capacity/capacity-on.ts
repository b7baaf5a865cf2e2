import type { LineFile } from "../facts/line-file.ts";
import type {
  Capacity,
  Load,
  ReachCapacity,
  SlopeFinding,
  StandingWater,
} from "../findings/capacity.ts";
import type { ReachFinding } from "../findings/reach-finding.ts";
import type { StationedObservation, TieInFinding } from "../findings/report.ts";
import type { Cft } from "../length/station.ts";
import { standingWater, waterWithin } from "../run/standing-water.ts";
import { sayList } from "../say/say-list.ts";
import { propertyLabel } from "../sharing/sharers.ts";
import { fixtureTableTitle } from "./fixture-units.ts";
import { flowFinding } from "./flow.ts";
import { levelFindings } from "./levels.ts";
import { loadBench, loadOf, rowlessFixtures } from "./load.ts";
import { loadFinding } from "./load-finding.ts";
import { obstructionsIn } from "./obstruction.ts";
import { type LeastSlopeRule, leastOver, slopeFindings, waterWords } from "./slopes.ts";

type CapacityFile = Pick<
  LineFile,
  | "line"
  | "properties"
  | "units"
  | "fixtures"
  | "levels"
  | "observations"
  | "runs"
  | "anchors"
  | "gaps"
>;

interface Found {
  readonly tieIns: readonly TieInFinding[];
  readonly reaches: readonly ReachFinding[];
  readonly stations: readonly StationedObservation[];
}

/**
 * Load, slope and flow on every stretch of the line, as far as somebody counted and measured. What
 * is not known is named under `wanting` and stays unknown. Not a design.
 */
export function capacityOn(file: CapacityFile, found: Found): Capacity {
  const water = standingWater(file, found.stations);
  const rule = ruleOf(file, found.reaches, water);
  const levels = levelFindings(file.levels);
  const slopes = slopeFindings(levels, rule);
  const reaches = reachCapacities(file, found, { rule, slopes });
  return {
    code: file.line.plumbingCode,
    levels,
    slopes,
    reaches,
    obstructions: obstructionsIn(file.observations, {
      stations: found.stations,
      diameterAt: (station) => rule.diametersBetween(station, station)[0] ?? null,
    }),
    water,
    wanting: [...wantingFor(file, found, slopes), ...waterWanting(water, slopes)],
  };
}

/** Levels at both ends of standing water keep the dip apart from the pipe beside it. */
function waterWanting(water: readonly StandingWater[], slopes: readonly SlopeFinding[]): string[] {
  const wide = water.filter(({ from, to }) =>
    slopes.some(
      (slope) => slope.from <= from && to <= slope.to && to - from < slope.to - slope.from,
    ),
  );
  if (wide.length === 0) return [];
  return [`${waterWords(wide)}: take a level at each end of it to find the slope beside it.`];
}

function ruleOf(
  { line }: CapacityFile,
  reaches: readonly ReachFinding[],
  water: readonly StandingWater[],
): LeastSlopeRule {
  return {
    water,
    code: line.plumbingCode,
    chosen: line.leastSlope,
    diametersBetween: (from, to) => {
      const touched = reaches.filter((reach) =>
        from === to ? reach.from <= from && from <= reach.to : reach.from < to && reach.to > from,
      );
      return touched.length === 0 ? [line.diameter] : touched.map(({ diameter }) => diameter);
    },
  };
}

function reachCapacities(
  file: CapacityFile,
  { tieIns, reaches }: Found,
  { rule, slopes }: { readonly rule: LeastSlopeRule; readonly slopes: readonly SlopeFinding[] },
): ReachCapacity[] {
  const { code } = rule;
  const bench = code === null ? null : loadBench(file, { tieIns, code });
  const ends = slopes.flatMap(({ from, to }) => [from, to]);
  const pieces = reaches.flatMap((reach) =>
    cutAt(reach, { ends, load: bench === null ? null : loadOf(reach, bench) }),
  );
  return alike(pieces).map(({ from, to, material, diameter, load }) => {
    const slope = slopes.find((each) => each.from <= from && to <= each.to) ?? null;
    const water = slope?.water ?? waterWithin(rule.water, { from, to });
    const least = leastOver(rule, from, to);
    return {
      from,
      to,
      material,
      diameter,
      water,
      slope,
      load:
        code === null || load === null
          ? null
          : loadFinding(code, { diameter, slope, least, water }, load),
      flow: flowFinding({ diameter }, slope),
    };
  });
}

type Piece = Pick<ReachCapacity, "from" | "to" | "material" | "diameter"> & {
  readonly load: Load | null;
  /** Begins at a level: the slope changes there. */
  readonly cut: boolean;
};

/** A reach in pieces that lie each between two levels or beyond them. */
function cutAt(
  { from: start, to: end, material, diameter }: ReachFinding,
  { ends, load }: { readonly ends: readonly Cft[]; readonly load: Load | null },
): Piece[] {
  const inside = ends.filter((one) => start < one && one < end);
  const stations = [...new Set([start, ...inside, end])].sort((a, b) => a - b);
  return stations.slice(1).map((to, index) => {
    const from = stations[index] ?? start;
    return { from, to, material, diameter, load, cut: ends.includes(from) };
  });
}

/** Pieces that differ in nothing that counts here become one. */
function alike(pieces: readonly Piece[]): Piece[] {
  const out: Piece[] = [];
  for (const piece of pieces) {
    const last = out.at(-1);
    if (last !== undefined && !piece.cut && sameKind(last, piece))
      out[out.length - 1] = { ...last, to: piece.to };
    else out.push(piece);
  }
  return out;
}

function sameKind(one: Piece, next: Piece): boolean {
  return (
    one.material === next.material &&
    one.diameter === next.diameter &&
    sameLoad(one.load, next.load)
  );
}

function sameLoad(one: Load | null, next: Load | null): boolean {
  if (one === null || next === null) return one === next;
  const names = ({ parts, uncounted }: Load) =>
    [...parts.map(({ label, partly }) => `${label} ${partly}`), ...uncounted].join("\n");
  return one.least === next.least && one.most === next.most && names(one) === names(next);
}

function wantingFor(
  file: CapacityFile,
  { reaches }: Found,
  slopes: readonly SlopeFinding[],
): string[] {
  const { plumbingCode: code, leastSlope } = file.line;
  const unsized = reaches.some(({ diameter }) => diameter === null);
  const rowless = code === null ? [] : rowlessFixtures(file.fixtures, code);
  return [
    ...(code === null ? ["Select the plumbing code to compare the load with."] : []),
    ...(code === null && leastSlope === null ? ["Select the minimum slope."] : []),
    ...uncountedOnLine(file, reaches),
    ...(code === null || rowless.length === 0
      ? []
      : [
          `${fixtureTableTitle(code)} has no row for a ${sayList(rowless)}: count what is in it one by one.`,
        ]),
    ...(unsized ? ["The inside diameter is unknown on part of the line."] : []),
    ...(slopes.length === 0
      ? ["No slope is known: enter two levels that give the height of the invert."]
      : []),
  ];
}

function uncountedOnLine(file: CapacityFile, reaches: readonly ReachFinding[]): string[] {
  const counted = new Set(file.fixtures.map(({ propertyId }) => propertyId));
  const served = new Set(reaches.flatMap(({ servedBy }) => servedBy));
  const names = file.properties
    .filter(({ id }) => served.has(id) && !counted.has(id))
    .map(propertyLabel);
  return names.length === 0 ? [] : [`Count the plumbing fixtures of ${sayList(names)}.`];
}
