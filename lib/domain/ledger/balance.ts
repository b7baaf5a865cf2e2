import type { LedgerEntry, LedgerKind } from "../facts/ledger-entry.ts";
import type { Cents } from "../money/cents.ts";

/** Whose money: one party at one property. */
export interface Account {
  readonly propertyId: string;
  readonly partyId: string;
}

/** What stands on an account, or over the whole line. What was reversed counts nowhere. */
export interface Balance {
  readonly invoiced: Cents;
  /** Deposits and payments. */
  readonly received: Cents;
  readonly credited: Cents;
  readonly refunded: Cents;
  /** Invoiced and refunded less received and credited; below zero the office holds their money. */
  readonly open: Cents;
}

export interface AccountBalance extends Account, Balance {}

type Standing = Exclude<LedgerKind, "reversal">;

/** Which way each kind moves what is open. */
const WAY: Record<Standing, 1 | -1> = {
  invoice: 1,
  deposit: -1,
  payment: -1,
  credit: -1,
  refund: 1,
};

type Ledger = readonly LedgerEntry[];

/** The entries that stand: neither reversed nor themselves a reversal, by number. */
export function standingEntries(ledger: Ledger): LedgerEntry[] {
  const undone = new Set(ledger.map(({ reversesId }) => reversesId));
  return inNumberOrder(ledger).filter(({ id, kind }) => kind !== "reversal" && !undone.has(id));
}

export function inNumberOrder(ledger: Ledger): LedgerEntry[] {
  return ledger.toSorted((one, other) => one.number - other.number);
}

/** By how much an entry moves what is open: a reversal moves it back by what it takes back. */
export function effectOf(ledger: Ledger, entry: LedgerEntry): Cents {
  if (entry.kind !== "reversal") return WAY[entry.kind] * entry.amount;
  const undone = ledger.find(({ id }) => id === entry.reversesId);
  if (undone === undefined || undone.kind === "reversal") return 0;
  return -WAY[undone.kind] * undone.amount;
}

/** What stands over all of the entries given. */
export function balanceOf(ledger: Ledger): Balance {
  const standing = standingEntries(ledger);
  const sum = (...kinds: readonly LedgerKind[]) =>
    standing.reduce((all, { kind, amount }) => (kinds.includes(kind) ? all + amount : all), 0);
  const invoiced = sum("invoice");
  const received = sum("deposit", "payment");
  const credited = sum("credit");
  const refunded = sum("refund");
  return {
    invoiced,
    received,
    credited,
    refunded,
    open: invoiced + refunded - received - credited,
  };
}

/** The number of the next entry: entries count up from 1 over the line. */
export function nextNumber(ledger: Ledger): number {
  return ledger.reduce((last, { number }) => Math.max(last, number), 0) + 1;
}
