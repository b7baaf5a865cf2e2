import type { RecordSaid } from "./draft.ts";

/** How words about the record stand in an entry's note. */
export function saidOfRecord({ aboutRecord }: Pick<RecordSaid, "aboutRecord">): string {
  return `from the narration: “${aboutRecord}”`;
}
