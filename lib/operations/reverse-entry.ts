import { insertRow } from "#db/queries/row.ts";
import { undoProblem } from "#lib/domain/ledger/problems.ts";
import { ok, type Result } from "#lib/result.ts";
import type { Act, Refusal } from "./act.ts";
import { changeLine, find, refuse } from "./change.ts";
import { sayEntry } from "./enter-money.ts";
import { ledgerRows } from "./ledger-row.ts";

interface Reversing {
  readonly lineId: string;
  readonly entryId: string;
  readonly reason: string;
}

/**
 * Reverses one ledger entry whole, by one more entry that says why. Refuses what was reversed already,
 * and to reverse a reversal.
 */
export function reverseEntry(
  act: Act,
  { lineId, entryId, reason }: Reversing,
): Result<{ entryId: string; number: number }, Refusal> {
  const deal = { lineId, deed: "work-the-file", action: "reverse-entry" } as const;
  return changeLine(act, deal, (file) => {
    const undone = find(file.ledger, entryId, { path: "entryId", what: "the entry" });
    if (!undone.ok) return undone;
    if (reason.trim() === "") return refuse("missing-value", "reason", "Say why it is reversed");
    const { partyId, propertyId, amount } = undone.value;
    const [entry] = ledgerRows(act, file.ledger, [
      {
        kind: "reversal",
        partyId,
        propertyId,
        amount,
        on: act.today,
        reversesId: entryId,
        note: reason.trim(),
      },
    ]);
    if (entry === undefined) throw new Error("One entry was asked for and none was made");
    const problem = undoProblem(file.ledger, entry);
    if (problem !== null) return refuse("not-in-this-state", "entryId", problem.message);
    return ok({
      value: { entryId: entry.id, number: entry.number },
      sentence: `Reversed No. ${undone.value.number} with No. ${entry.number}, ${sayEntry(file, undone.value)}: ${entry.note}`,
      detail: { added: [entry] },
      write: (db) => insertRow(db, "ledger", { lineId, row: entry }),
    });
  });
}
