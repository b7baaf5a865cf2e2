import type { Spot, TieSide } from "../facts/plan.ts";
import type { Cft } from "../length/station.ts";

/**
 * The triangle of two fixed points and a point that was taped from both. `short`: the two tapes do not
 * reach one another; `long`: one reaches past the other, by so much (hundredths of a foot).
 */
export type Triangle =
  | {
      readonly state: "closes";
      readonly along: number;
      readonly off: number;
      readonly loose: number;
    }
  | { readonly state: "short" | "long"; readonly by: Cft }
  | { readonly state: "same-place" };

/** How far two tapes and a distance between fixed points may be off together before it counts: 0.3 ft. */
const TAPE = 30;

/**
 * Where the third corner lies: `along` the way from the first fixed point to the second, and `off`
 * it, both in hundredths of a foot (law of cosines). `loose` is how many feet the corner moves for a
 * foot of error on a tape: 1 where the tapes cross square, more the flatter they meet. What misses by
 * no more than tapes may be off closes flat.
 */
export function triangleOf(first: Cft, second: Cft, apart: Cft): Triangle {
  if (apart <= 0) return { state: "same-place" };
  const short = apart - (first + second);
  if (short > TAPE) return { state: "short", by: short };
  const long = Math.abs(first - second) - apart;
  if (long > TAPE) return { state: "long", by: long };
  const along = (first * first - second * second + apart * apart) / (2 * apart);
  const off = Math.sqrt(Math.max(0, first * first - along * along));
  // The sine of the angle at which the tapes meet, by twice the triangle's area.
  const sine = first === 0 || second === 0 ? 1 : (off * apart) / (first * second);
  return { state: "closes", along, off, loose: sine === 0 ? Number.POSITIVE_INFINITY : 1 / sine };
}

/** The two corners that close a triangle over two fixed points; left and right as one faces the second. */
export function cornersOver(
  { along, off }: { readonly along: number; readonly off: number },
  [one, other]: readonly [Spot, Spot],
): Record<Exclude<TieSide, "unknown">, Spot> {
  const apart = Math.hypot(other.east - one.east, other.north - one.north);
  const [east, north] = [(other.east - one.east) / apart, (other.north - one.north) / apart];
  const foot = { east: one.east + along * east, north: one.north + along * north };
  return {
    left: { east: foot.east - off * north, north: foot.north + off * east },
    right: { east: foot.east + off * north, north: foot.north - off * east },
  };
}
