import { Heads } from "#app/_components/heads.tsx";
import { Scroll } from "#app/_components/scroll.tsx";
import stacks from "#app/_components/stacks.module.css";
import { feeWords, type PermitFees } from "#lib/domain/application/fees.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import { formatCents } from "#lib/domain/money/format-cents.ts";
import { formatDate } from "#lib/domain/time/format-day.ts";

/** What a permit costs by the schedule, each fee with how it is worked out. */
export function FeeTable({
  fees: { lines, total, known, paid, refunded, due, dueAtLeast },
  authority,
}: {
  readonly fees: PermitFees;
  readonly authority: NonNullable<LineFile["authority"]>;
}) {
  if (lines.length === 0) return <p>{authority.name} has no fees entered for this permit.</p>;
  return (
    <Scroll>
      <table className={`plain ${stacks["stacks"]} ${stacks["read"]}`}>
        <Heads of={["Fee", "Source", { num: "Calculation" }, { num: "Amount" }]} />
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
                {feeWords(amount)}
              </td>
            </tr>
          ))}
        </tbody>
        <tfoot>
          <Sum
            words={
              total === null ? "By the schedule, without what is not known" : "By the schedule"
            }
            amount={known}
          />
          {paid === 0 ? null : <Sum words="Paid" amount={paid} />}
          {refunded === 0 ? null : <Sum words="Returned" amount={refunded} />}
          {paid === 0 || (due === null && dueAtLeast === 0) ? null : (
            <Sum words={dueWords(due)} amount={Math.abs(dueAtLeast)} />
          )}
        </tfoot>
      </table>
    </Scroll>
  );
}

function dueWords(due: number | null): string {
  if (due === null) return "To pay at least";
  return due < 0 ? "To come back" : "To pay";
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
