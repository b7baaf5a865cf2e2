import { Scroll } from "#app/_components/scroll.tsx";
import type { Share } from "#lib/domain/findings/outcome.ts";
import { formatCents } from "#lib/domain/money/format-cents.ts";
import { formatExactCents } from "#lib/domain/split/exact.ts";
import styles from "./cost.module.css";

/** The sum behind an amount, one step a row, as a neighbour would check it by hand. */
export function SumSteps({
  share,
  oddCents,
}: {
  readonly share: Share;
  readonly oddCents: string;
}) {
  if (share.steps.length === 0) return <p>Nothing of the work falls on {share.label}.</p>;
  return (
    <Scroll>
      <table className={`plain ${styles["steps"]}`}>
        <thead>
          <tr>
            <th scope="col">Step</th>
            <th scope="col" className="num">
              Exactly
            </th>
          </tr>
        </thead>
        <tbody>
          {share.steps.map((step, at) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: the steps of a sum have no names and never move
            <tr key={at}>
              <td>{step.words}</td>
              <td className="num">{formatExactCents(step.exact)}</td>
            </tr>
          ))}
        </tbody>
        <tfoot>
          <tr>
            <th scope="row">
              Together {formatExactCents(share.exact)}, in whole cents
              <span className="muted small"> {oddCents}</span>
            </th>
            <td className="num">{formatCents(share.amount)}</td>
          </tr>
          {share.recoverable === 0 ? null : (
            <tr>
              <th scope="row">Of which carried for owners not yet known, and recoverable</th>
              <td className="num">{formatCents(share.recoverable)}</td>
            </tr>
          )}
        </tfoot>
      </table>
    </Scroll>
  );
}
