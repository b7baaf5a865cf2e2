import type { PairingState } from "#lib/domain/facts/pairing.ts";
import { reportOn } from "#lib/domain/report/report-on.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { changeLine } from "./change.ts";
import { decidedOf, decidePair, type Pair, writePairing } from "./pairing-row.ts";
import { changedSince } from "./seen.ts";

interface PairingWord extends Pair {
  readonly lineId: string;
  readonly state: PairingState;
  readonly reason: string;
  /** `seenOf(decidedOf(file, entryId))` as the form had it; not given: whatever was decided by now. */
  readonly seen?: string;
}

/**
 * A person's word that a record entry and a tie-in are the same thing, or are not. One entry is
 * accepted for one tie-in at most, and a tie-in for one entry of each record: several records may
 * show the same connection. What was decided of the same two before is replaced, and stays in the
 * history. Refuses without a reason, and where somebody decided on the entry since the form was opened.
 */
export function decidePairing(
  act: Act,
  { lineId, seen, ...word }: PairingWord,
): Result<{ pairingId: string }, Refusal> {
  const deal = { lineId, deed: "work-the-file", action: "decide-pairing" } as const;
  return changeLine(act, deal, (file) => {
    const now = decidedOf(file, word.entryId);
    const changed = changedSince(seen, { now, last: { by: now.at(-1)?.decidedBy ?? "" } });
    if (changed !== null) return changed;
    const decided = decidePair(act, file, { ...word, report: reportOn(file, act.today) });
    if (!decided.ok) return decided;
    const { pairing, old, words } = decided.value;
    return ok({
      value: { pairingId: pairing.id },
      sentence: `Decided that ${words}: ${pairing.reason}`,
      detail: { before: old, after: pairing },
      write: (db) => writePairing({ db }, lineId, pairing),
    });
  });
}
