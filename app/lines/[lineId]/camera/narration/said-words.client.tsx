"use client";

import { useEffect, useRef } from "react";
import { rowId } from "#app/_components/typed-cell.ts";
import styles from "./narration.module.css";
import type { SaidPart, SaidPiece } from "./said-pieces.ts";

/** All that was said; the words of a row are lit when it is chosen, and choose it when pressed. */
export function SaidWords({
  parts,
  chosen,
  onChoose,
}: {
  readonly parts: readonly SaidPart[];
  readonly chosen: string;
  readonly onChoose: (key: string) => void;
}) {
  const box = useRef<HTMLOListElement>(null);
  useEffect(() => {
    // Only the box scrolls; the page stays where the person looks.
    const lit = box.current?.querySelector<HTMLElement>("[data-lit='true']");
    if (chosen === "" || lit == null || box.current === null) return;
    const { offsetTop, offsetHeight } = lit;
    const { scrollTop, clientHeight } = box.current;
    if (offsetTop < scrollTop || offsetTop + offsetHeight > scrollTop + clientHeight)
      box.current.scrollTop = Math.max(0, offsetTop - clientHeight / 3);
  }, [chosen]);
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a box that scrolls is reached by keyboard
    <ol ref={box} className={styles["words"]} aria-label="What was said" tabIndex={0}>
      {parts.map(({ from, time, pieces }) => (
        <li key={from}>
          {time === "" ? null : <span className={styles["time"]}>{time}</span>}
          <span>
            {pieces.map((piece) => (
              <Piece key={piece.from} piece={piece} chosen={chosen} onChoose={onChoose} />
            ))}
          </span>
        </li>
      ))}
    </ol>
  );
}

function Piece({
  piece: { text, keys },
  chosen,
  onChoose,
}: {
  readonly piece: SaidPiece;
  readonly chosen: string;
  readonly onChoose: (key: string) => void;
}) {
  if (keys.length === 0) return text;
  const at = keys.indexOf(chosen);
  const next = keys[(at + 1) % keys.length] ?? "";
  return (
    <a
      href={`#${rowId(next)}`}
      className={styles["piece"]}
      data-lit={at !== -1}
      aria-current={at !== -1}
      onClick={(event) => {
        event.preventDefault();
        onChoose(next);
      }}
    >
      {text}
    </a>
  );
}
