"use client";

import { useEffect, useId, useState } from "react";
import { useSelection } from "#app/_components/selection.client.tsx";
import type { SplitRule } from "#lib/domain/facts/split.ts";
import { formatCents } from "#lib/domain/money/format-cents.ts";
import type { ComparedCell, ComparedPayer } from "#lib/domain/split/compare.ts";
import { lowered } from "../names.ts";
import { CalculationTable } from "./calculation-table.tsx";
import styles from "./cost.module.css";
import { ruleLetter } from "./letters.ts";
import { type CalculationRead, readCalculation } from "./read-calculation.ts";
import { signedCents } from "./signed-cents.ts";

interface ComparedRule {
  readonly rule: SplitRule;
  readonly title: string;
  readonly refusal: string | null;
}

interface Opened {
  readonly key: string;
  readonly rule: SplitRule;
}

interface CompareTableProps {
  readonly payers: readonly ComparedPayer[];
  readonly rules: readonly ComparedRule[];
  readonly chosen: SplitRule | null;
  /** Mark on the strip of each payer. */
  readonly marks: Readonly<Record<string, string>>;
  /** Where one amount’s calculation is asked for. */
  readonly calculation: string;
  readonly caption: string;
}

/** Rules down, payers across. An amount opens into its calculation below the table. */
export function CompareTable({
  payers,
  rules,
  chosen,
  marks,
  calculation,
  caption,
}: CompareTableProps) {
  const [opened, setOpened] = useState<Opened | null>(null);
  const { selected, select } = useSelection();
  const panelId = useId();
  const isSelected = (payer: ComparedPayer) =>
    selected !== null && selected === marks[payer.key] ? true : undefined;
  return (
    <div className="stack">
      <div className="scroll">
        <table className={`plain ${styles["compare"]}`}>
          <caption>
            <span className={styles["told"]}>{caption}</span>
          </caption>
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
            {rules.map(({ rule, title, refusal }, at) => (
              <tr key={rule} data-chosen={rule === chosen}>
                <th scope="row">
                  <span className={styles["rule"]}>
                    <span className={styles["letter"]}>{ruleLetter(at)}</span>
                    <span>
                      {title}
                      {rule === chosen ? <span className="tag">chosen</span> : null}
                    </span>
                  </span>
                </th>
                {refusal === null ? (
                  payers.map((payer) => (
                    <Amount
                      key={payer.key}
                      title={title}
                      cell={payer.cells[at] ?? null}
                      label={payer.label}
                      selected={isSelected(payer)}
                      opened={opened?.key === payer.key && opened.rule === rule}
                      panelId={panelId}
                      onFocus={() => select(marks[payer.key] ?? null)}
                      onToggle={(open) => setOpened(open ? { key: payer.key, rule } : null)}
                    />
                  ))
                ) : (
                  <td colSpan={payers.length} className={styles["refusal"]}>
                    {refusal}
                  </td>
                )}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <div id={panelId} aria-live="polite">
        {opened === null ? null : (
          <OpenedCalculation
            key={`${opened.rule} ${opened.key}`}
            label={payers.find(({ key }) => key === opened.key)?.label ?? ""}
            title={rules.find(({ rule }) => rule === opened.rule)?.title ?? ""}
            address={`${calculation}&rule=${opened.rule}&of=${encodeURIComponent(opened.key)}`}
            onClose={() => setOpened(null)}
          />
        )}
      </div>
    </div>
  );
}

function Amount({
  title,
  cell,
  label,
  selected,
  opened,
  panelId,
  onFocus,
  onToggle,
}: {
  readonly title: string;
  readonly cell: ComparedCell | null;
  readonly label: string;
  readonly selected: true | undefined;
  readonly opened: boolean;
  readonly panelId: string;
  readonly onFocus: () => void;
  readonly onToggle: (open: boolean) => void;
}) {
  const amount = cell?.amount ?? 0;
  const recoverable = cell?.recoverable ?? 0;
  return (
    <td className="num" data-selected={selected}>
      <button
        type="button"
        className={styles["amount"]}
        aria-expanded={opened}
        aria-controls={panelId}
        aria-label={`${formatCents(amount)} for ${label}, ${title}: ${opened ? "hide" : "show"} calculation`}
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

type Fetched = CalculationRead | null;

/** Fetches one calculation, once for each that is opened. */
function OpenedCalculation({
  label,
  title,
  address,
  onClose,
}: {
  readonly label: string;
  readonly title: string;
  readonly address: string;
  readonly onClose: () => void;
}) {
  const [fetched, setFetched] = useState<Fetched>(null);
  useEffect(() => {
    let isWanted = true;
    void readCalculation(address).then((read) => {
      if (isWanted) setFetched(read);
    });
    return () => {
      isWanted = false;
    };
  }, [address]);
  return (
    <section className={styles["opened"]} aria-label={`How ${label}’s amount is calculated`}>
      <div className="stack">
        <h3>
          {label}, {lowered(title)}
        </h3>
        <Shown label={label} fetched={fetched} />
        <p className="screen-only">
          <button type="button" className="link-button" onClick={onClose}>
            Hide
          </button>
        </p>
      </div>
    </section>
  );
}

function Shown({ label, fetched }: { readonly label: string; readonly fetched: Fetched }) {
  if (fetched === null) return <p className="muted">Calculating…</p>;
  if ("failed" in fetched) return <p className="mend">{fetched.failed}</p>;
  const { calculation, oddCents } = fetched.answer;
  if (calculation === null) return <p>{label} pays nothing under this rule.</p>;
  return <CalculationTable calculation={calculation} oddCents={oddCents} />;
}
