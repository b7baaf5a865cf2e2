import type { ReachCapacity } from "../capacity/capacity.ts";
import { loadWords } from "../capacity/load.ts";
import { LOAD_VERDICT_WORDS, percentOf, SLOPE_VERDICT_WORDS } from "../capacity/words.ts";
import type { Report } from "../file/report.ts";
import type { StripBand } from "./drawing.ts";

/** How tables and drawing name a stretch of one slope and one load to each other. */
export function capacityId({ from }: Pick<ReachCapacity, "from">): string {
  return `capacity:${from}`;
}

/** Slope and load, only where one of them is known. */
export function capacityBand({ capacity }: Pick<Report, "capacity">): StripBand {
  const cells = capacity.reaches.flatMap((reach) => {
    const parts = [slopeWords(reach), loadCellWords(reach)].filter((words) => words !== "");
    const [first] = parts;
    if (first === undefined) return [];
    return [
      {
        from: reach.from,
        to: reach.to,
        words: parts.join("; "),
        brief: reach.slope === null ? briefLoad(reach) : percentOf(reach.slope.slope),
        loud: false,
        hatch: hatchOf(reach),
        id: capacityId(reach),
      },
    ];
  });
  return { title: "Slope, load", cells };
}

function slopeWords({ slope }: ReachCapacity): string {
  if (slope === null) return "";
  const verdict =
    slope.verdict === "nothing-to-test" ? "" : `, ${SLOPE_VERDICT_WORDS[slope.verdict]}`;
  return `${percentOf(slope.slope)}${verdict}`;
}

function loadCellWords({ load }: ReachCapacity): string {
  if (load === null || load.verdict === "nothing-counted") return "";
  return `${loadWords(load.load)}, ${LOAD_VERDICT_WORDS[load.verdict]}`;
}

function briefLoad({ load }: ReachCapacity): string {
  if (load === null) return "";
  return load.load.most === null ? `${load.load.least}+` : `${load.load.most}`;
}

/** Crossed where a slope or a load fails, sparse where it cannot be told. */
function hatchOf({ slope, load }: ReachCapacity): StripBand["cells"][number]["hatch"] {
  const verdicts: (string | undefined)[] = [slope?.verdict, load?.verdict];
  if (["falls-back", "too-flat", "too-much"].some((bad) => verdicts.includes(bad))) return "cross";
  return verdicts.includes("cannot-be-told") ? "sparse" : "none";
}
