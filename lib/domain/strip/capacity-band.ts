import { LOAD_VERDICT_WORDS, percentOf, SLOPE_VERDICT_WORDS } from "../capacity/words.ts";
import type { ReachCapacity, SlopeFinding } from "../findings/capacity.ts";
import type { Report } from "../findings/report.ts";
import type { StripBand } from "./drawing.ts";

/** How tables and drawing name a stretch between two levels to each other. */
export function slopeId({ from }: Pick<SlopeFinding, "from">): string {
  return `slope:${from}`;
}

/** How tables and drawing name a stretch of one load to each other. */
export function loadId({ from }: Pick<ReachCapacity, "from">): string {
  return `load:${from}`;
}

const SLOPE = "Slope";
const LOAD = "Load";

/** Whether a band is one of the two here: on paper they have a sheet of their own. */
export function isOfCapacity({ title }: Pick<StripBand, "title">): boolean {
  return title === SLOPE || title === LOAD;
}

type Hatch = StripBand["cells"][number]["hatch"];

/** The slope from level to level: crossed where it fails, sparse where it cannot be told or is an average over standing water. */
export function slopeBand({ capacity }: Pick<Report, "capacity">): StripBand {
  const cells = capacity.slopes.map((found) => {
    const { from, to, slope, verdict } = found;
    const said = verdict === "nothing-to-test" ? "" : `, ${SLOPE_VERDICT_WORDS[verdict]}`;
    const bad = verdict === "too-flat" || verdict === "falls-back";
    return {
      from,
      to,
      words: `${percentOf(slope)}${said}`,
      brief: verdict === "average-only" ? `average ${percentOf(slope)}` : percentOf(slope),
      loud: false,
      hatch: hatchOf(bad, verdict === "cannot-be-told" || verdict === "average-only"),
      id: slopeId(found),
    };
  });
  return { title: SLOPE, cells };
}

/** The load in fixture units where any is counted. */
export function loadBand({ capacity }: Pick<Report, "capacity">): StripBand {
  const cells = capacity.reaches.flatMap((reach) => {
    const { from, to, load: found } = reach;
    if (found === null || found.verdict === "nothing-counted") return [];
    const { least, most } = found.load;
    const units = most === null ? `at least ${least} units` : unitsWords(least, most);
    return [
      {
        from,
        to,
        words: `${units}, ${LOAD_VERDICT_WORDS[found.verdict]}`,
        brief: most === null ? `${least}+` : String(most),
        loud: false,
        hatch: hatchOf(found.verdict === "too-much", found.verdict === "cannot-be-told"),
        id: loadId(reach),
      },
    ];
  });
  return { title: LOAD, cells };
}

function unitsWords(least: number, most: number): string {
  return least === most ? `${most} units` : `${least} to ${most} units`;
}

function hatchOf(fails: boolean, open: boolean): Hatch {
  if (fails) return "cross";
  return open ? "sparse" : "none";
}
