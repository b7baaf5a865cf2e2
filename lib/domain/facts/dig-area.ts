import type { Cft } from "../length/station.ts";
import type { Day } from "../time/day.ts";

/** What is done with the surface afterwards. */
export const RESTORATIONS = [
  "not-set",
  /** Nothing is dug: the crew only walks in, looks and measures. */
  "nothing-dug",
  "backfill",
  "seed",
  "sod",
  "gravel",
  "asphalt",
  "concrete",
  "by-owner",
] as const;
export type Restoration = (typeof RESTORATIONS)[number];

/** One place on one lot where the crew means to enter or to dig, as its owner is asked for it. */
export interface DigArea {
  readonly id: string;
  readonly propertyId: string;
  /** Where on the lot: `back yard, along the alley fence`. */
  readonly place: string;
  /** About how long and wide; null where nothing is dug, or not yet known. */
  readonly length: Cft | null;
  readonly width: Cft | null;
  readonly firstOn: Day | null;
  readonly lastOn: Day | null;
  readonly restoration: Restoration;
  /** What is not put back or replaced, in words that print. */
  readonly notRestored: string;
  /** Whom the owner calls on the day, and the number. */
  readonly contact: string;
  readonly contactPhone: string;
  /** The office's own; prints nowhere. */
  readonly note: string;
}

/** What nobody entered yet of an area that is to be dug or entered, in words for the office. */
export function areaLacks(area: DigArea): string[] {
  const dug = area.restoration !== "nothing-dug";
  const wants: readonly [boolean, string][] = [
    [area.place.trim() !== "", "where it lies"],
    [!dug || (area.length !== null && area.width !== null), "how large it is"],
    [area.firstOn !== null && area.lastOn !== null, "its first and last day"],
    [area.restoration !== "not-set", "who puts the surface back and how"],
  ];
  return wants.flatMap(([there, words]) => (there ? [] : [words]));
}
