import type { Material } from "../facts/line.ts";
import type { Cft } from "../length/station.ts";

/** From here upwards the trunk is of this material and size; null or unknown: as below. */
export interface PipeChange {
  readonly station: Cft;
  readonly material: Material;
  /** Inches. */
  readonly diameter: number | null;
}

/** A stretch of the trunk in which nothing changes. */
export interface Reach {
  readonly from: Cft;
  readonly to: Cft;
  readonly material: Material;
  readonly diameter: number | null;
}

/**
 * Cuts the trunk from the main connection to `extent` wherever something changes: at `cuts`
 * (tie-ins, boundaries, cleanouts, ends of scope) and at changes of the pipe. Stations outside
 * the trunk cut nothing; the reaches cover it without gaps or overlaps.
 */
export function reachesOf(
  pipe: { readonly material: Material; readonly diameter: number | null },
  trunk: {
    readonly cuts: readonly Cft[];
    readonly changes: readonly PipeChange[];
    readonly extent: Cft;
  },
): Reach[] {
  const changes = [...trunk.changes].sort((a, b) => a.station - b.station);
  const stations = [0, ...trunk.cuts, ...changes.map((change) => change.station), trunk.extent];
  const ends = [...new Set(stations)]
    .filter((station) => station >= 0 && station <= trunk.extent)
    .sort((a, b) => a - b);
  let { material, diameter } = pipe;
  let next = 0;
  return ends.slice(1).map((to, index) => {
    const from = ends[index] ?? 0;
    for (let change = changes[next]; change && change.station <= from; change = changes[next]) {
      if (change.material !== "unknown") material = change.material;
      diameter = change.diameter ?? diameter;
      next += 1;
    }
    return { from, to, material, diameter };
  });
}
