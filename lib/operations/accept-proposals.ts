import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { sureProposals } from "#lib/domain/report/pairs-now.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import type { Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { changeLine, refuse } from "./change.ts";
import { acceptPairs, type Pair } from "./pairing-row.ts";

/**
 * Accepts the proposals that a person looked over, in one go and in their name: all of them, or none.
 * Refuses if one of them is no longer proposed as sure (in the same place, and without a rival),
 * because then the file is not the one that was looked at.
 */
export function acceptProposals(
  act: Act,
  {
    lineId,
    pairs,
    reason,
  }: { readonly lineId: string; readonly pairs: readonly Pair[]; readonly reason: string },
): Result<{ count: number }, Refusal> {
  const deal = { lineId, deed: "work-the-file", action: "accept-proposals" } as const;
  return changeLine(act, deal, (file) => {
    const sure = sureProposals(reportOn(file, act.today));
    const gone = pairs.find(
      (pair) =>
        !sure.some(({ entryId, tieInId }) => entryId === pair.entryId && tieInId === pair.tieInId),
    );
    if (pairs.length === 0 || gone !== undefined)
      return refuse("not-in-this-state", "", goneWords(file, gone));
    return acceptPairs(act, file, { pairs, reason });
  });
}

function goneWords(file: LineFile, pair: Pair | undefined): string {
  const entry = file.entries.find(({ id }) => id === pair?.entryId)?.label || "an entry";
  const tieIn = file.tieIns.find(({ id }) => id === pair?.tieInId)?.label || "its tie-in";
  const what = pair === undefined ? "nothing is" : `${entry} and ${tieIn} are no longer`;
  return `${what} proposed as the same place since you looked; none was accepted. Look over them again`;
}
