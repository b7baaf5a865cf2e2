import type { Letter } from "./letter.ts";

/**
 * A letter as it was frozen when it was sent; null where what is kept is no letter: a page that shows
 * it says so and goes on, and nothing is signed by it.
 */
export function frozenLetter(frozen: string): Letter | null {
  try {
    const kept: unknown = JSON.parse(frozen);
    return isLetter(kept) ? kept : null;
  } catch {
    return null;
  }
}

/** Why nothing is printed, mailed or signed from it; what to do. */
export const UNREADABLE_LETTER =
  "The letter as it was sent can’t be read. Restore this line from a backup, or send the letter again as a new one";

function isLetter(kept: unknown): kept is Letter {
  if (typeof kept !== "object" || kept === null) return false;
  const texts = ["kind", "language", "date", "subject"].map((key) => Reflect.get(kept, key));
  return texts.every((text) => typeof text === "string") && isBlocks(Reflect.get(kept, "blocks"));
}

function isBlocks(blocks: unknown): boolean {
  return (
    Array.isArray(blocks) &&
    blocks.every((block) => typeof block === "object" && block !== null && "kind" in block)
  );
}
