import Link from "next/link";
import { Empty } from "#app/_components/empty.tsx";
import { Scroll } from "#app/_components/scroll.tsx";
import stacks from "#app/_components/stacks.module.css";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { type Balance, balanceOf } from "#lib/domain/ledger/balance.ts";
import type { Cents } from "#lib/domain/money/cents.ts";
import { formatCents } from "#lib/domain/money/format-cents.ts";
import { formatDay } from "#lib/domain/time/format-day.ts";
import { Beneath } from "../../beneath.tsx";
import { propertyName } from "../../names.ts";
import styles from "./money.module.css";
import { PayInFull } from "./pay-in-full.tsx";
import type { MoneyRow } from "./rows.ts";

interface TableProps {
  readonly lineId: string;
  readonly file: LineFile;
  readonly rows: readonly MoneyRow[];
  readonly today: string;
  readonly work: boolean;
}

/** Each account: its share, invoiced, paid, balance due; one press records that it was paid in full. */
export function AccountsTable({ lineId, file, rows, today, work }: TableProps) {
  if (rows.length === 0) {
    return (
      <Empty
        title="No accounts yet."
        example="12 Fennel Row, Ottilie Brandvold: $1,190.00 invoiced, $1,000.00 paid, $190.00 balance due"
      >
        <p>
          <Link href={`/lines/${lineId}/cost/choose`}>Choose how the cost is split</Link>; then
          invoice the shares here. Deposits can be recorded before that.
        </p>
      </Empty>
    );
  }
  const all = balanceOf(file.ledger);
  const pays = work && rows.some(({ balance }) => balance.open > 0);
  return (
    <Scroll>
      <table className={`plain ${stacks["stacks"]} ${styles["money"]}`}>
        <thead>
          <tr>
            <th scope="col">Property</th>
            {["Share", "Invoiced", "Paid or credited", "Balance due"].map((title) => (
              <th key={title} scope="col" className="num">
                {title}
              </th>
            ))}
            <th scope="col">Due</th>
            {pays ? (
              <th scope="col" className="screen-only">
                Record payment
              </th>
            ) : null}
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <AccountRow
              key={`${row.propertyId} ${row.partyId}`}
              lineId={lineId}
              file={file}
              row={row}
              today={today}
              pays={pays}
            />
          ))}
        </tbody>
        <tfoot>
          <tr>
            <th scope="row">Total</th>
            <Money label="Share" cents={rows.reduce((sum, { share }) => sum + (share ?? 0), 0)} />
            <Money label="Invoiced" cents={all.invoiced} />
            <Money label="Paid or credited" cents={settledOf(all)} />
            <Money label="Balance due" cents={all.open} />
            <td />
            {pays ? <td className="screen-only" /> : null}
          </tr>
        </tfoot>
      </table>
    </Scroll>
  );
}

function AccountRow({
  lineId,
  file,
  row,
  today,
  pays,
}: Omit<TableProps, "rows" | "work"> & { readonly row: MoneyRow; readonly pays: boolean }) {
  const { balance, aging, share } = row;
  const name = propertyName(file, row.propertyId);
  return (
    <tr>
      <th scope="row">
        {row.partyId === null ? (
          name
        ) : (
          <Link href={`/lines/${lineId}/cost/money/${row.propertyId}`}>{name}</Link>
        )}
        <Beneath>{row.partyId === null ? "not invoiced yet" : row.billedTo}</Beneath>
      </th>
      <Money label="Share" cents={share} />
      <Money label="Invoiced" cents={balance.invoiced} />
      <Money label="Paid or credited" cents={settledOf(balance)} />
      <td className="num" data-label="Balance due">
        {balance.open < 0 ? (
          <>
            {formatCents(0)}
            <Beneath>{formatCents(-balance.open)} credit balance</Beneath>
          </>
        ) : (
          formatCents(balance.open)
        )}
      </td>
      <td data-label="Due">
        {aging.oldestDue === null ? "–" : formatDay(aging.oldestDue, today)}
        {aging.overdue > 0 ? (
          <Beneath>
            past due:{" "}
            <Link href={`/lines/${lineId}/notices/write?kind=share-demand`}>
              write a payment demand
            </Link>
          </Beneath>
        ) : null}
      </td>
      {pays ? (
        <td className="screen-only">
          {row.partyId === null || balance.open <= 0 ? null : (
            <PayInFull
              lineId={lineId}
              account={{ partyId: row.partyId, propertyId: row.propertyId }}
              owed={balance.open}
              name={`${name}, ${row.billedTo}`}
            />
          )}
        </td>
      ) : null}
    </tr>
  );
}

/** Received and credited, less what was returned. */
function settledOf({ received, credited, refunded }: Balance): Cents {
  return received + credited - refunded;
}

function Money({ label, cents }: { readonly label: string; readonly cents: Cents | null }) {
  return (
    <td className="num" data-label={label} data-nil={cents === 0 ? "" : undefined}>
      {moneyWords(cents)}
    </td>
  );
}

function moneyWords(cents: Cents | null): string {
  if (cents === null) return "same as above";
  return cents === 0 ? "–" : formatCents(cents);
}
