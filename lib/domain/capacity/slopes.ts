import type { PlumbingCode, SlopeName } from "../facts/plumbing-code.ts";
import type {
  LevelFinding,
  SlopeFinding,
  SlopeVerdict,
  StandingWater,
} from "../findings/capacity.ts";
import { type Cft, formatFeet, plainFeet } from "../length/station.ts";
import { sayWhere } from "../length/stretch.ts";
import { ratio } from "../money/ratio.ts";
import { waterWithin } from "../run/standing-water.ts";
import { sayList } from "../say/say-list.ts";
import { leastSlope } from "./drain-tables.ts";
import { meetsSlope, SLOPES, type Slope, twinOf } from "./slope.ts";
import { percentOf } from "./words.ts";

/** What slopes are held against: the one that was chosen, else the code's for the size of pipe. */
export interface LeastSlopeRule {
  readonly code: PlumbingCode | null;
  readonly chosen: SlopeName | null;
  /** Inside diameters (inches) that lie between two stations; null among them: unknown. */
  readonly diametersBetween: (from: Cft, to: Cft) => readonly (number | null)[];
  /** Where water stood. */
  readonly water: readonly StandingWater[];
}

/** The slope between each two neighboring levels that say an invert, from the main upstream. */
export function slopeFindings(
  levels: readonly LevelFinding[],
  rule: LeastSlopeRule,
): SlopeFinding[] {
  const used = levels.flatMap(({ used: is, station, invert, uncertainty }) =>
    is && invert !== null ? [{ station, invert, uncertainty }] : [],
  );
  return used.slice(1).flatMap((upper, index) => {
    const lower = used[index];
    if (lower === undefined || lower.station >= upper.station) return [];
    const against = leastOver(rule, lower.station, upper.station);
    const water = waterWithin(rule.water, { from: lower.station, to: upper.station });
    return [slopeFinding(lower, upper, against, water)];
  });
}

/** The least slope asked for between two stations; where the pipe changes, the strictest of its sizes. */
export function leastOver(rule: LeastSlopeRule, from: Cft, to: Cft): SlopeName | null {
  if (rule.chosen !== null) return rule.chosen;
  const { code } = rule;
  const sizes = rule.diametersBetween(from, to).filter((size) => size !== null);
  if (code === null || sizes.length < rule.diametersBetween(from, to).length) return null;
  return sizes.length === 0 ? null : leastSlope(code, Math.min(...sizes));
}

interface SurePlace {
  readonly station: Cft;
  readonly invert: Cft;
  readonly uncertainty: Cft;
}

/**
 * Holds the slope between two inverts against a minimum. It meets only where it would at the worst
 * of the uncertainty, and falls short only where it would at the best; in between it cannot be told.
 * Where water stands between the two it never meets: the average hides the dip.
 */
export function slopeFinding(
  lower: SurePlace,
  upper: SurePlace,
  against: SlopeName | null,
  water: readonly StandingWater[] = [],
): SlopeFinding {
  const run = upper.station - lower.station;
  const fall = upper.invert - lower.invert;
  const uncertainty = lower.uncertainty + upper.uncertainty;
  const [low, high] = [(fall - uncertainty) / run, (fall + uncertainty) / run];
  const asAverage = verdictOn({ fall, uncertainty, run }, against);
  const hides = water.length > 0 && HIDING.has(asAverage);
  const verdict: SlopeVerdict = hides ? "average-only" : asAverage;
  const finding = {
    from: lower.station,
    to: upper.station,
    fall,
    uncertainty,
    slope: fall / run,
    low,
    high,
    against,
    verdict,
    water,
  };
  return { ...finding, sentence: sentenceOn(finding, run) };
}

/** Verdicts on an average that must not be said of a stretch in which water stands. */
const HIDING: ReadonlySet<SlopeVerdict> = new Set(["meets", "cannot-be-told", "nothing-to-test"]);

/** `Water stands from 40.9 to 46.9 ft, 3 in deep`. */
export function waterWords(water: readonly StandingWater[]): string {
  const said = water.map((each) =>
    each.depth === null ? sayWhere(each) : `${sayWhere(each)}, ${each.depth} in deep`,
  );
  return `Water stands ${sayList(said)}`;
}

interface Rise {
  readonly fall: Cft;
  readonly uncertainty: Cft;
  readonly run: Cft;
}

function verdictOn(
  { fall, uncertainty, run }: Rise,
  against: SlopeName | null,
): Exclude<SlopeVerdict, "average-only"> {
  if (fall + uncertainty < 0) return "falls-back";
  if (against === null) return "nothing-to-test";
  const minimum = SLOPES[against].slope;
  if (meetsSlope(exact(fall - uncertainty, run), minimum)) return "meets";
  return meetsSlope(exact(fall + uncertainty, run), minimum) ? "cannot-be-told" : "too-flat";
}

function exact(fall: Cft, run: Cft): Slope {
  return ratio(BigInt(fall), BigInt(run));
}

function sentenceOn(finding: Omit<SlopeFinding, "sentence">, run: Cft): string {
  const { from, to, fall, uncertainty, slope, low, high } = finding;
  const between = `Between ${plainFeet(from)} and ${formatFeet(to)} the invert`;
  const off = uncertainty === 0 ? "" : ` ± ${formatFeet(uncertainty)}`;
  const way =
    fall < 0 ? `slopes the wrong way by ${formatFeet(-fall)}` : `rises ${formatFeet(fall)}`;
  const range =
    uncertainty === 0 ? "" : ` (${percentOf(low)} to ${percentOf(high)} within the uncertainty)`;
  return `${between} ${way}${off} over ${formatFeet(run)}: ${percentOf(slope)}${range}. ${verdictWords(finding, run)}`;
}

function verdictWords(finding: Omit<SlopeFinding, "sentence">, run: Cft): string {
  const { verdict, against, fall, low, water } = finding;
  if (verdict === "falls-back") return "It is back-pitched in any case.";
  if (verdict === "average-only")
    return `That is only an average. ${waterWords(water)}: the pipe sags there or something dams it, and the slope there and beside it is not known.`;
  const may = fall < 0 || low < 0 ? " It may slope the wrong way." : "";
  if (against === null) return `No minimum slope is selected.${may}`;
  const { words } = SLOPES[against];
  const twin = otherReading(finding, run);
  if (verdict === "meets") return `It meets ${words} even in the worst case.${twin}`;
  if (verdict === "too-flat") return `It is less than ${words} even in the best case.${may}${twin}`;
  return `Whether it meets ${words} can’t be determined within the uncertainty.${may}`;
}

/** Codes write 1/4 in per foot and 2% as if they were one: where the other gives another answer, say so. */
function otherReading({ fall, uncertainty, against, verdict }: Rated, run: Cft): string {
  const twin = against === null ? null : twinOf(against);
  if (twin === null) return "";
  const other = verdictOn({ fall, uncertainty, run }, twin);
  if (other === verdict) return "";
  const reads = other === "cannot-be-told" ? "it could not be determined" : TWIN_WORDS[other];
  return ` Read as ${SLOPES[twin].words}, ${reads}: ask the authority which one it tests.`;
}

type Rated = Pick<SlopeFinding, "fall" | "uncertainty" | "against" | "verdict">;

const TWIN_WORDS: Record<Exclude<SlopeVerdict, "cannot-be-told" | "average-only">, string> = {
  meets: "it would meet it",
  "too-flat": "it would be too flat",
  "falls-back": "it would slope the wrong way",
  "nothing-to-test": "there would be nothing to test",
};
