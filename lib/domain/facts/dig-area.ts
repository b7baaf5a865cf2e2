import { day, feet, late, maybe, oneOf, type RowOf, ref, row, usually, words } from "./field.ts";

/** What is done with the surface afterwards. */
const RESTORATIONS = [
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

/** What happens to trees and plantings in the area. */
const PLANTINGS = [
  "not-set",
  /** There are none. */
  "none",
  "stay",
  "replanted",
  /** They are taken out for good. */
  "removed",
] as const;
export type Plantings = (typeof PLANTINGS)[number];

/** One place on one lot where the crew means to enter or to dig, as its owner is asked for it. */
export type DigArea = RowOf<typeof DIG_AREA>;

export const DIG_AREA = row({
  one: "area to dig",
  saved: "office",
  fields: {
    propertyId: ref("properties"),
    /** Where on the lot: `back yard, along the alley fence`. */
    place: words,
    /** About how long and wide; null where nothing is dug, or not yet known. */
    length: maybe(feet),
    width: maybe(feet),
    firstOn: maybe(day),
    lastOn: maybe(day),
    restoration: usually(oneOf(RESTORATIONS), "not-set"),
    /** What is not put back or replaced, in words that print. */
    notRestored: words,
    plantings: late(usually(oneOf(PLANTINGS), "not-set")),
    /** Which trees and plantings, in words that print. */
    plants: late(words),
    /** Whom the owner calls on the day, and the number. */
    contact: words,
    contactPhone: words,
    /** The office's own; prints nowhere. */
    note: words,
  },
});

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

/** What nobody entered yet of the trees and plantings where something is dug. */
export function plantingLacks({ restoration, plantings, plants }: DigArea): string[] {
  if (restoration === "nothing-dug") return [];
  if (plantings === "not-set") return ["what happens to trees and plantings"];
  const goesOut = plantings === "replanted" || plantings === "removed";
  return goesOut && plants.trim() === "" ? ["which trees and plantings are taken out"] : [];
}
