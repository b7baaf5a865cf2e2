import type { Report } from "#lib/domain/findings/report.ts";
import { type Deed, heldWords, holdsAgainst } from "#lib/domain/stops/stopped-by.ts";
import { refuse } from "./change.ts";

/** Refuses what a hold stops that nobody waived, with the hold, what lifts it and where; null: go on. */
export function refuseHeld(
  { holds }: Pick<Report, "holds">,
  deeds: readonly Deed[],
  path: string,
): ReturnType<typeof refuse> | null {
  const held = holdsAgainst(holds, deeds);
  return held.length === 0 ? null : refuse("held", path, heldWords(held, deeds));
}
