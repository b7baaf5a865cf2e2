/**
 * Lengths and stations are whole hundredths of a foot, so that sums are exact.
 * A station is measured along the pipe from the main connection (0) and rises upstream.
 */
export type Cft = number;

/** `2600` → `26.0 ft`; `2605` → `26.05 ft`. */
export function formatFeet(length: Cft): string {
  return `${plainFeet(length)} ft`;
}

/** `2600` → `0+26.0`, as written on drawings. */
export function formatDrawingStation(station: Cft): string {
  const sign = station < 0 ? "-" : "";
  const size = Math.abs(station);
  const hundreds = Math.floor(size / 10_000);
  const [whole = "0", decimals = "0"] = plainFeet(size % 10_000).split(".");
  return `${sign}${hundreds}+${whole.padStart(2, "0")}.${decimals}`;
}

/** `2600` → `26.0`; always one decimal, two where the hundredth is not zero. */
export function plainFeet(length: Cft): string {
  const size = Math.abs(length);
  const text = size % 10 === 0 ? (size / 100).toFixed(1) : (size / 100).toFixed(2);
  return length < 0 ? `-${text}` : text;
}

/** `20.4 ± 1.0`; `20.4` where nothing is known of how far off it may be. */
export function feetWithin(at: Cft, off: Cft | null): string {
  return off === null ? plainFeet(at) : `${plainFeet(at)} ± ${plainFeet(off)}`;
}

/** To the nearest tenth of a foot: what is computed is never finer than a counter can be read. */
export function toTenth(length: Cft): Cft {
  return Math.round(length / 10) * 10 + 0;
}

/** To the nearest tenth of a foot that does not lie past either of two lengths, else the nearer of them. */
export function toTenthBetween(length: Cft, ends: readonly Cft[]): Cft {
  return Math.min(Math.max(toTenth(length), Math.min(...ends)), Math.max(...ends));
}

/** Feet as typed (`26`, `26.05`, `26 ft`, `0+26.0`) → hundredths, or null if it is not a length. */
export function parseFeet(text: string): Cft | null {
  const plain = text
    .trim()
    .toLowerCase()
    .replace(/\s*(ft|feet|foot|')\.?$/, "");
  const drawn = /^(\d+)\+(\d{1,2}(?:\.\d{1,2})?)$/.exec(plain);
  if (drawn) return Number(drawn[1]) * 10_000 + Math.round(Number(drawn[2]) * 100);
  if (!/^-?(\d+(\.\d*)?|\.\d+)$/.test(plain)) return null;
  const length = Math.round(Number(plain) * 100);
  return Number.isSafeInteger(length) ? length : null;
}
