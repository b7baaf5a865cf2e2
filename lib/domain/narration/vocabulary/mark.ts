import type { Material } from "../../facts/line.ts";
import type { Cft } from "../../length/station.ts";
import type { Turn } from "./talk.ts";
import type { Thing } from "./things.ts";

/** A distance as spoken. */
export interface Distance {
  /** `at`: a place; `extent`: a length from there on; `relative`: so far on from the last place. */
  readonly kind: "at" | "extent" | "relative";
  readonly from: Cft;
  /** End of a range; null for a point. */
  readonly to: Cft | null;
  /** What it was measured from. */
  readonly base: "counter" | "main";
  /** How far off it may be by the speaker's own words. */
  readonly slack: Cft;
  /** Said as a choice, `thirty-four or thirty-five`: a point somewhere between. */
  readonly choice: boolean;
  /** How much speaks for its being a distance, against the other numbers of the talk. */
  readonly weight: number;
}

/** What stretch of words means something, by their indexes. */
export interface Span {
  readonly from: number;
  readonly to: number;
}

export type Meaning =
  | { readonly what: "thing"; readonly thing: Thing }
  | { readonly what: "material"; readonly material: Material }
  | { readonly what: "turn"; readonly turn: Turn }
  | { readonly what: "distance"; readonly distance: Distance }
  | { readonly what: "clock"; readonly clock: number }
  | { readonly what: "diameter"; readonly inches: number }
  | { readonly what: "other"; readonly value: number; readonly why: string };

export type Mark = Span & Meaning;
