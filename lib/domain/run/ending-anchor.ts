import type { Anchor, Run } from "../facts/run.ts";

/**
 * The known point that a run ends at: one that counts from its way in and reached the main has the
 * main, station 0, at its last reading. Null where it ended elsewhere, or nothing was read there.
 */
export function endingAnchor(run: Run): Omit<Anchor, "id"> | null {
  const { looks, measuredFrom, ended, toCounter } = run;
  if (looks !== "downstream" || measuredFrom !== "access") return null;
  if (ended !== "reached-main" || toCounter === null) return null;
  const place = { kind: "main-connection", counter: toCounter, station: 0 } as const;
  return { runId: run.id, ...place, note: "Where the run ended" };
}
