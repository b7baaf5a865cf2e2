import { pairsNow } from "#lib/domain/report/pairs-now.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import type { Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { changeLine, refuse } from "./change.ts";
import { acceptPairs } from "./pairing-row.ts";

/**
 * Accepts the pairs in which another way to pair differs from what stands, where both line up alike:
 * all of them, or none. Refuses a way that the file no longer offers.
 */
export function acceptWay(
  act: Act,
  {
    lineId,
    key,
    reason,
  }: { readonly lineId: string; readonly key: string; readonly reason: string },
): Result<{ count: number }, Refusal> {
  const deal = { lineId, deed: "work-the-file", action: "accept-way" } as const;
  return changeLine(act, deal, (file) => {
    const report = reportOn(file, act.today);
    const way = report.alternatives.find((each) => each.key === key);
    if (way === undefined)
      return refuse("not-in-this-state", "", "The file has changed; review the options again");
    const now = new Set(pairsNow(file, report).map((pair) => `${pair.entryId} ${pair.tieInId}`));
    const pairs = way.pairs.filter((each) => !now.has(`${each.entryId} ${each.tieInId}`));
    return acceptPairs(act, file, { pairs, reason });
  });
}
