import { feet, maybe, oneOf, type RowOf, ref, row, usually, words } from "./field.ts";

/** Whose land lies over the pipe: what is dug there asks for that owner's consent or that office's permit. */
const LAND_KINDS = ["lot", "right-of-way", "common-area", "unknown"] as const;
export type LandKind = (typeof LAND_KINDS)[number];

/** Whose land lies over one stretch of the trunk, and what shows it. */
export type LandStretch = RowOf<typeof LAND_STRETCH>;

export const LAND_STRETCH = row({
  one: "section of land",
  saved: "office",
  fields: {
    from: feet,
    to: feet,
    kind: usually(oneOf(LAND_KINDS), "unknown"),
    /** Of a lot or a common area: the property that it is. */
    propertyId: maybe(ref("properties")),
    /** A plat, a survey, a deed, a parcel map, somebody's word. */
    shownBy: words,
    note: words,
  },
});
