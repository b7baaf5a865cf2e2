import { flowStretches, gallons, speeds } from "../capacity/flow.ts";
import { loadWords } from "../capacity/load.ts";
import { SLOPES } from "../capacity/slope.ts";
import { waterWords } from "../capacity/slopes.ts";
import { tableSources } from "../capacity/sources.ts";
import {
  CODE_WORDS,
  LOAD_VERDICT_WORDS,
  METHOD_WORDS,
  percentOf,
  SLOPE_VERDICT_WORDS,
} from "../capacity/words.ts";
import {
  type Capacity,
  NOT_A_DESIGN,
  type ReachCapacity,
  type SlopeFinding,
} from "../findings/capacity.ts";
import { type Cft, plainFeet } from "../length/station.ts";
import { heading, list, paragraph, table } from "../paper/common.ts";
import type { LetterBlock } from "../paper/letter.ts";
import { EN } from "../paper/words-en.ts";
import { isOfCapacity } from "../strip/capacity-band.ts";
import { drawStrip } from "../strip/draw.ts";
import type { Sheet } from "./packet.ts";
import type { PacketInput } from "./packet-input.ts";
import { composed } from "./sheets-job.ts";

/** Slope, load and flow with the tables that they rest on. */
export function capacitySheet(input: PacketInput): Sheet {
  const { capacity } = input.report;
  return composed("capacity", "Slope, load and flow", [
    notADesign(),
    ...list(capacity.wanting),
    ...stripBlocks(input),
    ...slopeBlocks(capacity),
    ...loadBlocks(capacity),
    ...flowBlocks(capacity),
    ...obstructionBlocks(capacity),
    ...sourceBlocks(capacity),
  ]);
}

function notADesign(): LetterBlock {
  return { kind: "caution", title: "Not a design", text: NOT_A_DESIGN };
}

/** Stands under each block of results. */
const AGAIN = paragraph("Not a design.");

function feet(length: Cft | null): string {
  return length === null ? "unknown" : plainFeet(length);
}

/** The pipe with its tie-ins above the two bands. */
function stripBlocks({ file, report }: PacketInput): LetterBlock[] {
  const { above: _, onPipe, bands, ...drawing } = drawStrip(file, report, "camera");
  const own = bands.filter(isOfCapacity);
  if (own.length === 0) return [];
  const ends = onPipe.filter(({ kind }) => kind === "main" || kind === "upper-end");
  return [
    {
      kind: "strip",
      drawing: { ...drawing, above: [], joins: [], onPipe: ends, bands: own, north: null },
      caption: "Slope and load, from the main upstream. Not a design.",
    },
  ];
}

function slopeBlocks({ levels, slopes }: Capacity): LetterBlock[] {
  if (levels.length === 0) return [];
  const rows = levels.map(({ station, ground, depth, invert, uncertainty, method, used }) => [
    plainFeet(station),
    feet(ground),
    feet(depth),
    feet(invert),
    plainFeet(uncertainty),
    used ? METHOD_WORDS[method] : `${METHOD_WORDS[method]}; not used for slope`,
  ]);
  return [
    heading("Levels"),
    ...table(["Station, ft", "Ground", "Depth", "Invert", "±", "Measured by"], rows, {
      numeric: [1, 2, 3, 4],
    }),
    ...list(levels.flatMap(({ caution }) => (caution === "" ? [] : [caution]))),
    ...(slopes.length === 0
      ? []
      : [
          heading("Slope between levels"),
          paragraph(
            "Both levels off by their most, in opposite directions; stations are taken as written.",
          ),
          ...slopeTable(slopes),
          ...list(
            slopes.flatMap(({ verdict, sentence }) =>
              verdict === "average-only" ? [sentence] : [],
            ),
          ),
          AGAIN,
        ]),
  ];
}

function slopeTable(slopes: readonly SlopeFinding[]): LetterBlock[] {
  const rows = slopes.map(({ from, to, fall, uncertainty, slope, low, high, against, verdict }) => [
    `${plainFeet(from)}–${plainFeet(to)}`,
    `${plainFeet(fall)} ± ${plainFeet(uncertainty)}`,
    percentOf(slope),
    `${percentOf(low)} to ${percentOf(high)}`,
    against === null ? "none selected" : SLOPES[against].words,
    SLOPE_VERDICT_WORDS[verdict],
  ]);
  return table(["Stations, ft", "Rise, ft", "Slope", "Range", "Minimum slope", "Result"], rows, {
    numeric: [1, 2, 3],
  });
}

function loadBlocks({ code, reaches }: Capacity): LetterBlock[] {
  if (code === null) return [];
  const loaded = reaches.flatMap((reach) =>
    reach.load === null || reach.load.verdict === "nothing-counted"
      ? []
      : [{ reach, found: reach.load }],
  );
  if (loaded.length === 0) return [];
  const rows = loaded.map(({ reach, found }) => [
    stretch(reach),
    size(reach),
    loadWords(found.load),
    limitWords(found.most, found.mostAtSteepest),
    found.assumed
      ? `${LOAD_VERDICT_WORDS[found.verdict]}, at the least slope`
      : LOAD_VERDICT_WORDS[found.verdict],
  ]);
  return [
    heading(`Load by the ${CODE_WORDS[code]}`),
    ...table(["Stations, ft", "Pipe", "Load", "Allowed", "Result"], rows),
    ...list(loaded.map(({ reach, found }) => `${stretch(reach)} ft: ${found.sentence}`)),
    AGAIN,
  ];
}

function limitWords(flattest: number | null, steepest: number | null): string {
  if (steepest === null) return "unknown";
  return flattest === steepest ? String(steepest) : `${flattest ?? "none"} to ${steepest}`;
}

function flowBlocks({ reaches, slopes }: Capacity): LetterBlock[] {
  const rows = flowStretches(reaches).map((reach) => [
    stretch(reach),
    size(reach),
    percentOf(reach.slope.slope),
    reach.flow.roughness.join(" to "),
    `${gallons(reach.flow.full)}, ${speeds(reach.flow.full)}`,
    `${gallons(reach.flow.half)}, ${speeds(reach.flow.half)}`,
    gallons(reach.flow.fullWithin),
  ]);
  const without = slopes
    .filter(({ water }) => water.length > 0)
    .map(
      (slope) =>
        `${stretch(slope)} ft: ${waterWords(slope.water)}; no flow is calculated for a dip.`,
    );
  if (rows.length === 0 && without.length === 0) return [];
  return [
    heading("What a clean pipe carries, by Manning’s formula"),
    ...table(
      ["Stations, ft", "Pipe", "Slope", "n", "Full", "Half full", "Full, slope uncertain"],
      rows,
    ),
    ...list(without),
    AGAIN,
  ];
}

function obstructionBlocks({ obstructions }: Capacity): LetterBlock[] {
  if (obstructions.length === 0) return [];
  return [
    heading("Remaining capacity with debris seen"),
    ...list(obstructions.map(({ sentence }) => sentence)),
    AGAIN,
  ];
}

function sourceBlocks({ code }: Capacity): LetterBlock[] {
  return [
    heading("Tables used"),
    ...list(
      tableSources(code).map(
        ({ title, edition, source }) =>
          `${title}: ${edition}. ${source}. The authority’s own edition decides.`,
      ),
    ),
  ];
}

function stretch({ from, to }: Pick<ReachCapacity, "from" | "to">): string {
  return `${plainFeet(from)}–${plainFeet(to)}`;
}

function size({ diameter, material }: ReachCapacity): string {
  return `${diameter === null ? "size unknown" : `${diameter} in`} ${EN.material[material]}`;
}
