import type { Fitting, Material, Side } from "../facts/line.ts";
import { FITTING_WORDS, MATERIAL_WORDS, SIDE_WORDS } from "../facts/line-words.ts";
import type { Band } from "../facts/pairing.ts";
import type { Cft } from "../length/station.ts";
import { counterTolerance } from "../run/convert.ts";
import { sidesAgree, together } from "../run/sighting.ts";

/** What both a record entry and a tie-in say of themselves. */
interface Traits {
  readonly side: Side;
  /** Inches. */
  readonly diameter: number | null;
  readonly material: Material;
  readonly fitting: Fitting;
  /** Whose it is, where that is known. */
  readonly propertyId: string | null;
}

/** An entry on the line's axis, as its record has it. */
export interface RecordMark extends Traits {
  readonly entryId: string;
  readonly recordId: string;
  readonly station: Cft;
  /** How far off the record says its distance may be; 0 where it does not say. */
  readonly uncertainty: Cft;
  /** A person has said what became of it, so that nothing need answer to it. */
  readonly explained: boolean;
}

/** A tie-in that has a station. */
export interface SeenMark extends Traits {
  readonly tieInId: string;
  readonly label: string;
  readonly station: Cft;
  readonly uncertainty: Cft;
}

/** Beyond this, a person has to say why two things are one. */
export const LIKELY_LIMIT: Cft = 500;

/**
 * How far apart two readings of one thing may lie: for the record the larger of 1 ft, 0.5 % of the
 * station and what it says itself that it may be off, together with what the camera's station is
 * uncertain by.
 */
export function pairTolerance(
  { station, uncertainty }: Pick<SeenMark, "station" | "uncertainty">,
  entry: Pick<RecordMark, "uncertainty">,
): Cft {
  return together(Math.max(counterTolerance(station), entry.uncertainty), uncertainty);
}

/**
 * What speaks against one thing being the other, apart from distance: 0 for nothing. A wrong side
 * weighs most, since cards and cameras seldom err there; size, material and fitting may have been
 * changed since. Null: each is known to be another property's.
 */
export function mismatch(a: Traits, b: Traits): number | null {
  const sameOwner = a.propertyId !== null && a.propertyId === b.propertyId;
  if (a.propertyId !== null && b.propertyId !== null && !sameOwner) return null;
  const side = sideMismatch(a.side, b.side);
  const size = sizesAgree(a.diameter, b.diameter) ? 0 : 0.4;
  const material = wordsAgree(a.material, b.material) ? 0 : 0.2;
  const fitting = wordsAgree(a.fitting, b.fitting) ? 0 : 0.1;
  return side + size + material + fitting - (sameOwner ? 0.5 : 0);
}

function sideMismatch(a: Side, b: Side): number {
  if (!sidesAgree(a, b)) return 2;
  const crown = a !== b && (a === "crown" || b === "crown");
  return crown && a !== "unknown" && b !== "unknown" ? 0.3 : 0;
}

/** Within the tolerance and not on the other side: same. Up to 5 ft: likely. Beyond: conflict. */
export function bandOf(off: Cft, tolerance: Cft, sameSide: boolean): Band {
  if (off <= tolerance && sameSide) return "same";
  return off <= Math.max(LIKELY_LIMIT, tolerance) ? "likely" : "conflict";
}

/** The likeness of two things in short sentences, one each for what both sides tell. */
export function likenessReasons(entry: Traits, tieIn: Traits): string[] {
  return [
    ...reason("side", SIDE_WORDS[entry.side], SIDE_WORDS[tieIn.side]),
    ...reason("size", sizeWords(entry.diameter), sizeWords(tieIn.diameter)),
    ...reason("material", MATERIAL_WORDS[entry.material], MATERIAL_WORDS[tieIn.material]),
    ...reason("fitting", FITTING_WORDS[entry.fitting], FITTING_WORDS[tieIn.fitting]),
    ...(entry.propertyId !== null && entry.propertyId === tieIn.propertyId
      ? ["The record names the property this tie-in is settled as."]
      : []),
  ];
}

function sizesAgree(a: number | null, b: number | null): boolean {
  return a === null || b === null || Math.abs(a - b) < 0.75;
}

function wordsAgree(a: Material | Fitting, b: Material | Fitting): boolean {
  return a === b || a === "unknown" || b === "unknown";
}

function sizeWords(diameter: number | null): string {
  return diameter === null ? "unknown" : `${diameter} in`;
}

function reason(what: string, recorded: string, seen: string): string[] {
  if (recorded === "unknown" || seen === "unknown") return [];
  if (recorded === seen) return [`Same ${what}: ${seen}.`];
  return [`The ${what} differs: ${recorded} on the record, ${seen} seen.`];
}
