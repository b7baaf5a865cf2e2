"use client";

import Link from "next/link";
import { useSelectedLayoutSegment } from "next/navigation";
import { useState } from "react";
import type { Question } from "#lib/domain/desk/answer.ts";
import styles from "./line-nav.module.css";

interface NavAnswer {
  readonly question: Question;
  readonly asked: string;
  readonly open: boolean;
}

/** The ten questions, compact: a ring where something is still open, a dot where nothing is. */
export function LineNav({
  lineId,
  answers,
}: {
  readonly lineId: string;
  readonly answers: readonly NavAnswer[];
}) {
  const segment = useSelectedLayoutSegment();
  const [unfolded, setUnfolded] = useState(false);
  const here = answers.find((answer) => answer.question === segment)?.asked ?? "All ten questions";
  return (
    <nav aria-label="Questions on this line" className={styles["nav"]}>
      <button
        type="button"
        className={styles["fold"]}
        aria-expanded={unfolded}
        aria-controls="line-questions"
        onClick={() => setUnfolded(!unfolded)}
      >
        {here}
        <span className="muted">{unfolded ? "fold" : "other questions"}</span>
      </button>
      <ol id="line-questions" className={styles["list"]} data-unfolded={unfolded}>
        <li>
          <Link href={`/lines/${lineId}`} aria-current={segment === null ? "page" : undefined}>
            All ten questions
          </Link>
        </li>
        {answers.map((answer) => (
          <li key={answer.question}>
            <Link
              href={`/lines/${lineId}/${answer.question}`}
              aria-current={segment === answer.question ? "page" : undefined}
              onClick={() => setUnfolded(false)}
            >
              <span>{answer.asked}</span>
              {answer.open ? <span className={styles["open"]}>open</span> : null}
            </Link>
          </li>
        ))}
      </ol>
    </nav>
  );
}
