"use client";

import { useId, useState } from "react";
import type { CellProps } from "./cell.client.tsx";
import { choicesOf } from "./choices.ts";
import styles from "./grid.module.css";

/** Kinds that are typed with letters too. */
const SPELLED: ReadonlySet<string> = new Set(["text", "day", "time"]);

/** One field of a row on a phone: the phone's own chooser for choices and days. */
export function ThumbCell(props: CellProps) {
  const { column, text, problem, readOnly, onType, onLeave } = props;
  const id = useId();
  const [typed, setTyped] = useState<string | null>(null);
  const choices = choicesOf(column);
  const shared = {
    className: styles["input"],
    "data-place": props.place,
    "aria-label": props.label,
    "aria-invalid": problem === null ? undefined : true,
    "aria-describedby": problem === null ? undefined : `${id}-problem`,
    onBlur: () => {
      setTyped(null);
      onLeave();
    },
  } as const;
  return (
    <>
      {choices.length > 0 ? (
        <select
          {...shared}
          disabled={readOnly}
          value={text}
          onChange={(event) => onType(event.target.value)}
        >
          {choices.some((choice) => choice.label === text) ? null : (
            <option value={text}>{text}</option>
          )}
          {choices.map((choice) => (
            <option key={choice.value} value={choice.label}>
              {choice.label}
            </option>
          ))}
        </select>
      ) : (
        <input
          {...shared}
          readOnly={readOnly}
          value={typed ?? text}
          placeholder={props.placeholder}
          inputMode={SPELLED.has(column.kind) ? "text" : "decimal"}
          autoComplete="off"
          onChange={(event) => {
            setTyped(event.target.value);
            onType(event.target.value);
          }}
        />
      )}
      {problem === null ? null : (
        <span id={`${id}-problem`} className={styles["problem"]}>
          {problem}
        </span>
      )}
    </>
  );
}
