import { capital } from "./capital.ts";

/** `1 letter`, `3 letters`; the plural is the word with an s unless given. */
export function sayCount(count: number, one: string, many = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`;
}

/** All of so many: `both`, `all 6`. */
export function sayAll(count: number): string {
  return count === 2 ? "both" : `all ${count}`;
}

/** Is or are, has or have: the one word for one, the other for none and several. */
export function forCount(count: number, one: string, many: string): string {
  return count === 1 ? one : many;
}

/** Parts of a sentence with `; ` between, the first letter large; empty parts fall out. */
export function sayParts(parts: readonly string[]): string {
  const text = parts.filter((part) => part !== "").join("; ");
  return capital(text);
}
