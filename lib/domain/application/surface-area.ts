import { trenchDepth } from "../capacity/trench.ts";
import type { SurfaceCut, TrenchWalls } from "../facts/application.ts";
import type { LineFile } from "../facts/line-file.ts";
import type { PavementRule, Surface } from "../facts/permit-rule.ts";
import { type Cft, formatFeet, plainFeet } from "../length/station.ts";
import { deepestBetween, notedDepths, safeDepth } from "../split/depth.ts";
import type { Day } from "../time/day.ts";
import { addMonths } from "../time/days.ts";
import { letterDay } from "../time/letter-day.ts";

type CutFile = Pick<LineFile, "surfaceCuts" | "points" | "levels" | "authority">;

/** How large one surface to cut becomes, with the arithmetic; null while something is unknown. */
export interface CutArea extends CutMeasure {
  /** The surface may not be cut yet, as the authority has it; empty: nothing says so. */
  readonly noCut: string;
}

/** How large one surface to cut becomes, whatever the day. */
export interface CutMeasure {
  readonly cut: SurfaceCut;
  readonly length: Cft;
  readonly width: Cft | null;
  /** Whole square feet, rounded up. */
  readonly squareFeet: number | null;
  /** How it was worked out, a step a line. */
  readonly steps: readonly string[];
  /** What nobody entered yet, in words for the office. */
  readonly lacks: readonly string[];
  /** Where the least that is cut is written; empty: no rule of the authority. */
  readonly citation: string;
}

export const SURFACE_WORDS: Readonly<Record<Surface, string>> = {
  "not-set": "not set",
  asphalt: "asphalt",
  concrete: "concrete",
  sidewalk: "sidewalk",
  "curb-and-gutter": "curb and gutter",
  gravel: "gravel",
  lawn: "lawn",
  landscaping: "landscaping",
  other: "other",
};

/**
 * How far a wall leans out for each foot of depth, in quarters of a foot: 29 CFR 1926 Subpart P,
 * Appendix B, Table B-1, for excavations less than 20 ft deep (read in public summaries of the table).
 */
const LEAN_QUARTERS: Readonly<Record<Exclude<TrenchWalls, "not-set">, number>> = {
  shored: 0,
  "type-a": 3,
  "type-b": 4,
  "type-c": 6,
};

/** From this depth on an engineer designs the walls, and no width is worked out. */
const ENGINEERED: Cft = 2000;

/** Every surface to cut with its area, in the order of the table. */
export function cutAreas(file: CutFile, today: Day): CutArea[] {
  return file.surfaceCuts.map((cut) => ({
    ...measureOf(cut, file),
    noCut: noCutWords(cut, ruleFor(cut, file), today),
  }));
}

/** Every surface to cut with its size, in the order of the table. */
export function cutMeasures(file: CutFile): CutMeasure[] {
  return file.surfaceCuts.map((cut) => measureOf(cut, file));
}

function ruleFor({ surface }: SurfaceCut, { authority }: CutFile): PavementRule | undefined {
  return (authority?.pavementRules ?? []).find((rule) => rule.surface === surface);
}

function measureOf(cut: SurfaceCut, file: CutFile): CutMeasure {
  const rule = ruleFor(cut, file);
  const depth = depthOf(cut, file);
  const top = topWidth(cut, depth);
  const beyond = 2 * (rule?.beyond ?? 0);
  const width = top === null ? null : Math.max(top + beyond, rule?.leastWidth ?? 0);
  const length = Math.max(Math.abs(cut.to - cut.from) + beyond, rule?.leastLength ?? 0);
  const lacks = lacksOf(cut, depth, length);
  return {
    cut,
    length,
    width,
    squareFeet: width === null || length === 0 ? null : Math.ceil((width * length) / 10_000),
    steps: stepsOf({ cut, rule, depth, top, width, length }),
    lacks,
    citation: rule?.citation ?? "",
  };
}

