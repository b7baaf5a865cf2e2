import type { Stretch } from "../length/stretch.ts";

/** Whose land lies over the pipe: what is dug there asks for that owner's consent or that office's permit. */
export const LAND_KINDS = ["lot", "right-of-way", "common-area", "unknown"] as const;
export type LandKind = (typeof LAND_KINDS)[number];

/** Whose land lies over one stretch of the trunk, and what shows it. */
export interface LandStretch extends Stretch {
  readonly id: string;
  readonly kind: LandKind;
  /** Of a lot or a common area: the property that it is. */
  readonly propertyId: string | null;
  /** A plat, a survey, a deed, a parcel map, somebody's word. */
  readonly shownBy: string;
  readonly note: string;
}
