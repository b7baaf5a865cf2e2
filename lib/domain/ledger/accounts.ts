import type { LedgerEntry } from "../facts/ledger-entry.ts";
import type { LineFile } from "../facts/line-file.ts";
import { signersFor } from "../party/signers.ts";
import {
  type Account,
  type AccountBalance,
  balanceOf,
  inNumberOrder,
  standingEntries,
} from "./balance.ts";
import { isJoint } from "./billed-to.ts";

type Books = Pick<LineFile, "ledger" | "roles" | "parties">;

/**
 * On which account a party's money at a property counts: where the property was invoiced to all of
 * its title holders together, that account is the one for each of them; else it is the party's own.
 * Entries keep who paid; this is read, never written.
 */
export function accountOf(file: Books, { partyId, propertyId }: Account): Account {
  const billed = standingEntries(file.ledger).find(
    (entry) => entry.kind === "invoice" && entry.propertyId === propertyId,
  );
  const own = { partyId, propertyId };
  if (billed === undefined || !isJoint(file, billed)) return own;
  const holds = signersFor(file, propertyId).some((holder) => holder.partyId === partyId);
  return holds ? { partyId: billed.partyId, propertyId } : own;
}

/** The entries that count on an account, by number. */
export function accountEntries(file: Books, account: Account): LedgerEntry[] {
  const asked = accountOf(file, account);
  return inNumberOrder(file.ledger).filter((entry) => isSame(accountOf(file, entry), asked));
}

/** Every account on which something stands, in the order of their first entry. */
export function accountsIn(file: Books): AccountBalance[] {
  const accounts = new Map<string, Account>();
  for (const entry of standingEntries(file.ledger)) {
    const { partyId, propertyId } = accountOf(file, entry);
    accounts.set(JSON.stringify([propertyId, partyId]), { propertyId, partyId });
  }
  return [...accounts.values()].map((account) => ({
    ...account,
    ...balanceOf(accountEntries(file, account)),
  }));
}

function isSame(one: Account, other: Account): boolean {
  return one.partyId === other.partyId && one.propertyId === other.propertyId;
}
