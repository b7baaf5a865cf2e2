import { type Cft, parseFeet } from "./station.ts";

/** A length that was given as about right, or as a range. */
export interface RoughFeet {
  readonly length: Cft;
  /** How far off it may be, either way. */
  readonly off: Cft;
}

/** What is said with `about`, and no more, may be a foot off. */
const ABOUT: Cft = 100;

const BEFORE = /^(?:about|around|approx(?:imately|\.)?|roughly|maybe|near|~|≈)\s*(.+)$/i;
const AFTER = /^(.+?)\s*(?:\?|-?ish|or so|\+\/-|±|approx\.?)$/i;
const PLUS_MINUS = /^(.+?)\s*(?:±|\+\/-|\+-|give or take|plus or minus)\s*(.+)$/i;
const RANGE =
  /^(?:between\s+|from\s+)?([\d.]+)\s*(?:ft|feet|')?\s*(?:-|–|—|to|and|or)\s*([\d.]+.*)$/i;

/**
 * Feet as someone types a reading that is not sure: `about 31`, `~31`, `31?`, `31 ± 2`, `31–33`.
 * Hundredths of a foot; null for a plain length, and for what is no length.
 */
export function parseRoughFeet(text: string): RoughFeet | null {
  const plain = text.trim();
  if (parseFeet(plain) !== null) return null;
  return ranged(plain) ?? spread(plain) ?? about(plain);
}

function ranged(text: string): RoughFeet | null {
  const [, one = "", other = ""] = RANGE.exec(text) ?? [];
  const from = parseFeet(one);
  const to = parseFeet(other);
  if (from === null || to === null || to <= from) return null;
  const length = Math.floor((from + to) / 2);
  return { length, off: to - length };
}

function spread(text: string): RoughFeet | null {
  const [, middle = "", either = ""] = PLUS_MINUS.exec(text) ?? [];
  const length = parseFeet(middle);
  const off = parseFeet(either);
  return length === null || off === null || off < 0 ? null : { length, off };
}

function about(text: string): RoughFeet | null {
  const [, said] = BEFORE.exec(text) ?? AFTER.exec(text) ?? [];
  const length = said === undefined ? null : parseFeet(said);
  return length === null ? null : { length, off: ABOUT };
}
