import { Heads } from "#app/_components/heads.tsx";
import { Scroll } from "#app/_components/scroll.tsx";
import { formatCents } from "#lib/domain/money/format-cents.ts";
import { formatExactCents } from "#lib/domain/split/exact.ts";
import type { Calculation } from "./calculation.ts";
import styles from "./cost.module.css";

/** How an amount is calculated, one step a row, as a neighbor would check it by hand. */
export function CalculationTable({
  calculation,
  oddCents,
}: {
  readonly calculation: Calculation;
  readonly oddCents: string;
}) {
  const { label, amount, recoverable, exact, steps } = calculation;
  if (steps.length === 0) return <p>{label} has no share of this work.</p>;
  return (
    <Scroll>
      <table className={`plain ${styles["steps"]}`}>
        <Heads of={["Step", { num: "Exact" }]} />
        <tbody>
          {steps.map((step, at) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: the steps of a calculation have no names and never move
            <tr key={at}>
              <td>{step.words}</td>
              <td className="num nowrap">{formatExactCents(step.exact)}</td>
            </tr>
          ))}
        </tbody>
        <tfoot>
          <tr>
            <th scope="row">
              Total {formatExactCents(exact)}, rounded to cents
              <span className="muted small"> {oddCents}</span>
            </th>
            <td className="num">{formatCents(amount)}</td>
          </tr>
          {recoverable === 0 ? null : (
            <tr>
              <th scope="row">Of this, covered for unknown owners (recoverable)</th>
              <td className="num">{formatCents(recoverable)}</td>
            </tr>
          )}
        </tfoot>
      </table>
    </Scroll>
  );
}
