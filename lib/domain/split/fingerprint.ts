/** What JSON can say. */
export type Json =
  | string
  | number
  | boolean
  | null
  | readonly Json[]
  | { readonly [key: string]: Json };

/** A value as JSON whose keys come in order, so that equal values read the same. */
export function canonicalJson(value: Json): string {
  if (value === null || typeof value !== "object") return JSON.stringify(value);
  if (isList(value)) return `[${value.map(canonicalJson).join(",")}]`;
  const pairs = Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1));
  return `{${pairs.map(([key, each]) => `${JSON.stringify(key)}:${canonicalJson(each)}`).join(",")}}`;
}

function isList(value: object): value is readonly Json[] {
  return Array.isArray(value);
}

/**
 * FNV-1a, 64 bits, over the text's UTF-8 bytes, as 16 hexadecimal digits (Fowler, Noll & Vo). It
 * tells versions of the same facts apart; it is no proof against forgery.
 */
export function fingerprint(text: string): string {
  let [high, low] = [0xcbf29ce4, 0x84222325];
  for (const byte of new TextEncoder().encode(text)) {
    low = (low ^ byte) >>> 0;
    // Times the prime 2^40 + 0x1b3, in two halves of 32 bits.
    const lowProduct = low * 0x1b3;
    const carry = Math.floor(lowProduct / 2 ** 32);
    high = (Math.imul(high, 0x1b3) + carry + (low << 8)) >>> 0;
    low = lowProduct >>> 0;
  }
  return hex(high) + hex(low);
}

function hex(half: number): string {
  return half.toString(16).padStart(8, "0");
}
