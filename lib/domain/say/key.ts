/** Sixteen hexadecimal digits that are the same for the same text: FNV-1a, twice. */
export function keyOf(text: string): string {
  return half(text, 0x811c9dc5) + half(`${text} `, 0x01000193);
}

function half(text: string, start: number): string {
  let hash = start;
  for (const letter of text) {
    hash ^= letter.codePointAt(0) ?? 0;
    hash = Math.imul(hash, 0x01000193);
  }
  return (hash >>> 0).toString(16).padStart(8, "0");
}
