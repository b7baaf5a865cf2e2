import type { Day } from "../calendar/day.ts";
import { latestSplit } from "../consent/standing.ts";
import type { LineFile } from "../file/line-file.ts";
import type { Cents } from "../money/cents.ts";
import { formatCents } from "../money/format-cents.ts";
import { ageingOf } from "./ageing.ts";
import { type AccountBalance, accountsOf, balanceOf, entriesOf } from "./balance.ts";

type Books = Pick<LineFile, "ledger" | "splits">;

/** `$4,200.00 of $18,640.00 received`; empty before any money came in. */
export function receivedWords(file: Books): string {
  const { received, refunded } = balanceOf(file.ledger);
  if (received === 0) return "";
  const kept = formatCents(received - refunded);
  const total = latestSplit(file)?.total;
  return total === undefined ? `${kept} received` : `${kept} of ${formatCents(total)} received`;
}

/** An account with something past its day. */
export interface OverdueAccount extends AccountBalance {
  readonly overdue: Cents;
  readonly since: Day;
}

/** Accounts with something past its day, the longest first. */
export function overdueAccounts(file: Pick<LineFile, "ledger">, today: Day): OverdueAccount[] {
  return accountsOf(file.ledger)
    .flatMap((account) => {
      const { overdue, oldestDue } = ageingOf(entriesOf(file.ledger, account), today);
      return overdue > 0 && oldestDue !== null ? [{ ...account, overdue, since: oldestDue }] : [];
    })
    .toSorted((one, other) => one.since.localeCompare(other.since));
}
