import type { Capacity, LevelFinding } from "#lib/domain/findings/capacity.ts";
import { multiplesIn, roundStep } from "#lib/domain/length/round-steps.ts";
import type { Cft } from "#lib/domain/length/station.ts";

/** Sizes of the long section, in units of the drawing. */
export const FRAME = { width: 760, height: 270, left: 58, right: 40, top: 26, bottom: 46 } as const;

interface SectionPoint {
  readonly station: Cft;
  readonly x: number;
  readonly invertY: number;
  /** Ends of the whisker: as high and as low as the invert may be. */
  readonly highY: number;
  readonly lowY: number;
  readonly groundY: number | null;
  /** Whether there is room for its station under the drawing. */
  readonly named: boolean;
}

/** Room that a figure takes. */
const FIGURE = 48;

export interface SectionShape {
  readonly points: readonly SectionPoint[];
  readonly slopes: readonly { readonly x: number; readonly y: number; readonly at: number }[];
  readonly ticks: readonly { readonly level: Cft; readonly y: number }[];
  /** How many times taller than long it is drawn. */
  readonly stretched: number;
}

/** The pipe from the side: stations across, levels up. Null with fewer than two inverts. */
export function sectionShape({ levels, slopes }: Capacity): SectionShape | null {
  const used = levels.flatMap((level) =>
    level.used && level.invert !== null ? [{ ...level, invert: level.invert }] : [],
  );
  const [first, last] = [used[0], used.at(-1)];
  if (first === undefined || last === undefined || used.length < 2) return null;
  const heights = used.flatMap(heightsOf);
  const lowest = Math.min(...heights);
  const span = Math.max(100, Math.max(...heights) - lowest);
  const across = FRAME.width - FRAME.left - FRAME.right;
  const up = FRAME.height - FRAME.top - FRAME.bottom;
  const x = (station: Cft) =>
    FRAME.left + ((station - first.station) / (last.station - first.station)) * across;
  const y = (level: Cft) => FRAME.top + (1 - (level - lowest) / span) * up;
  return {
    points: withNames(
      used.map(({ station, invert, uncertainty, ground }) => ({
        station,
        x: x(station),
        invertY: y(invert),
        highY: y(invert + uncertainty),
        lowY: y(invert - uncertainty),
        groundY: ground === null ? null : y(ground),
      })),
    ),
    slopes: slopes.flatMap(({ from, to }, at) => {
      if (x(to) - x(from) < FIGURE) return [];
      const ends = used.filter(({ station }) => station === from || station === to);
      const middle = ends.reduce((sum, { invert }) => sum + invert, 0) / Math.max(1, ends.length);
      return [{ x: x((from + to) / 2), y: y(middle), at }];
    }),
    ticks: multiplesIn(lowest, lowest + span, roundStep(Math.max(50, span / 6))).map((level) => ({
      level,
      y: y(level),
    })),
    stretched: Math.max(1, Math.round(up / span / (across / (last.station - first.station)))),
  };
}

/** Both ends are named, and between them every station that stands clear of the one before. */
function withNames(points: readonly Omit<SectionPoint, "named">[]): SectionPoint[] {
  const end = points.at(-1)?.x ?? 0;
  let before = Number.NEGATIVE_INFINITY;
  return points.map((point) => {
    const last = point.x === end;
    const named = last || (point.x - before >= FIGURE && end - point.x >= FIGURE);
    if (named) before = point.x;
    return { ...point, named };
  });
}

function heightsOf({ ground, invert, uncertainty }: LevelFinding): Cft[] {
  if (invert === null) return [];
  return [invert - uncertainty, invert + uncertainty, ...(ground === null ? [] : [ground])];
}
