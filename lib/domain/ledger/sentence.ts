import type { LineFile } from "../facts/line-file.ts";
import type { Cents } from "../money/cents.ts";
import { formatCents } from "../money/format-cents.ts";
import { latestSplit } from "../split/latest-split.ts";
import type { Day } from "../time/day.ts";
import { accountEntries, accountsIn } from "./accounts.ts";
import { agingOf } from "./aging.ts";
import { type AccountBalance, balanceOf } from "./balance.ts";

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
export function overdueAccounts(
  file: Pick<LineFile, "ledger" | "roles" | "parties">,
  today: Day,
): OverdueAccount[] {
  return accountsIn(file)
    .flatMap((account) => {
      const { overdue, oldestDue } = agingOf(accountEntries(file, account), today);
      return overdue > 0 && oldestDue !== null ? [{ ...account, overdue, since: oldestDue }] : [];
    })
    .toSorted((one, other) => one.since.localeCompare(other.since));
}
