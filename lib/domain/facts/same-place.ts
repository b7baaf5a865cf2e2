import type { RecordEntry } from "./record.ts";
import type { Observation, Run } from "./run.ts";

type EntryPlace = Pick<RecordEntry, "recordId" | "label" | "distance" | "side">;
type SeenPlace = Pick<Observation, "runId" | "kind" | "counter" | "clock">;

/**
 * Whether two entries of one record look like one connection written twice: the same distance, not
 * on different sides; without a distance, the same label.
 */
export function isSameEntry(a: EntryPlace, b: EntryPlace): boolean {
  if (a.recordId !== b.recordId || a.distance !== b.distance) return false;
  if (a.distance === null) return folded(a.label) === folded(b.label);
  return a.side === b.side || a.side === "unknown" || b.side === "unknown";
}

/** Whether two observations of one run look like one thing written twice: kind, counter and clock. */
export function isSameSeen(a: SeenPlace, b: SeenPlace): boolean {
  if (a.runId !== b.runId || a.kind !== b.kind || a.counter !== b.counter) return false;
  return a.clock === b.clock || a.clock === null || b.clock === null;
}

/** Whether two runs of a line go by one name. */
export function isSameRun(a: Pick<Run, "name">, b: Pick<Run, "name">): boolean {
  return folded(a.name) === folded(b.name);
}

function folded(text: string): string {
  return text.trim().toLowerCase();
}