/** The depth of the trench: as entered; else by the deepest place on file, which may be unknown. */
function depthOf({ from, to, depth }: SurfaceCut, file: CutFile): Cft | null {
  if (depth !== null) return depth;
  const place = deepestBetween(notedDepths(file), Math.min(from, to), Math.max(from, to));
  return place === null ? null : trenchDepth(safeDepth(place));
}

function topWidth({ trenchWidth, walls }: SurfaceCut, depth: Cft | null): Cft | null {
  if (trenchWidth === null || walls === "not-set") return null;
  if (walls === "shored") return trenchWidth;
  if (depth === null || depth >= ENGINEERED) return null;
  return trenchWidth + Math.ceil((2 * depth * LEAN_QUARTERS[walls]) / 4);
}

function lacksOf(cut: SurfaceCut, depth: Cft | null, length: Cft): string[] {
  const sloped = cut.walls !== "shored" && cut.walls !== "not-set";
  const wants: readonly [boolean, string][] = [
    [cut.surface !== "not-set", "surface"],
    [cut.trenchWidth !== null, "width of the trench"],
    [cut.walls !== "not-set", "how the walls stand"],
    [!sloped || depth !== null, "depth of the trench"],
    [!sloped || depth === null || depth < ENGINEERED, "an engineer’s design: 20 ft or deeper"],
    [length > 0, "length"],
    [cut.restoration.trim() !== "", "restoration"],
  ];
  return wants.flatMap(([there, words]) => (there ? [] : [words]));
}

interface Worked {
  readonly cut: SurfaceCut;
  readonly rule: PavementRule | undefined;
  readonly depth: Cft | null;
  readonly top: Cft | null;
  readonly width: Cft | null;
  readonly length: Cft;
}

function stepsOf({ cut, rule, depth, top, width, length }: Worked): string[] {
  if (top === null || width === null || cut.trenchWidth === null || cut.walls === "not-set")
    return [];
  const wall = cut.walls === "shored" ? null : LEAN_QUARTERS[cut.walls] / 4;
  const lean =
    wall === null || depth === null
      ? `Trench ${formatFeet(cut.trenchWidth)} wide, walls held up`
      : `Trench ${formatFeet(cut.trenchWidth)} wide, ${formatFeet(depth)} deep, walls ${wall} across to 1 up on both sides: ${formatFeet(top)} wide at the top`;
  const least = rule === undefined ? [] : ruleSteps(rule);
  return [lean, ...least, `Cut ${plainFeet(length)} × ${formatFeet(width)}`];
}

function ruleSteps({ beyond, leastWidth, leastLength }: PavementRule): string[] {
  const parts = [
    ...(beyond === 0 ? [] : [`${formatFeet(beyond)} beyond each edge`]),
    ...(leastWidth === null ? [] : [`at least ${formatFeet(leastWidth)} wide`]),
    ...(leastLength === null ? [] : [`at least ${formatFeet(leastLength)} long`]),
  ];
  return parts.length === 0 ? [] : [`The authority: ${parts.join(", ")}`];
}

/** Where the authority lets nobody cut new pavement; a day of paving that nobody knows is said too. */
function noCutWords({ pavedOn }: SurfaceCut, rule: PavementRule | undefined, today: Day): string {
  if (rule === undefined || rule.noCutYears === null) return "";
  const years = rule.noCutYears === 1 ? "1 year" : `${rule.noCutYears} years`;
  if (pavedOn === null)
    return `Not to be cut within ${years} of paving; when it was paved is not entered.`;
  const until = addMonths(pavedOn, 12 * rule.noCutYears);
  return until > today
    ? `Paved on ${letterDay(pavedOn, "en")}; not to be cut before ${letterDay(until, "en")}.`
    : "";
}

/** Square feet of all surfaces of one kind; null while one of them is unknown. */
export function totalArea(areas: readonly CutArea[]): number | null {
  return areas.reduce<number | null>(
    (sum, { squareFeet }) => (sum === null || squareFeet === null ? null : sum + squareFeet),
    0,
  );
}
