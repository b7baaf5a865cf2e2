import { Scroll } from "#app/_components/scroll.tsx";
import type { Authority, Fee } from "#lib/domain/facts/authority.ts";
import type { LineFile } from "#lib/domain/facts/line-file.ts";
import type { Report } from "#lib/domain/findings/report.ts";
import { formatCents } from "#lib/domain/money/format-cents.ts";
import { formatDate } from "#lib/domain/time/format-day.ts";

const PER_WORDS: Record<Fee["per"], string> = {
  permit: "per permit",
  connection: "per connection",
  inspection: "per inspection",
};

/** The authority's fees, and what they would come to on this line. */
export function Fees({
  file,
  report,
  authority,
}: {
  readonly file: LineFile;
  readonly report: Report;
  readonly authority: Authority;
}) {
  if (authority.fees.length === 0) return <p>No fees entered for this authority.</p>;
  const counts: Record<Fee["per"], number> = {
    permit: 1,
    connection: report.tieIns.filter((found) => found.live).length,
    inspection: Math.max(
      1,
      file.inspections.filter((inspection) => inspection.result !== "cancelled").length,
    ),
  };
  const total = authority.fees.reduce((sum, fee) => sum + fee.amount * counts[fee.per], 0);
  return (
    <Scroll>
      <table className="plain">
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
          {authority.fees.map((fee) => (
            <tr key={fee.id}>
              <th scope="row">{fee.title}</th>
              <td>
                {fee.citation}
                {fee.asOf === "" ? "" : `, as of ${formatDate(fee.asOf)}`}
              </td>
              <td className="num">
                {counts[fee.per]} × {formatCents(fee.amount)} {PER_WORDS[fee.per]}
              </td>
              <td className="num">{formatCents(fee.amount * counts[fee.per])}</td>
            </tr>
          ))}
        </tbody>
        <tfoot>
          <tr>
            <th scope="row" colSpan={3}>
              Estimate for one permit
            </th>
            <td className="num">{formatCents(total)}</td>
          </tr>
        </tfoot>
      </table>
    </Scroll>
  );
}
