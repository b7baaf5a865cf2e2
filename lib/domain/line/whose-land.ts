import type { LandStretch } from "../facts/land.ts";
import type { LineFile } from "../facts/line-file.ts";
import { type Stretch, withoutStretches } from "../length/stretch.ts";

type LandFile = Pick<LineFile, "land" | "crossings">;

/**
 * Whether it is said whose land a stretch is: a street, or a lot or common area of a property in the
 * file; and what shows it.
 */
export function isLandSaid({ kind, propertyId, shownBy }: Omit<LandStretch, "id">): boolean {
  if (shownBy.trim() === "" || kind === "unknown") return false;
  return kind === "right-of-way" || propertyId !== null;
}

/** Parts of a stretch over which nobody said whose land lies; a crossed lot is an answer. */
export function unsaidLand({ land, crossings }: LandFile, stretch: Stretch): Stretch[] {
  return withoutStretches(stretch, [...land.filter(isLandSaid), ...crossings]);
}

/** The stretches that lie below one property's lot or common area, entered as land or as crossed. */
export function landOf({ land, crossings }: LandFile, propertyId: string): Stretch[] {
  const own = land.filter((each) => each.kind !== "right-of-way" && each.kind !== "unknown");
  return [...own, ...crossings].filter((each) => each.propertyId === propertyId);
}
