import type { FlowFinding, FlowRange, ReachCapacity, SlopeFinding } from "../findings/capacity.ts";
import { type PipeFlow, partFullFlow, SEWER_ROUGHNESS } from "./manning.ts";
import { percentOf } from "./words.ts";

const NONE: PipeFlow = { velocity: 0, cfs: 0, gpm: 0 };

/**
 * What a clean pipe (inches) carries full and half full at a measured slope, over the usual n of
 * sewers. Null where the size is unknown, the pipe does not fall, or water stands in it: a dip has no
 * flow of its own.
 */
export function flowFinding(
  { diameter }: { readonly diameter: number | null },
  slope: SlopeFinding | null,
): FlowFinding | null {
  if (diameter === null || diameter <= 0 || slope === null || slope.slope <= 0) return null;
  if (slope.water.length > 0) return null;
  const { low, high } = SEWER_ROUGHNESS;
  const at = (fall: number, roughness: number, depth: number) =>
    fall <= 0 ? NONE : partFullFlow({ diameter, slope: fall, roughness }, depth);
  const range = (depth: number, flat: number, steep: number): FlowRange =>
    rangeOf(at(flat, high, depth), at(steep, low, depth));
  const full = range(1, slope.slope, slope.slope);
  const half = range(0.5, slope.slope, slope.slope);
  const fullWithin = range(1, slope.low, slope.high);
  const within =
    slope.uncertainty === 0
      ? ""
      : ` Within the uncertainty of the slope: ${gallons(fullWithin)} full.`;
  const sentence = `At ${percentOf(slope.slope)} with n from ${low} to ${high}, a clean pipe carries ${gallons(full)} full at ${speeds(full)}, and ${gallons(half)} half full at ${speeds(half)}.${within}`;
  return { roughness: [low, high], full, half, fullWithin, sentence };
}

/** The stretches that carry the same: tie-ins change the load, not what the pipe carries. */
export function flowStretches(
  reaches: readonly ReachCapacity[],
): (ReachCapacity & { readonly flow: FlowFinding; readonly slope: SlopeFinding })[] {
  const out: ReturnType<typeof flowStretches> = [];
  for (const reach of reaches) {
    const { flow, slope } = reach;
    if (flow === null || slope === null) continue;
    const last = out.at(-1);
    const same =
      last !== undefined &&
      last.to === reach.from &&
      last.slope === slope &&
      last.material === reach.material &&
      last.diameter === reach.diameter;
    if (same) out[out.length - 1] = { ...last, to: reach.to };
    else out.push({ ...reach, flow, slope });
  }
  return out;
}

function rangeOf(least: PipeFlow, most: PipeFlow): FlowRange {
  return { velocity: [least.velocity, most.velocity], gpm: [least.gpm, most.gpm] };
}

/** `223 to 304 gpm`: whole gallons are finer than n is known. */
export function gallons({ gpm: [least, most] }: FlowRange): string {
  return `${Math.round(least)} to ${Math.round(most)} gpm`;
}

/** `2.5 to 3.4 ft/s`. */
export function speeds({ velocity: [least, most] }: FlowRange): string {
  return `${least.toFixed(1)} to ${most.toFixed(1)} ft/s`;
}
