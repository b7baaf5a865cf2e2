import Link from "next/link";
import { Empty } from "#app/_components/empty.tsx";
import { Scroll } from "#app/_components/scroll.tsx";
import stacks from "#app/_components/stacks.module.css";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { balanceOf } from "#lib/domain/ledger/balance.ts";
import type { Cents } from "#lib/domain/money/cents.ts";
import { formatCents } from "#lib/domain/money/format-cents.ts";
import { formatDay } from "#lib/domain/time/format-day.ts";
import { Beneath } from "../../beneath.tsx";
import { propertyName } from "../../names.ts";
import styles from "./money.module.css";
import type { MoneyRow } from "./rows.ts";

interface TableProps {
  readonly lineId: string;
  readonly file: LineFile;
  readonly rows: readonly MoneyRow[];
  readonly today: string;
}

/** Each account: its share, what was invoiced, what came in, what is open and since when. */
export function AccountsTable({ lineId, file, rows, today }: TableProps) {
  if (rows.length === 0) {
    return (
      <Empty
        title="There are no accounts yet."
        example="12 Fennel Row, Ottilie Brandvold: $1,190.00 invoiced, $1,000.00 received, $190.00 open"
      >
        <p>
          <Link href={`/lines/${lineId}/cost/choose`}>Choose how the cost is split</Link>; then
          invoice the shares here. A deposit can be taken down before that.
        </p>
      </Empty>
    );
  }
  const all = balanceOf(file.ledger);
  return (
    <Scroll>
      <table className={`plain ${stacks["stacks"]} ${styles["money"]}`}>
        <thead>
          <tr>
            <th scope="col">Property</th>
            {["Share", "Invoiced", "Received", "Credited", "Open"].map((title) => (
              <th key={title} scope="col" className="num">
                {title}
              </th>
            ))}
            <th scope="col">Oldest due</th>
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
            />
          ))}
        </tbody>
        <tfoot>
          <tr>
            <th scope="row">In all</th>
            <Money label="Share" cents={rows.reduce((sum, { share }) => sum + (share ?? 0), 0)} />
            <Money label="Invoiced" cents={all.invoiced} />
            <Money label="Received" cents={all.received - all.refunded} />
            <Money label="Credited" cents={all.credited} />
            <Money label="Open" cents={all.open} />
            <td />
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
}: Omit<TableProps, "rows"> & { readonly row: MoneyRow }) {
  const { balance, ageing, share } = row;
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
      <Money label="Received" cents={balance.received - balance.refunded} />
      <Money label="Credited" cents={balance.credited} />
      <td className="num" data-label="Open">
        {balance.open < 0 ? (
          <>
            {formatCents(0)}
            <Beneath>{formatCents(-balance.open)} held for them</Beneath>
          </>
        ) : (
          formatCents(balance.open)
        )}
      </td>
      <td data-label="Oldest due">
        {ageing.oldestDue === null ? "–" : formatDay(ageing.oldestDue, today)}
        {ageing.overdue > 0 ? (
          <Beneath>
            past its day:{" "}
            <Link href={`/lines/${lineId}/notices/write?kind=share-demand`}>write the demand</Link>
          </Beneath>
        ) : null}
      </td>
    </tr>
  );
}

function Money({ label, cents }: { readonly label: string; readonly cents: Cents | null }) {
  return (
    <td className="num" data-label={label} data-nil={cents === 0 ? "" : undefined}>
      {moneyWords(cents)}
    </td>
  );
}

function moneyWords(cents: Cents | null): string {
  if (cents === null) return "as above";
  return cents === 0 ? "–" : formatCents(cents);
}
