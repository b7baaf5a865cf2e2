import type { LedgerEntry } from "#lib/domain/facts/ledger-entry.ts";
import { nextNumber } from "#lib/domain/ledger/balance.ts";
import type { Act } from "./act.ts";

/** What of an entry is decided; the rest is its number, who enters it, and nothing. */
type NewEntry = Pick<LedgerEntry, "kind" | "partyId" | "propertyId" | "amount" | "on"> &
  Partial<LedgerEntry>;

/** The next entries of the money book, numbered without a gap. Call inside the transaction. */
export function ledgerRows(
  act: Act,
  ledger: readonly LedgerEntry[],
  entries: readonly NewEntry[],
): LedgerEntry[] {
  const first = nextNumber(ledger);
  return entries.map((entry, at) => ({
    dueOn: null,
    splitId: null,
    reversesId: null,
    method: null,
    reference: "",
    uploadId: null,
    note: "",
    ...entry,
    id: act.newId(),
    number: first + at,
    enteredBy: act.actor.name,
    enteredAt: act.now,
  }));
}
