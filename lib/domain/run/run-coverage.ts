import type { LineFile } from "../facts/line-file.ts";
import type { Gap, ObscuredBy, Run, RunEnd } from "../facts/run.ts";
import type { RunCoverage } from "../findings/report.ts";
import { type Cft, formatFeet, plainFeet } from "../length/station.ts";
import type { Converter } from "./convert.ts";
import { endOf, looksOf } from "./coverage.ts";
import { convertersOf } from "./observe.ts";

type CoverageFacts = Pick<LineFile, "runs" | "anchors" | "gaps" | "observations">;

/** Completes `… to 88.4 ft`. */
const RUN_END_WORDS: Record<RunEnd, string> = {
  "reached-main": ", where it reached the main",
  "reached-upper-end": ", where it reached the upper end of the line",
  blocked: ", where it was blocked",
  "under-water": ", where it went under water",
  "turned-back": ", where it was turned back",
  "out-of-cable": ", where the cable ran out",
  unknown: "; the reason it stopped is not recorded",
};

const GAP_WORDS: Record<ObscuredBy, string> = {
  "under-water": "under water",
  blocked: "blocked",
  "not-in-view": "out of view",
  "not-recorded": "not recorded",
};

/**
 * What each run looked at along the trunk, in the file's order: its spans from the main upwards, and
 * in words where it went in, which way, where it could not see, where it saw again and how it ended.
 * Hundredths of a foot; relative-only runs have no spans and are told in counter readings.
 */
export function runCoverageOf(file: CoverageFacts): RunCoverage[] {
  return [...convertersOf(file).values()].map(({ run, converter }) => {
    const end = endOf(file, run);
    const looks = looksOf(file, run, converter).toSorted((a, b) => a.from - b.from || a.to - b.to);
    const from = converter.toStation(run.fromCounter)?.station ?? null;
    const to = end === null ? null : (converter.toStation(end)?.station ?? null);
    const gaps = file.gaps.filter((gap) => gap.runId === run.id);
    return {
      runId: run.id,
      spans: looks.map((look) => ({ from: look.from, to: look.to, state: look.state })),
      ...passOf(run, { from, to }),
      sentence: [
        wayWords(run, { from, to, end }),
        ...gapWords(gaps, { converter, end: end ?? Number.POSITIVE_INFINITY }),
      ].join(" "),
    };
  });
}

/**
 * Where a run started and ended. One that was pushed to the main before it was pulled back, and whose
 * end is told as reaching the main, started at the other end of what it looked at.
 */
function passOf(run: Run, { from, to }: Pick<Ends, "from" | "to">): Pick<Ends, "from" | "to"> {
  return isPullBack(run) && run.ended === "reached-main" ? { from: to, to: from } : { from, to };
}

interface Ends {
  readonly from: Cft | null;
  readonly to: Cft | null;
  /** Counter reading where looking ended. */
  readonly end: Cft | null;
}

function wayWords(run: Run, { from, to, end }: Ends): string {
  const way = run.looks;
  const access = run.accessPoint.trim();
  const start = access === "" ? "Went in" : `Went in at ${access}`;
  if (isPullBack(run)) return pullBackWords(run, { from, to, start });
  const stop = RUN_END_WORDS[run.ended];
  if (from !== null && to !== null)
    return `${start} (${formatFeet(from)}) and looked ${way} to ${formatFeet(to)}${stop}.`;
  if (from !== null)
    return `${start} (${formatFeet(from)}) and looked ${way}; how far is not recorded.`;
  const counted = `from ${plainFeet(run.fromCounter)} to ${end === null ? "an unknown reading" : formatFeet(end)} on the counter`;
  return `${start} and looked ${way} ${counted}${stop}. It is not tied to the line, so it has no stations.`;
}

/** Pushed down to the main and pulled back: it looks the one way and its footage grows the other. */
function isPullBack({ looks, measuredFrom }: Run): boolean {
  return measuredFrom === "main" && looks === "downstream";
}

/** `Went in at the house cleanout and pulled back, looking downstream, from 0.0 ft to 62.0 ft …`. */
function pullBackWords(
  run: Run,
  { from, to, start }: Pick<Ends, "from" | "to"> & { readonly start: string },
): string {
  const pulled = `${start} and pulled back, looking ${run.looks},`;
  const measured = "its footage is measured from the main.";
  if (from === null)
    return `${pulled} from the main; ${measured} Its known points contradict that, so it has no stations.`;
  if (to === null)
    return `${pulled} from ${formatFeet(from)}, how far is not recorded; ${measured}`;
  const isToldAlready = run.ended === "reached-main" || run.ended === "unknown";
  const stop = isToldAlready ? "" : RUN_END_WORDS[run.ended];
  return `${pulled} from ${formatFeet(from)} to ${formatFeet(to)}${stop}; ${measured}`;
}

/** Gaps in the order in which the camera met them. */
function gapWords(
  gaps: readonly Gap[],
  { converter, end }: { converter: Converter; end: Cft },
): string[] {
  if (gaps.length === 0) return converter.toStation(0) !== null ? ["It saw the whole pipe."] : [];
  return gaps
    .toSorted((a, b) => a.fromCounter - b.fromCounter)
    .map((gap) => {
      const from = converter.toStation(gap.fromCounter)?.station ?? gap.fromCounter;
      const to = converter.toStation(gap.toCounter)?.station ?? gap.toCounter;
      const again = gap.toCounter < end ? "; it saw again from there" : "";
      return `It could not see from ${plainFeet(from)} to ${formatFeet(to)}: ${GAP_WORDS[gap.cause]}${again}.`;
    });
}
