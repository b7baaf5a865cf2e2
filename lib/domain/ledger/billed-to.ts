import type { LedgerEntry } from "../facts/ledger-entry.ts";
import type { LineFile } from "../facts/line-file.ts";
import { signersFor } from "../party/signers.ts";
import { standingEntries } from "./balance.ts";

type Books = Pick<LineFile, "ledger" | "roles" | "parties">;

/**
 * To whom an invoice is addressed: its own party, and with it every other title holder of the
 * property where nobody else there was ever invoiced. Names, the billed party's first.
 */
export function billedTo(
  file: Books,
  { partyId, propertyId }: Pick<LedgerEntry, "partyId" | "propertyId">,
): string[] {
  const own = file.parties.find(({ id }) => id === partyId)?.name ?? "";
  const holders = signersFor(file, propertyId);
  if (!isJoint(file, { partyId, propertyId })) return [own];
  const others = holders.filter((holder) => holder.partyId !== partyId);
  return [own, ...others.map(({ partyId: id }) => nameOf(file, id))];
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

function nameOf(file: Books, partyId: string): string {
  return file.parties.find(({ id }) => id === partyId)?.name ?? "";
}
