"use client";

import { useId, useState } from "react";
import { useSelection } from "#app/_components/selection.client.tsx";
import type { SplitRule } from "#lib/domain/facts/split.ts";
import type { SplitOutcome } from "#lib/domain/findings/outcome.ts";
import { formatCents } from "#lib/domain/money/format-cents.ts";
import type { ComparedCell, ComparedPayer } from "#lib/domain/split/compare.ts";
import { lowered } from "../names.ts";
import styles from "./cost.module.css";
import { ruleLetter } from "./letters.ts";
import { signedCents } from "./signed-cents.ts";
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

/** Rules down, payers across. An amount opens into its sum below the table. */
export function CompareTable({ payers, outcomes, chosen, marks, caption }: CompareTableProps) {
  const [opened, setOpened] = useState<Opened | null>(null);
  const { selected, select } = useSelection();
  const panelId = useId();
  const isSelected = (payer: ComparedPayer) =>
    selected !== null && selected === marks[payer.key] ? true : undefined;
  return (
    <div className="stack">
      <div className="scroll">
        <table className={`plain ${styles["compare"]}`}>
          <caption>{caption}</caption>
          <thead>
            <tr>
              <th scope="col">Rule</th>
              {payers.map((payer) => (
                <th
                  key={payer.key}
                  scope="col"
                  className="num"
                  data-row-id={marks[payer.key]}
                  data-selected={isSelected(payer)}
                >
                  {payer.unknown ? (
                    <span className={`tag tag-loud ${styles["unknown"]}`}>{payer.label}</span>
                  ) : (
                    payer.label
                  )}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {outcomes.map((outcome, at) => (
              <tr key={outcome.choice.rule} data-chosen={outcome.choice.rule === chosen}>
                <th scope="row">
                  <span className={styles["rule"]}>
                    <span className={styles["letter"]}>{ruleLetter(at)}</span>
                    <span>
                      {outcome.title}
                      {outcome.choice.rule === chosen ? <span className="tag">chosen</span> : null}
                    </span>
                  </span>
                </th>
                {outcome.refusal === null ? (
                  payers.map((payer) => (
                    <Amount
                      key={payer.key}
                      outcome={outcome}
                      cell={payer.cells[at] ?? null}
                      label={payer.label}
                      selected={isSelected(payer)}
                      opened={opened?.key === payer.key && opened.rule === outcome.choice.rule}
                      panelId={panelId}
                      onFocus={() => select(marks[payer.key] ?? null)}
                      onToggle={(open) =>
                        setOpened(open ? { key: payer.key, rule: outcome.choice.rule } : null)
                      }
                    />
                  ))
                ) : (
                  <td colSpan={payers.length} className={styles["refusal"]}>
                    {outcome.refusal}
                  </td>
                )}
              </tr>
            ))}
          </tbody>
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

function Amount({
  outcome,
  cell,
  label,
  selected,
  opened,
  panelId,
  onFocus,
  onToggle,
}: {
  readonly outcome: SplitOutcome;
  readonly cell: ComparedCell | null;
  readonly label: string;
  readonly selected: true | undefined;
  readonly opened: boolean;
  readonly panelId: string;
  readonly onFocus: () => void;
  readonly onToggle: (open: boolean) => void;
}) {
  const amount = cell?.amount ?? 0;
  const recoverable = cell?.share?.recoverable ?? 0;
  return (
    <td className="num" data-selected={selected}>
      <button
        type="button"
        className={styles["amount"]}
        aria-expanded={opened}
        aria-controls={panelId}
        aria-label={`${formatCents(amount)} for ${label}, ${outcome.title}: ${opened ? "fold" : "open"} the sum`}
        onFocus={onFocus}
        onClick={() => onToggle(!opened)}
      >
        {formatCents(amount)}
      </button>
      {cell === null || cell.difference === null ? null : (
        <span className={styles["difference"]}>{signedCents(cell.difference)}</span>
      )}
      {recoverable === 0 ? null : (
        <span className={styles["difference"]}>{formatCents(recoverable)} recoverable</span>
      )}
    </td>
  );
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
          {payer.label}, {lowered(outcome.title)}
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
