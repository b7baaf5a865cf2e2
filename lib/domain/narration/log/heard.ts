import type { Fitting, Material } from "../../facts/line.ts";
import type { Degree, Fault, ObservationKind } from "../../facts/run.ts";
import type { Place } from "../footage/place.ts";
import type { Said } from "../meaning/said.ts";

/** One thing heard at one place, before repeated mentions are put together. */
export interface Heard {
  readonly mark: Said;
  readonly kind: ObservationKind | "main";
  readonly fault: Fault | null;
  readonly fitting: Fitting;
  readonly degree: Degree | null;
  readonly reduction: number | null;
  readonly waterDepth: number | null;
  readonly place: Place;
  readonly clock: number | null;
  readonly diameter: number | null;
  readonly material: Material;
  /** Of the pipe itself, upstream of here; else as the material. */
  readonly upstreamMaterial: Material;
  readonly hedges: readonly string[];
  readonly aboutRecord: string;
  readonly notes: readonly string[];
  /** First and last clause of its quote. */
  readonly clauses: readonly [from: number, to: number];
  /** Spoken of as known: `that wye`, `same one`. */
  readonly again: boolean;
  /** The mark that it names again, where that is plain. */
  readonly antecedent: number | null;
  /** Its own mark and those of the mentions put together with it. */
  readonly ats: readonly number[];
  /** Spoken of as another than the one before. */
  readonly another: boolean;
  /** `still roots`, `roots continue`: the stretch told before goes on to here. */
  readonly goesOn: boolean;
  /** Of what was said about the record: it gives no place of its own, and is said of the find beside it. */
  readonly beside: boolean;
}

/** The place of what nothing places. */
export const NOWHERE: Place = {
  counter: null,
  toCounter: null,
  fromMain: null,
  reading: "between",
  slack: 0,
  note: "",
  clause: null,
};

/** What nobody told of a row. */
export const BARE = {
  fault: null,
  fitting: "unknown",
  degree: null,
  reduction: null,
  waterDepth: null,
  clock: null,
  diameter: null,
  material: "unknown",
  upstreamMaterial: "unknown",
  hedges: [],
  aboutRecord: "",
  again: false,
  antecedent: null,
  ats: [],
  another: false,
  goesOn: false,
  beside: false,
} as const;

/** From the first to the last of some clauses. */
export function spanOf(clauses: readonly number[]): [number, number] {
  return [Math.min(...clauses), Math.max(...clauses)];
}
