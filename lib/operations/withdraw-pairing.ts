import { removeRow } from "#db/queries/row.ts";
import { nameRow } from "#lib/domain/facts/references.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { changeLine, find, refuse } from "./change.ts";

interface Withdrawal {
  readonly lineId: string;
  readonly pairingId: string;
  readonly reason: string;
}

/** Takes a decision on a pairing back: the two are undecided again. Refuses without a reason. */
export function withdrawPairing(
  act: Act,
  { lineId, pairingId, reason }: Withdrawal,
): Result<null, Refusal> {
  const deal = { lineId, deed: "work-the-file", action: "withdraw-pairing" } as const;
  return changeLine(act, deal, (file) => {
    const pairing = find(file.pairings, pairingId, { path: "pairingId", what: "the decision" });
    if (!pairing.ok) return pairing;
    if (reason.trim() === "") return refuse("missing-value", "reason", "Say why");
    const entry = nameRow(file, "entries", pairing.value.entryId);
    const tieIn = nameRow(file, "tieIns", pairing.value.tieInId);
    return ok({
      value: null,
      sentence: `Undid the decision on ${entry} and ${tieIn}: ${reason.trim()}`,
      detail: { before: pairing.value, reason },
      write: (db) => void removeRow(db, "pairings", { lineId, id: pairingId }),
    });
  });
}
