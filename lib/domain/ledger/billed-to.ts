import type { LedgerEntry } from "../facts/ledger-entry.ts";
import type { LineFile } from "../facts/line-file.ts";
import type { Party } from "../facts/party.ts";
import { signersFor } from "../party/signers.ts";
import { standingEntries } from "./balance.ts";

type Books = Pick<LineFile, "ledger" | "roles" | "parties">;

/**
 * To whom an invoice is addressed: its own party, and with it every other title holder of the
 * property where nobody else there was ever invoiced. Names, the billed party's first.
 */
export function billedTo(
  file: Books,
  account: Pick<LedgerEntry, "partyId" | "propertyId">,
): string[] {
  return billedParties(file, account).map(({ name }) => name);
}

/** Those whom `billedTo` names. */
export function billedParties(
  file: Books,
  { partyId, propertyId }: Pick<LedgerEntry, "partyId" | "propertyId">,
): Party[] {
  const holders = isJoint(file, { partyId, propertyId }) ? signersFor(file, propertyId) : [];
  const ids = new Set([partyId, ...holders.map((holder) => holder.partyId)]);
  return [...ids].flatMap((id) => file.parties.find((party) => party.id === id) ?? []);
}

/** Whether an account stands for all title holders of its property together. */
export function isJoint(
  file: Books,
  { partyId, propertyId }: Pick<LedgerEntry, "partyId" | "propertyId">,
): boolean {
  const holders = signersFor(file, propertyId);
  if (!holders.some((holder) => holder.partyId === partyId)) return false;
  const invoiced = standingEntries(file.ledger).filter(
    (entry) => entry.kind === "invoice" && entry.propertyId === propertyId,
  );
  return invoiced.length > 0 && invoiced.every((entry) => entry.partyId === partyId);
}
