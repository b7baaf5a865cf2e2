import { BUILT_WORDS, type BuiltPart } from "../closing/built-parts.ts";
import type { LineFile } from "../facts/line-file.ts";
import { MATERIAL_WORDS } from "../facts/line-words.ts";
import type { ScopeItem } from "../facts/scope.ts";
import type { Report, TieInFinding } from "../findings/report.ts";
import { type Cft, formatFeet, plainFeet } from "../length/station.ts";
import { drawStrip } from "./draw.ts";
import { drawPlans, type PlanView } from "./draw-plan.ts";
import type { StripBand, StripDrawing, StripMark, StripPipe } from "./drawing.ts";
import { pipeWords, sizeBands } from "./pipes.ts";
import type { Frame } from "./plan-scale.ts";

/** A stretch of what was built. */
type BuiltStretch = BuiltPart & { readonly from: Cft; readonly to: Cft };

function stretchesOf(parts: readonly BuiltPart[]): BuiltStretch[] {
  return parts.filter(
    (part): part is BuiltStretch => part.from !== null && part.to !== null && part.to > part.from,
  );
}

/**
 * The line as it was built: the pipe with the new pieces in it, the branches that are on it now, what
 * was built under it. What the camera found before the work is left out, and so is the permit record.
 */
export function drawBuilt(
  file: LineFile,
  report: Report,
  parts: readonly BuiltPart[],
): StripDrawing {
  const { extent, ticks, below, onPipe, pipes, bands, north } = drawStrip(file, report, "who");
  const places = onPipe.filter(({ kind }) => KEPT.has(kind));
  const laid = stretchesOf(parts).reduce(withPiece, pipes);
  return {
    extent,
    ticks,
    above: [],
    below: below.map((mark) => branchMark(mark, parts)),
    onPipe: [...places, ...pointMarks(parts)],
    joins: [],
    pipes: laid,
    bands: [
      ...sizeBands(laid),
      builtBand(parts),
      depthBand(parts),
      ...bands.filter(({ title }) => title === SERVED),
    ]
      .filter(({ cells }) => cells.length > 0)
      .map((band) => ({ ...band, cells: band.cells.map((cell) => ({ ...cell, loud: false })) })),
    title: `${file.line.name} as built: ${formatFeet(extent)} from the main connection upstream`,
    north: north
      ? { ...north, note: "Branches are drawn below the pipe, whatever their side." }
      : null,
  };
}

const KEPT: ReadonlySet<StripMark["kind"]> = new Set(["main", "point", "upper-end"]);
const SERVED = "Flow of";

/** What was done to a branch stands in its mark; where it was measured, there it is. */
function branchMark(mark: StripMark, parts: readonly BuiltPart[]): StripMark {
  const done = parts.findLast(({ tieInId }) => tieInId === mark.id);
  if (done === undefined) return { ...mark, loud: false };
  const what = BUILT_WORDS[done.kind];
  const station = done.from ?? mark.station;
  return {
    ...mark,
    station,
    whisker: done.from === null ? mark.whisker : 0,
    detail: done.kind === "capped" ? what : `${what}, ${mark.detail}`,
    brief: what,
    loud: false,
    sentence: `${mark.label} at ${formatFeet(station)}, ${what}.`,
  };
}

/** What was built at a point of the trunk. */
function pointMarks(parts: readonly BuiltPart[]): StripMark[] {
  return parts.flatMap(({ id, kind, tieInId, from, to }) => {
    if (tieInId !== null || from === null || (to !== null && to > from)) return [];
    const label = POINTS[kind] ?? BUILT_WORDS[kind];
    return [
      {
        id: `built-${id}`,
        kind: "point",
        station: from,
        toStation: null,
        whisker: 0,
        side: "unknown",
        label,
        detail: formatFeet(from),
        loud: false,
        sentence: `${label} at ${formatFeet(from)}.`,
      } satisfies StripMark,
    ];
  });
}

const POINTS: Partial<Record<BuiltPart["kind"], string>> = { cleanout: "new cleanout" };

/** The pipe with a new piece in the place of what lay there; what is not said of it stays open. */
function withPiece(pipes: readonly StripPipe[], piece: BuiltStretch): StripPipe[] {
  const { from, to, material, diameter } = piece;
  if (!LAID.has(piece.kind)) return [...pipes];
  const kept = pipes.flatMap((pipe) => [
    ...(pipe.from < from ? [{ ...pipe, to: Math.min(pipe.to, from) }] : []),
    ...(pipe.to > to ? [{ ...pipe, from: Math.max(pipe.from, to) }] : []),
  ]);
  const laid = { from, to, material, words: pipeWords(MATERIAL_WORDS[material], diameter) };
  return [...kept, laid].toSorted((a, b) => a.from - b.from);
}

/** Work after which another pipe lies there. */
const LAID: ReadonlySet<BuiltPart["kind"]> = new Set(["replaced", "lined", "burst", "repaired"]);

/** `6 in PVC, replaced 14.0–22.0 ft` */
function builtBand(parts: readonly BuiltPart[]): StripBand {
  const cells = stretchesOf(parts).map(({ id, kind, from, to }) => ({
    from,
    to,
    words: `${BUILT_WORDS[kind]} ${plainFeet(from)} to ${formatFeet(to)}`,
    brief: BUILT_WORDS[kind],
    loud: false,
    hatch: kind === "lined" ? ("sparse" as const) : ("dense" as const),
    id,
  }));
  return { title: "As built", cells };
}

/** Depth to the invert, where somebody measured it. */
function depthBand(parts: readonly BuiltPart[]): StripBand {
  const cells = stretchesOf(parts).flatMap((part) => {
    const words = depthWords(part);
    if (words === "") return [];
    const { id, from, to } = part;
    return [
      {
        from,
        to,
        words: `${words} ft deep`,
        brief: words,
        loud: false,
        hatch: "none" as const,
        id,
      },
    ];
  });
  return { title: "Invert", cells };
}

/** `7.0 to 9.0`, in feet from the surface to the invert; empty where it was not measured. */
export function depthWords({
  depthFrom,
  depthTo,
}: Pick<BuiltPart, "depthFrom" | "depthTo">): string {
  const known = [depthFrom, depthTo].filter((depth) => depth !== null);
  return [...new Set(known.map(plainFeet))].join(" to ");
}

/**
 * The plan view with what was built in the place of what was priced; nothing while no bearing is entered.
 */
export function planBuilt(
  file: LineFile,
  report: Report,
  {
    parts,
    ...paper
  }: {
    readonly parts: readonly BuiltPart[];
    readonly frame: Frame;
    readonly allowed: readonly number[];
  },
): PlanView[] {
  const built = parts.flatMap(({ id, kind, tieInId, from, to }): PlanWork[] =>
    from === null || tieInId !== null
      ? []
      : [
          {
            id,
            title: BUILT_WORDS[kind],
            place: to === null || to === from ? "point" : "stretch",
            from,
            to,
          },
        ],
  );
  const tieIns = report.tieIns.map((finding) => asBuiltTieIn(finding, parts));
  return drawPlans({ ...file, work: built }, { ...report, tieIns }, paper);
}

type PlanWork = Pick<ScopeItem, "id" | "title" | "place" | "from" | "to">;

function asBuiltTieIn(finding: TieInFinding, parts: readonly BuiltPart[]): TieInFinding {
  const done = parts.findLast(({ tieInId }) => tieInId === finding.tieIn.id);
  if (done === undefined) return finding;
  const station = done.from ?? finding.station;
  return done.kind === "capped"
    ? { ...finding, station, live: false, standing: "inactive" }
    : { ...finding, station };
}
