import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { accountEntries, accountsIn } from "#lib/domain/ledger/accounts.ts";
import { type Aging, agingOf } from "#lib/domain/ledger/aging.ts";
import { type Balance, balanceOf } from "#lib/domain/ledger/balance.ts";
import { billedTo } from "#lib/domain/ledger/billed-to.ts";
import { shareIn } from "#lib/domain/ledger/propose.ts";
import type { Cents } from "#lib/domain/money/cents.ts";
import { latestSplit } from "#lib/domain/split/latest-split.ts";
import { listed } from "../../names.ts";

/** One account, or a property that shares and has none yet. */
export interface MoneyRow {
  readonly propertyId: string;
  /** Null: no one was invoiced and nothing came in yet. */
  readonly partyId: string | null;
  readonly billedTo: string;
  /** What the split in force asks of the property; null on a second account there. */
  readonly share: Cents | null;
  readonly balance: Balance;
  readonly aging: Aging;
}

/** Every property with a share and every account, the split's order first. */
export function moneyRows(file: LineFile, today: string): MoneyRow[] {
  const version = latestSplit(file);
  const accounts = accountsIn(file);
  const sharing = version?.shares.flatMap(({ propertyId }) => propertyId ?? []) ?? [];
  const places = [...new Set([...sharing, ...accounts.map(({ propertyId }) => propertyId)])];
  return places.flatMap((propertyId) => {
    const share = version === null ? 0 : shareIn(version, propertyId);
    const own = accounts.filter((account) => account.propertyId === propertyId);
    if (own.length === 0) return [emptyRow(propertyId, share, today)];
    return own.map(
      (account, at): MoneyRow => ({
        propertyId,
        partyId: account.partyId,
        billedTo: listed(billedTo(file, account)),
        share: at === 0 ? share : null,
        balance: account,
        aging: agingOf(accountEntries(file, account), today),
      }),
    );
  });
}

function emptyRow(propertyId: string, share: Cents, today: string): MoneyRow {
  return {
    propertyId,
    partyId: null,
    billedTo: "",
    share,
    balance: balanceOf([]),
    aging: agingOf([], today),
  };
}
