import type { TableSource } from "../facts/plumbing-code.ts";

/*
 * Manning's formula in US units: V = (1.486 / n) R^(2/3) S^(1/2) in ft/s. Some texts write 1.49,
 * which gives 0.27 % more. Flow in a circular pipe by the segment of the circle that is wet.
 */
const US_FACTOR = 1.486;
const GALLONS_PER_MINUTE = 448.831;

/** Manning's n, from the smoothest to the roughest that is usual. */
interface Roughness {
  readonly low: number;
  readonly high: number;
}

/**
 * The usual range of Manning's n in sewers: ASCE Manual of Practice 60 (1982), table of closed
 * conduits, as EPA's SWMM user's manual reprints it (appendix A.7, read in a public copy). The table
 * gives 0.011 to 0.015 for asbestos-cement, lined cast iron, concrete, smooth plastic and vitrified
 * clay alike; what it does not list (bituminous fiber, liners) is taken for the same.
 */
export const SEWER_ROUGHNESS: Roughness = { low: 0.011, high: 0.015 };

export const ROUGHNESS_SOURCE: TableSource = {
  title: "Manning’s n in sewers",
  edition: "0.011 to 0.015 for clay, concrete, asbestos-cement, lined cast iron and smooth plastic",
  source: "ASCE Manual of Practice 60 (1982), as reprinted in EPA’s SWMM user’s manual",
};

export interface PipeFlow {
  /** Feet per second. */
  readonly velocity: number;
  /** Cubic feet per second. */
  readonly cfs: number;
  /** US gallons per minute. */
  readonly gpm: number;
}

export interface HydraulicPipe {
  /** Inside diameter in inches. */
  readonly diameter: number;
  /** Feet of fall per foot. */
  readonly slope: number;
  /** Manning's n. */
  readonly roughness: number;
}

/** Flow of a pipe that runs just full. Throws on sizes, slopes or roughness that are not above zero. */
export function fullFlow({ diameter, slope, roughness }: HydraulicPipe): PipeFlow {
  if (!(diameter > 0 && slope > 0 && roughness > 0)) {
    throw new RangeError(
      `Cannot compute the flow: diameter, slope and roughness must be > 0, got ${diameter}, ${slope}, ${roughness}`,
    );
  }
  const feet = diameter / 12;
  const velocity = (US_FACTOR / roughness) * (feet / 4) ** (2 / 3) * Math.sqrt(slope);
  const cfs = velocity * (Math.PI / 4) * feet * feet;
  return { velocity, cfs, gpm: cfs * GALLONS_PER_MINUTE };
}

/** Ratios to the full pipe at a depth of water, `n` taken as the same at every depth. */
export interface PartFull {
  readonly area: number;
  readonly radius: number;
  readonly velocity: number;
  readonly flow: number;
}

/** The ratios at a depth over diameter from 0 to 1; outside of that it is taken to the nearer end. */
export function partFull(depth: number): PartFull {
  const ratio = Math.min(Math.max(depth, 0), 1);
  if (ratio === 0) return { area: 0, radius: 0, velocity: 0, flow: 0 };
  const angle = 2 * Math.acos(1 - 2 * ratio);
  const area = (angle - Math.sin(angle)) / (2 * Math.PI);
  const radius = 1 - Math.sin(angle) / angle;
  const velocity = radius ** (2 / 3);
  return { area, radius, velocity, flow: area * velocity };
}

/** Flow at a depth of water over diameter. */
export function partFullFlow(pipe: HydraulicPipe, depth: number): PipeFlow {
  const full = fullFlow(pipe);
  const part = partFull(depth);
  return {
    velocity: full.velocity * part.velocity,
    cfs: full.cfs * part.flow,
    gpm: full.gpm * part.flow,
  };
}

/**
 * Part of the cross-section that is left, from 0 to 1, where deposit or an intruding tie-in fills
 * the pipe (inches) to a height (inches) from one side.
 */
export function sectionLeft(diameter: number, blocked: number): number {
  return 1 - partFull(blocked / diameter).area;
}
