import type { PlumbingCode, SlopeName } from "../facts/plumbing-code.ts";
import type {
  Load,
  LoadFinding,
  LoadVerdict,
  SlopeFinding,
  StandingWater,
} from "../findings/capacity.ts";
import { ratio } from "../money/ratio.ts";
import { capital } from "../say/capital.ts";
import { sayList } from "../say/say-list.ts";
import { type DrainLimit, drainLimit } from "./drain-load.ts";
import { BUILDING_SEWER_LOADS } from "./drain-tables.ts";
import { loadWords } from "./load.ts";
import { SLOPES, type Slope } from "./slope.ts";
import { waterWords } from "./slopes.ts";

interface Pipe {
  readonly diameter: number | null;
  readonly slope: SlopeFinding | null;
  /** Taken where no slope is measured. */
  readonly least: SlopeName | null;
  /** Where water stands: a table by slope says nothing of a dip. */
  readonly water: readonly StandingWater[];
}

interface Limits {
  /** At the flattest and at the steepest slope that may be. */
  readonly low: DrainLimit | null;
  readonly high: DrainLimit | null;
}

/**
 * Holds a load against the code's table for the pipe's size and slope. It is within only where all
 * that may flow is within at the flattest slope that may be and no water stands, and too much only
 * where what is counted is too much at the steepest.
 */
export function loadFinding(code: PlumbingCode, pipe: Pipe, load: Load): LoadFinding {
  const limits = limitsOf(code, pipe);
  const verdict = verdictOn(load, limits, pipe.water.length > 0);
  const assumed = pipe.slope === null;
  return {
    load,
    most: limits.low?.most ?? null,
    mostAtSteepest: limits.high?.most ?? null,
    assumed,
    verdict,
    sentence: [
      `${capital(loadWords(load))}${partsWords(load)}.`,
      ...uncountedWords(load),
      verdictSentence(code, pipe, { load, limits, verdict }),
    ]
      .filter((part) => part !== "")
      .join(" "),
  };
}

function limitsOf(code: PlumbingCode, { diameter, slope, least }: Pipe): Limits {
  if (diameter === null) return { low: null, high: null };
  if (slope === null) {
    const limit =
      least === null ? null : drainLimit(code, { diameter, slope: SLOPES[least].slope });
    return { low: limit, high: limit };
  }
  const run = slope.to - slope.from;
  const at = (fall: number): Slope => ratio(BigInt(fall), BigInt(run));
  return {
    low: drainLimit(code, { diameter, slope: at(slope.fall - slope.uncertainty) }),
    high: drainLimit(code, { diameter, slope: at(slope.fall + slope.uncertainty) }),
  };
}

function verdictOn(
  { parts, least, most }: Load,
  { low, high }: Limits,
  isDipped: boolean,
): LoadVerdict {
  if (parts.length === 0) return "nothing-counted";
  if (high === null) return "no-row";
  if (least > high.most) return "too-much";
  if (isDipped) return "cannot-be-told";
  return low !== null && most !== null && most <= low.most ? "within" : "cannot-be-told";
}

function partsWords({ parts }: Load): string {
  if (parts.length < 2) return "";
  return ` (${sayList(parts.map(({ label, units }) => `${label} ${units}`))})`;
}

function uncountedWords({ uncounted, parts }: Load): string[] {
  const partly = parts.filter((part) => part.partly).map(({ label }) => label);
  const notAll = partly.length === 0 ? "" : `Not all of ${sayList(partly)} may drain through here.`;
  const missing = uncounted.length === 0 ? "" : `Not counted: ${sayList(uncounted)}.`;
  return [notAll, missing];
}

interface Judged {
  readonly load: Load;
  readonly limits: Limits;
  readonly verdict: LoadVerdict;
}

function verdictSentence(code: PlumbingCode, pipe: Pipe, judged: Judged): string {
  const { limits, verdict } = judged;
  const title = shortTitle(code);
  const { diameter } = pipe;
  if (verdict === "nothing-counted") return "";
  if (diameter === null)
    return "The pipe size is unknown here, so there is no limit to compare with.";
  if (verdict === "no-row") return noRowWords(title, pipe);
  const limitWords = (limit: DrainLimit | null) =>
    limit === null
      ? ""
      : `the ${limit.most} that ${title} allows a ${diameter} in pipe at ${SLOPES[limit.column].words}`;
  const [lower, upper] = [limitWords(limits.low), limitWords(limits.high)];
  if (verdict === "too-much") return `More than ${upper}.${assumedWords(pipe)}`;
  if (pipe.water.length > 0) return `${waterWords(pipe.water)}, so ${title} gives no limit here.`;
  if (verdict === "within") return `Within ${lower}.${assumedWords(pipe)}`;
  return `${cannotTell(judged, lower, upper)}${assumedWords(pipe)}`;
}

/** `IPC Table 710.1(1)`: the whole title stands where the tables are listed. */
function shortTitle(code: PlumbingCode): string {
  return BUILDING_SEWER_LOADS[code].title.split(", ")[0] ?? "";
}

function noRowWords(title: string, { diameter, slope, least }: Pipe): string {
  if (slope === null && least === null)
    return "The slope is unknown here and no minimum slope is selected, so there is no limit to compare with.";
  return `${title} gives no load for a ${diameter} in pipe at this slope.`;
}

function assumedWords({ slope }: Pipe): string {
  return slope === null
    ? " The slope is not measured here: this is true only if the pipe has that slope."
    : "";
}

/** What leaves it open: those who are not counted, or the slope. */
function cannotTell(
  { load: { least, most }, limits: { low } }: Judged,
  lower: string,
  upper: string,
): string {
  if (most === null && low !== null && least <= low.most)
    return `Within ${lower} so far; depends on what is not yet counted.`;
  const flattest =
    lower === "" ? "at its flattest the table gives no limit" : `at its flattest ${lower}`;
  return `The slope is too uncertain to tell: ${flattest}, at its steepest ${upper}.`;
}
