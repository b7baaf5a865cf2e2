import type { LedgerEntry } from "../facts/ledger-entry.ts";
import type { LineFile } from "../facts/line-file.ts";
import type { Cents } from "../money/cents.ts";
import type { Day } from "../time/day.ts";
import { accountEntries } from "./accounts.ts";
import { agingOf } from "./aging.ts";
import { type Account, balanceOf, standingEntries } from "./balance.ts";

/** What the money book says that somebody owes at a property. */
export interface Owed {
  readonly invoiced: Cents;
  /** Came in or was credited, less what was given back. */
  readonly settled: Cents;
  readonly open: Cents;
  /** The earliest day on which something open was due; null while nothing is past its day. */
  readonly overdueSince: Day | null;
}

type Books = Pick<LineFile, "ledger" | "roles" | "parties">;

/**
 * What a person owes at a property: on their own account, or on the one that stands for all title
 * holders together where they are one of them. Null where neither was ever invoiced.
 */
export function owedBy(file: Books, account: Account, today: Day): Owed | null {
  const entries = accountEntries(file, account);
  if (!standingEntries(entries).some(({ kind }) => kind === "invoice")) return null;
  const { invoiced, received, credited, refunded, open } = balanceOf(entries);
  const { overdue, oldestDue } = agingOf(entries, today);
  return {
    invoiced,
    settled: received + credited - refunded,
    open,
    overdueSince: overdue > 0 ? oldestDue : null,
  };
}

/** What is open at a property over all accounts; null where it was never invoiced. */
export function openAt(file: Pick<LineFile, "ledger">, propertyId: string): Cents | null {
  const entries = entriesAt(file, propertyId);
  const asked = standingEntries(entries).some(({ kind }) => kind === "invoice");
  return asked ? balanceOf(entries).open : null;
}

/** What came in at a property before its first invoice, and counts toward it. */
export function heldAt(file: Pick<LineFile, "ledger">, propertyId: string): Cents {
  if (openAt(file, propertyId) !== null) return 0;
  return Math.max(-balanceOf(entriesAt(file, propertyId)).open, 0);
}

function entriesAt({ ledger }: Pick<LineFile, "ledger">, propertyId: string): LedgerEntry[] {
  return ledger.filter((entry) => entry.propertyId === propertyId);
}
