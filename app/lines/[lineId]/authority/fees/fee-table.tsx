import { Scroll } from "#app/_components/scroll.tsx";
import stacks from "#app/_components/stacks.module.css";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { formatCents } from "#lib/domain/money/format-cents.ts";
import type { PermitFees } from "#lib/domain/permit/fees.ts";
import { formatDate } from "#lib/domain/time/format-day.ts";

/** What a permit costs by the schedule, each fee with how it is worked out. */
export function FeeTable({
  fees: { lines, total, paid, refunded, due },
  authority,
}: {
  readonly fees: PermitFees;
  readonly authority: NonNullable<LineFile["authority"]>;
}) {
  if (lines.length === 0) return <p>{authority.name} has no fees entered for this permit.</p>;
  return (
    <Scroll>
      <table className={`plain ${stacks["stacks"]} ${stacks["read"]}`}>
        <thead>
          <tr>
            <th scope="col">Fee</th>
            <th scope="col">Source</th>
            <th scope="col" className="num">
              Calculation
            </th>
            <th scope="col" className="num">
              Amount
            </th>
          </tr>
        </thead>
        <tbody>
          {lines.map(({ fee, sum, amount }) => (
            <tr key={fee.id}>
              <th scope="row">{fee.title}</th>
              <td data-label="Source">
                {fee.citation}
                {fee.asOf === "" ? "" : `, as of ${formatDate(fee.asOf)}`}
              </td>
              <td className="num" data-label="Calculation">
                {sum}
              </td>
              <td className="num" data-label="Amount">
                {formatCents(amount)}
              </td>
            </tr>
          ))}
        </tbody>
        <tfoot>
          <Sum words="By the schedule" amount={total} />
          {paid === 0 ? null : <Sum words="Paid" amount={paid} />}
          {refunded === 0 ? null : <Sum words="Returned" amount={refunded} />}
          {paid === 0 ? null : (
            <Sum words={due < 0 ? "To come back" : "To pay"} amount={Math.abs(due)} />
          )}
        </tfoot>
      </table>
    </Scroll>
  );
}

function Sum({ words, amount }: { readonly words: string; readonly amount: number }) {
  return (
    <tr>
      <th scope="row" colSpan={3}>
        {words}
      </th>
      <td className="num">{formatCents(amount)}</td>
    </tr>
  );
}
