"use client";

import { useId, useState } from "react";
import { useSelection } from "#app/_components/selection.client.tsx";
import { formatCents } from "#lib/domain/money/format-cents.ts";
import type { ComparedCell, ComparedPayer } from "#lib/domain/split/compare.ts";
import type { SplitOutcome } from "#lib/domain/split/outcome.ts";
import type { SplitRule } from "#lib/domain/split/split.ts";
import styles from "./cost.module.css";
import { ruleLetter } from "./letters.ts";
import { SumSteps } from "./sum-steps.tsx";

interface Opened {
  readonly key: string;
  readonly rule: SplitRule;
}

interface CompareTableProps {
  readonly payers: readonly ComparedPayer[];
  readonly outcomes: readonly SplitOutcome[];
  readonly chosen: SplitRule | null;
  /** Mark on the strip of each payer. */
  readonly marks: Readonly<Record<string, string>>;
  readonly caption: string;
}

/** Payers down, rules across. An amount opens into its sum below the table. */
export function CompareTable({ payers, outcomes, chosen, marks, caption }: CompareTableProps) {
  const [opened, setOpened] = useState<Opened | null>(null);
  const { selected, select } = useSelection();
  const panelId = useId();
  return (
    <div className="stack">
      <div className="scroll">
        <table className={`plain ${styles["compare"]}`}>
          <caption>{caption}</caption>
          <thead>
            <tr>
              <th scope="col" className={styles["payer"]}>
                Property
              </th>
              {outcomes.map((outcome, at) => (
                <th
                  key={outcome.choice.rule}
                  scope="col"
                  className={outcome.refusal === null ? "num" : undefined}
                  data-chosen={outcome.choice.rule === chosen}
                >
                  <span className={styles["letter"]}>{ruleLetter(at)}</span>
                  {outcome.title}
                  {outcome.choice.rule === chosen ? " (chosen)" : ""}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {payers.map((payer, row) => (
              <tr
                key={payer.key}
                data-row-id={marks[payer.key]}
                data-selected={selected === marks[payer.key]}
                onFocus={() => select(marks[payer.key] ?? null)}
              >
                <th scope="row">
                  {payer.unknown ? (
                    <span className="tag tag-loud">{payer.label}</span>
                  ) : (
                    payer.label
                  )}
                </th>
                {outcomes.map((outcome, at) => (
                  <Cell
                    key={outcome.choice.rule}
                    outcome={outcome}
                    cell={payer.cells[at] ?? null}
                    label={payer.label}
                    rows={row === 0 ? payers.length + 1 : 0}
                    chosen={outcome.choice.rule === chosen}
                    opened={opened?.key === payer.key && opened.rule === outcome.choice.rule}
                    panelId={panelId}
                    onToggle={(open) =>
                      setOpened(open ? { key: payer.key, rule: outcome.choice.rule } : null)
                    }
                  />
                ))}
              </tr>
            ))}
          </tbody>
          <tfoot>
            <tr>
              <th scope="row">In all</th>
              {outcomes.map((outcome) =>
                outcome.refusal === null ? (
                  <td
                    key={outcome.choice.rule}
                    className="num"
                    data-chosen={outcome.choice.rule === chosen}
                  >
                    {formatCents(outcome.total)}
                  </td>
                ) : null,
              )}
            </tr>
          </tfoot>
        </table>
      </div>
      <div id={panelId} aria-live="polite">
        {opened === null ? null : (
          <OpenedSum
            payers={payers}
            outcomes={outcomes}
            opened={opened}
            onClose={() => setOpened(null)}
          />
        )}
      </div>
    </div>
  );
}

function Cell({
  outcome,
  cell,
  label,
  rows,
  chosen,
  opened,
  panelId,
  onToggle,
}: {
  readonly outcome: SplitOutcome;
  readonly cell: ComparedCell | null;
  readonly label: string;
  /** How many rows a refusal reaches over; 0 in all rows but the first. */
  readonly rows: number;
  readonly chosen: boolean;
  readonly opened: boolean;
  readonly panelId: string;
  readonly onToggle: (open: boolean) => void;
}) {
  if (cell === null) {
    if (rows === 0) return null;
    return (
      <td rowSpan={rows} className={styles["refusal"]}>
        {outcome.refusal}
      </td>
    );
  }
  return (
    <td className="num" data-chosen={chosen}>
      <button
        type="button"
        className={styles["amount"]}
        aria-expanded={opened}
        aria-controls={panelId}
        aria-label={`${formatCents(cell.amount)} for ${label}, ${outcome.title}: ${opened ? "fold" : "open"} the sum`}
        onClick={() => onToggle(!opened)}
      >
        {formatCents(cell.amount)}
      </button>
      {cell.difference === null ? null : (
        <span className={styles["difference"]}>{signedCents(cell.difference)}</span>
      )}
      {cell.share === null || cell.share.recoverable === 0 ? null : (
        <span className={styles["difference"]}>
          {formatCents(cell.share.recoverable)} recoverable
        </span>
      )}
    </td>
  );
}

function signedCents(difference: number): string {
  if (difference === 0) return "the same";
  return `${difference > 0 ? "+" : "−"}${formatCents(Math.abs(difference))}`;
}

function OpenedSum({
  payers,
  outcomes,
  opened,
  onClose,
}: {
  readonly payers: readonly ComparedPayer[];
  readonly outcomes: readonly SplitOutcome[];
  readonly opened: Opened;
  readonly onClose: () => void;
}) {
  const at = outcomes.findIndex((outcome) => outcome.choice.rule === opened.rule);
  const outcome = outcomes[at];
  const payer = payers.find((each) => each.key === opened.key);
  if (outcome === undefined || payer === undefined) return null;
  const share = payer.cells[at]?.share ?? null;
  return (
    <section className={styles["opened"]} aria-label={`How ${payer.label}’s amount was made`}>
      <div className="stack">
        <h3>
          {payer.label}, {outcome.title.toLowerCase()}
        </h3>
        {share === null ? (
          <p>Under this rule {payer.label} pays nothing.</p>
        ) : (
          <SumSteps share={share} oddCents={outcome.oddCents} />
        )}
        <p>
          <button type="button" className="link-button" onClick={onClose}>
            Fold the sum
          </button>
        </p>
      </div>
    </section>
  );
}
