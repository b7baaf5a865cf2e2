import type { Draft } from "./draft.ts";

/** How words about the record stand in an entry's note. */
export function saidOfRecord({ aboutRecord }: Pick<Draft, "aboutRecord">): string {
  return `from the narration: “${aboutRecord}”`;
}
