import type { Cft } from "../length/station.ts";
import type { Day } from "../time/day.ts";
import type { Fitting, Material, Side } from "./line.ts";

export const RECORD_KINDS = ["card", "drawing", "permit", "as-built", "other"] as const;
export type RecordKind = (typeof RECORD_KINDS)[number];

export const MEASURED_FROM = ["main", "upper-end", "unknown"] as const;
export type MeasuredFrom = (typeof MEASURED_FROM)[number];

/** A card, drawing or permit that the authority keeps. */
export interface PermitRecord {
  readonly id: string;
  readonly kind: RecordKind;
  readonly title: string;
  readonly number: string;
  /** As written on it; cards are often dated by year alone: `1958` or `1958-04-12`. */
  readonly dated: string;
  readonly measuredFrom: MeasuredFrom;
  /** Length of the line on the record, for stations measured from the upper end. */
  readonly length: Cft | null;
  readonly obtainedOn: Day | null;
  readonly uploadId: string | null;
  readonly note: string;
}

/** One connection that a record shows. */
export interface RecordEntry {
  readonly id: string;
  readonly recordId: string;
  /** As on the record: `House 14`. */
  readonly label: string;
  /** Distance on the record, in the record's own direction; null where it gives none. */
  readonly distance: Cft | null;
  readonly side: Side;
  /** Inches. */
  readonly diameter: number | null;
  readonly material: Material;
  readonly fitting: Fitting;
  readonly propertyId: string | null;
  /** Set when a person has explained an entry that no tie-in answers to. */
  readonly explanation: string;
  readonly explainedBy: string;
  readonly explainedOn: Day | null;
  readonly note: string;
}
